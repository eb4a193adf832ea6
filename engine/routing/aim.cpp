// Which way each stop faces, for a given order: a dynamic programme along the path. Clashes between pieces
// far apart on the path are not in it; the annealing sees to those.
#include "routing/weave.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

constexpr double kMisfitPrice = 30.0;
constexpr double kStretches_mm[] = {0.0, 6.0, 12.0, 22.0};
/// The tail goes this far past the last pad.
constexpr double kTail_mm = 1.5;
constexpr double kNoWay_mm = 400.0;
constexpr double kNoWayMisfit_mm = 40.0;

} // namespace

double bearing_deg(Vec2 from, Vec2 to) {
    const double deg = degrees(std::atan2(to.y - from.y, to.x - from.x));
    const double near = std::round(deg); // 90, not 90.00000000000001
    return std::abs(deg - near) < 1e-9 ? near : deg;
}

double fixed_heading(const Stop& stop, bool plus_right) {
    if (stop.kind == Stop::Kind::resistor) {
        return stop.turn_deg;
    }
    return stop.turn_deg + (plus_right ? -90.0 : 90.0);
}

std::vector<double> free_headings(const Stop& stop, bool plus_right, double step_deg) {
    std::vector<double> out;
    if (stop.fixed) {
        out.push_back(fixed_heading(stop, plus_right));
        if (stop.kind == Stop::Kind::resistor) {
            out.push_back(out.front() + 180.0);
        }
        return out;
    }
    for (double deg = 0.0; deg < 360.0; deg += step_deg) {
        out.push_back(deg);
    }
    return out;
}

Pose pose_of(const WeaveTask& task, const Place& place) {
    const Stop& stop = task.stops[static_cast<std::size_t>(place.stop)];
    Pose pose = make_pose(stop.at_mm, place.heading_deg, stop.half_mm);
    if (place.shift_mm != 0.0) {
        pose.at_mm = pose.at_mm + quarter_turn(pose.heading) * place.shift_mm;
    }
    if (stop.kind == Stop::Kind::resistor) {
        pose.at_mm = stop.at_mm - quarter_turn(pose.heading) * (place.lane * task.field->gauge().off_mm);
    }
    return pose;
}

Link best_link(const WeaveTask& task, const Start& start, const Pose& from, const Pose& to, bool first,
               int variant) {
    const Gauge& gauge = task.field->gauge();
    const Field::Role role{first && start.from_holder, start.plus_right};
    Ways ways;
    const bool second_best = variant % 2 == 1;
    // Where the way with fewest bends is free and cannot be beaten, no other is made.
    find_few_bends(from, to, gauge, task.taste, ways);
    if (!second_best && ways.count > 0 &&
        ways.way[0].price_mm <= 2.0 * distance(from.at_mm, to.at_mm) + 2.0 * task.taste.bend_mm) {
        Link link = link_of(from, to, ways.way[0], gauge);
        task.field->judge(link, role);
        if (link.misfit_mm == 0.0 && link.price_mm == ways.way[0].price_mm) {
            return link;
        }
    }
    find_ways(from, to, gauge, task.taste, kStretches_mm[(variant / 2) % 4], ways);
    if (ways.count == 0) {
        Link link = straight_line(from.at_mm, to.at_mm, gauge);
        link.price_mm += kNoWay_mm;
        link.misfit_mm = kNoWayMisfit_mm;
        return link;
    }
    Link best;
    Link second;
    double best_weight = 1e300;
    double second_weight = 1e300;
    for (int k = 0; k < ways.count; ++k) {
        const Way& way = ways.way[static_cast<std::size_t>(k)];
        if (way.price_mm >= (second_best ? second_weight : best_weight)) {
            break; // dearer by shape alone
        }
        Link link = link_of(from, to, way, gauge);
        task.field->judge(link, role);
        const double weight = link.price_mm + kMisfitPrice * link.misfit_mm;
        if (weight < best_weight) {
            second = best;
            second_weight = best_weight;
            best = link;
            best_weight = weight;
        } else if (weight < second_weight) {
            second = link;
            second_weight = weight;
        }
    }
    return second_best && second_weight < 1e300 ? second : best;
}

