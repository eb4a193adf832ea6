// The moves of the annealing: turn a stop, line several up, take another way, another start, another order.
#include "routing/annealer.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

void Annealer::turn() {
    const auto k = static_cast<std::size_t>(random_.below(static_cast<int>(count())));
    Place place = now_.places[k];
    const Stop& stop = task_.stops[static_cast<std::size_t>(place.stop)];
    if (stop.kind == Stop::Kind::resistor && random_.below(3) == 0) {
        place.lane = -place.lane;
    }
    if (stop.fixed) {
        if (stop.kind == Stop::Kind::resistor && random_.below(2) == 0) {
            place.heading_deg += 180.0;
        }
        place.variant = random_.below(8);
        (void)try_place(k, place);
        return;
    }
    const int dice = random_.below(100);
    const Vec2 here = stop.at_mm;
    const Pose before = k > 0 ? pose(now_, k - 1) : start().pose;
    place.shift_mm = 0.0;
    if (dice < 18) {
        place.heading_deg = bearing_deg(before.at_mm, here);
    } else if (dice < 36 && k + 1 < count()) {
        place.heading_deg = bearing_deg(here, pose(now_, k + 1).at_mm);
    } else if (dice < 54 && k + 1 < count()) {
        line_up(k);
        return;
    } else if (dice < 66) {
        const bool from_next = k + 1 < count() && random_.below(2) == 0;
        if (!onto_line(from_next ? pose(now_, k + 1) : before, stop, place)) {
            return;
        }
    } else if (dice < 88) {
        place.heading_deg = 45.0 * random_.below(8);
    } else {
        place.heading_deg = 15.0 * random_.below(24);
    }
    if (random_.below(8) == 0) {
        place.variant = 0;
    }
    (void)try_place(k, place);
}

bool Annealer::onto_line(const Pose& line, const Stop& stop, Place& place) {
    const double beside = cross(line.heading, stop.at_mm - line.at_mm);
    if (std::abs(beside) > stop.slack_mm) {
        return false;
    }
    place.heading_deg = line.heading_deg;
    place.shift_mm = -beside;
    return true;
}

void Annealer::line_up(std::size_t k) {
    next_ = now_;
    const auto stop_at = [&](std::size_t place) -> const Stop& {
        return task_.stops[static_cast<std::size_t>(next_.places[place].stop)];
    };
    Place& one = next_.places[k];
    Place& two = next_.places[k + 1];
    if (stop_at(k).fixed || stop_at(k + 1).fixed || stop_at(k).kind == Stop::Kind::resistor) {
        return;
    }
    const auto any_shift = [&](const Stop& stop) {
        return random_.below(2) == 0 ? 0.0 : stop.slack_mm * (2.0 * random_.share() - 1.0);
    };
    const Vec2 along = stop_at(k + 1).at_mm - stop_at(k).at_mm;
    const Vec2 side = quarter_turn(unit(along));
    one.shift_mm = any_shift(stop_at(k));
    two.shift_mm = any_shift(stop_at(k + 1));
    const double heading =
        bearing_deg(side * one.shift_mm, along + side * two.shift_mm); // so that both lie on one line
    one.heading_deg = heading;
    const Pose line = pose_of(task_, one);
    if (!onto_line(line, stop_at(k + 1), two)) {
        return;
    }
    std::size_t first = k;
    std::size_t last = k + 1;
    while (last + 1 < count() && last < k + 3 && !stop_at(last + 1).fixed &&
           onto_line(line, stop_at(last + 1), next_.places[last + 1])) {
        ++last;
    }
    if (first > static_cast<std::size_t>(resistors_) && !stop_at(first - 1).fixed &&
        onto_line(line, stop_at(first - 1), next_.places[first - 1])) {
        --first;
    }
    (void)try_places(first, last + 1, next_);
}

void Annealer::vary() {
    const auto k = static_cast<std::size_t>(random_.below(static_cast<int>(count())));
    Place place = now_.places[k];
    place.variant = random_.below(8);
    (void)try_place(k, place);
}

void Annealer::change_start() {
    next_ = now_;
    next_.start = random_.below(static_cast<int>(task_.starts.size()));
    const bool plus_right = task_.starts[static_cast<std::size_t>(next_.start)].plus_right;
    if (plus_right != start().plus_right && any_bound()) {
        for (Place& place : next_.places) {
            face(place, plus_right);
        }
        try_course();
        return;
    }
    if (next_.start != now_.start) {
        try_course();
    }
}

bool Annealer::any_bound() const {
    return !task_.others.empty() ||
           std::any_of(task_.stops.begin(), task_.stops.end(), [](const Stop& s) { return s.fixed; });
}

void Annealer::face(Place& place, bool plus_right) const {
    const Stop& stop = task_.stops[static_cast<std::size_t>(place.stop)];
    if (stop.fixed && stop.kind == Stop::Kind::led) {
        place.heading_deg = fixed_heading(stop, plus_right);
    }
}

void Annealer::settle(Course& course, std::size_t k) const {
    if (k >= course.places.size()) {
        return;
    }
    const Stop& stop = task_.stops[static_cast<std::size_t>(course.places[k].stop)];
    if (stop.fixed) {
        return;
    }
    const Start& begin = task_.starts[static_cast<std::size_t>(course.start)];
    const Pose before = k > 0 ? pose(course, k - 1) : begin.pose;
    const bool last = k + 1 == course.places.size();
    const Pose after = last ? Pose{} : pose(course, k + 1);
    const Vec2 here = stop.at_mm;
    double headings[7] = {bearing_deg(before.at_mm, here),
                          last ? before.heading_deg : bearing_deg(here, after.at_mm)};
    const double about = std::round((last ? headings[0] : bearing_deg(before.at_mm, after.at_mm)) / 45.0);
    int count = 2;
    for (int eighth = -1; eighth <= 1; ++eighth) {
        headings[count++] = 45.0 * (about + eighth);
    }
    double best = 1e300;
    Place chosen = course.places[k];
    for (int i = 0; i < count; ++i) {
        Place place = course.places[k];
        place.heading_deg = headings[i];
        place.shift_mm = 0.0;
        place.variant = 0;
        const Pose pose = pose_of(task_, place);
        const Link in = best_link(task_, begin, before, pose, k == 0, 0);
        double price = in.price_mm + clash_price_ * in.misfit_mm;
        if (!last && price < best) {
            const Link out = best_link(task_, begin, pose, after, false, course.places[k + 1].variant);
            price += out.price_mm + clash_price_ * out.misfit_mm;
        }
        if (price < best) {
            best = price;
            chosen = place;
        }
    }
    course.places[k] = chosen;
}

std::size_t Annealer::position_of(int stop) const {
    for (std::size_t k = 0; k < now_.places.size(); ++k) {
        if (now_.places[k].stop == stop) {
            return k;
        }
    }
    return 0;
}

void Annealer::move_block() {
    const int n = static_cast<int>(count());
    const int from = resistors_ + random_.below(n - resistors_);
    const int size = std::min(1 + random_.below(3), n - from);
    const auto& near =
        neighbours_[static_cast<std::size_t>(now_.places[static_cast<std::size_t>(from)].stop)];
    const int to = static_cast<int>(
        position_of(near[static_cast<std::size_t>(random_.below(static_cast<int>(near.size())))]));
    if (to < resistors_ || (to >= from && to < from + size)) {
        return;
    }
    next_ = now_;
    std::vector<Place>& places = next_.places;
    std::vector<Place> block(places.begin() + from, places.begin() + from + size);
    places.erase(places.begin() + from, places.begin() + from + size);
    if (random_.below(2) == 0) {
        turn_round(block);
    }
    int at = (to > from ? to - size : to) + random_.below(2);
    at = std::clamp(at, resistors_, static_cast<int>(places.size()));
    places.insert(places.begin() + at, block.begin(), block.end());
    settle(next_, static_cast<std::size_t>(at));
    settle(next_, static_cast<std::size_t>(at + size - 1));
    settle(next_, static_cast<std::size_t>(from > at ? from + size : from));
    try_course();
}

void Annealer::turn_round(std::vector<Place>& block) const {
    std::reverse(block.begin(), block.end());
    for (Place& place : block) {
        place.heading_deg += place.heading_deg >= 180.0 ? -180.0 : 180.0;
        place.shift_mm = -place.shift_mm;
        place.lane = -place.lane;
        face(place, start().plus_right);
    }
}

void Annealer::turn_stretch() {
    const int n = static_cast<int>(count());
    int i = resistors_ + random_.below(n - resistors_);
    const auto& near = neighbours_[static_cast<std::size_t>(now_.places[static_cast<std::size_t>(i)].stop)];
    int j = static_cast<int>(
        position_of(near[static_cast<std::size_t>(random_.below(static_cast<int>(near.size())))]));
    if (random_.below(6) == 0) {
        j = n - 1;
    }
    if (i > j) {
        std::swap(i, j);
    }
    i = std::max(i, resistors_);
    if (i >= j) {
        return;
    }
    next_ = now_;
    std::vector<Place> block(next_.places.begin() + i, next_.places.begin() + j + 1);
    turn_round(block);
    std::copy(block.begin(), block.end(), next_.places.begin() + i);
    settle(next_, static_cast<std::size_t>(i));
    settle(next_, static_cast<std::size_t>(j));
    try_course();
}

void Annealer::step() {
    fresh_own_.resize(std::max<std::size_t>(links_.size(), 8));
    const int dice = random_.below(100);
    const bool can_move = static_cast<int>(count()) - resistors_ >= 2;
    if (dice < 62) {
        turn();
    } else if (dice < 72) {
        vary();
    } else if (dice < 76) {
        change_start();
    } else if (can_move && dice < 88) {
        move_block();
    } else if (can_move) {
        turn_stretch();
    }
    if (value(price_, trouble()) < best_value_ - 1e-6) {
        keep_best();
    }
}

} // namespace lanternleaf::routing_stages