Link tail_link(const WeaveTask& task, const Start& start, const Pose& last) {
    const Gauge& gauge = task.field->gauge();
    Link link = straight_line(last.at_mm, last.at_mm + last.heading * (last.half_mm + kTail_mm), gauge);
    link.made = true;
    task.field->judge(link, {false, start.plus_right});
    return link;
}

double clash_with_others(const WeaveTask& task, const Start& start, const Link& link) {
    double sum = 0.0;
    for (const Woven& other : task.others) {
        for (const Link& theirs : other.links) {
            sum +=
                clash(link, theirs, task.field->gauge(), false, other.start.plus_right != start.plus_right);
        }
    }
    return sum;
}

void aim(const WeaveTask& task, const Start& start, std::vector<Place>& places) {
    struct State {
        Place place;
        Pose pose;
        double price = 0.0;
        int from = -1;
    };

    const std::size_t n = places.size();
    std::vector<Vec2> sites;
    for (const Place& place : places) {
        sites.push_back(task.stops[static_cast<std::size_t>(place.stop)].at_mm);
    }
    std::vector<std::vector<State>> steps(n);
    for (std::size_t k = 0; k < n; ++k) {
        const Stop& stop = task.stops[static_cast<std::size_t>(places[k].stop)];
        std::vector<double> headings = free_headings(stop, start.plus_right, n > 16 ? 45.0 : 30.0);
        if (!stop.fixed) {
            headings.push_back(bearing_deg(k > 0 ? sites[k - 1] : start.pose.at_mm, sites[k]));
            if (k + 1 < n) {
                headings.push_back(bearing_deg(sites[k], sites[k + 1]));
            }
        }
        for (const double heading : headings) {
            for (const int lane : {1, -1}) {
                if (lane < 0 && stop.kind == Stop::Kind::led) {
                    continue;
                }
                State state;
                state.place = {places[k].stop, heading, 0, lane, 0.0};
                state.pose = pose_of(task, state.place);
                steps[k].push_back(state);
            }
        }
        const int before = k > 0 ? static_cast<int>(k) - 1 : -1;
        for (State& state : steps[k]) {
            double best = 1e300;
            const auto come_from = [&](const Pose& from, double price, int index) {
                const double least = price + 2.0 * distance(from.at_mm, state.pose.at_mm);
                if (least >= best) {
                    return;
                }
                const Link link = best_link(task, start, from, state.pose, k == 0, 0);
                double total = price + link.price_mm + kMisfitPrice * link.misfit_mm;
                if (total < best && link.made) {
                    total += 10.0 * task.field->over_places(link, sites, before, static_cast<int>(k));
                }
                if (!task.others.empty() && total < best) {
                    total += kMisfitPrice * clash_with_others(task, start, link);
                }
                if (total < best) {
                    best = total;
                    state.from = index;
                }
            };
            if (k == 0) {
                come_from(start.pose, start.price_mm, 0);
            } else {
                for (std::size_t i = 0; i < steps[k - 1].size(); ++i) {
                    come_from(steps[k - 1][i].pose, steps[k - 1][i].price, static_cast<int>(i));
                }
            }
            state.price = best;
        }
    }
    if (n == 0) {
        return;
    }
    std::size_t at = 0;
    for (std::size_t i = 1; i < steps[n - 1].size(); ++i) {
        at = steps[n - 1][i].price < steps[n - 1][at].price ? i : at;
    }
    for (std::size_t k = n; k-- > 0;) {
        places[k] = steps[k][at].place;
        at = static_cast<std::size_t>(std::max(0, steps[k][at].from));
    }
}

} // namespace lanternleaf::routing_stages
