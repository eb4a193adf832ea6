// The annealing: order, headings and ways of one ribbon, with a price for clashes that grows as it cools.
#include "routing/annealer.h"
#include "routing/tour.h"

#include <algorithm>
#include <numeric>

namespace lanternleaf::routing_stages {

namespace {

/// Temperature at first, as a share of what a bend is worth, and at last, in mm of tape.
constexpr double kHot = 0.5;
constexpr double kWarm = 0.2; ///< when it begins from an order that was searched before
constexpr double kCold_mm = 0.4;
constexpr double kFirstClashPrice = 2.0; ///< for each mm of clash or misfit
constexpr double kAgainClashPrice = 6.0;
constexpr double kLastClashPrice = 40.0;
constexpr int kNeighbours = 7;
constexpr int kWatchEvery = 256;

} // namespace

Annealer::Annealer(const WeaveTask& task, Random& random) : task_(task), random_(random) {
    for (const Stop& stop : task.stops) {
        resistors_ += stop.kind == Stop::Kind::resistor ? 1 : 0;
    }
    find_neighbours();
}

Woven Annealer::run() {
    begin();
    keep_best();
    for (int move = 0; move < task_.moves; ++move) {
        const double t = static_cast<double>(move) / task_.moves;
        const double hot_mm = (task_.first.empty() ? kHot : kWarm) * std::max(task_.taste.bend_mm, 8.0);
        heat_mm_ = hot_mm * std::pow(kCold_mm / hot_mm, t);
        const double first = task_.first.empty() ? kFirstClashPrice : kAgainClashPrice;
        set_clash_price(first * std::pow(kLastClashPrice / first, t));
        step();
        if (move % kWatchEvery == 0 && task_.go_on && !task_.go_on()) {
            break;
        }
    }
    set_clash_price(kLastClashPrice);
    heat_mm_ = 0.0;
    now_ = best_;
    rebuild();
    polish();
    return read_out();
}

void Annealer::find_neighbours() {
    neighbours_.resize(count());
    for (std::size_t i = 0; i < count(); ++i) {
        std::vector<int> all(count());
        std::iota(all.begin(), all.end(), 0);
        all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
        const auto size = std::min<std::size_t>(all.size(), kNeighbours);
        const Vec2 at = task_.stops[i].at_mm;
        std::partial_sort(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(size), all.end(),
                          [&](int a, int b) {
                              return distance(at, task_.stops[static_cast<std::size_t>(a)].at_mm) <
                                     distance(at, task_.stops[static_cast<std::size_t>(b)].at_mm);
                          });
        all.resize(size);
        neighbours_[i] = std::move(all);
    }
}

void Annealer::begin() {
    if (!task_.first.empty()) {
        now_.places = task_.first;
        for (std::size_t s = 0; s < task_.starts.size(); ++s) {
            if (task_.starts[s].pose.heading_deg == task_.first_start.pose.heading_deg &&
                task_.starts[s].plus_right == task_.first_start.plus_right &&
                distance(task_.starts[s].root_mm, task_.first_start.root_mm) < 1e-9) {
                now_.start = static_cast<int>(s);
            }
        }
        rebuild();
        return;
    }
    double best = 1e300;
    Course chosen;
    std::vector<Vec2> sites;
    sites.push_back({});
    for (int k = resistors_; k < static_cast<int>(count()); ++k) {
        sites.push_back(task_.stops[static_cast<std::size_t>(k)].at_mm);
    }
    Vec2 last_root{1e300, 1e300};
    std::vector<int> order;
    for (std::size_t s = 0; s < task_.starts.size(); ++s) {
        const Start& start = task_.starts[s];
        const Vec2 root =
            resistors_ > 0 ? task_.stops[static_cast<std::size_t>(resistors_ - 1)].at_mm : start.pose.at_mm;
        if (distance(root, last_root) > 8.0) {
            sites[0] = root;
            order = quick_tour(sites).order;
            last_root = root;
        }
        if (start.price_mm > task_.starts[0].price_mm && start.from_holder && s > 0) {
            continue; // slanted: found by the annealing where it pays
        }
        now_.start = static_cast<int>(s);
        now_.places.clear();
        for (int k = 0; k < resistors_; ++k) {
            now_.places.push_back({k, 0.0, 0, 1, 0.0});
        }
        for (std::size_t k = 1; k < order.size(); ++k) {
            now_.places.push_back({order[k] - 1 + resistors_, 0.0, 0, 1, 0.0});
        }
        if (task_.starts.size() > 12 && s > 0) {
            // Many starts (a branch): only those that lie well are aimed.
            const double far = distance(root, sites[static_cast<std::size_t>(order.back())]);
            if (start.price_mm + far > best) {
                continue;
            }
        }
        aim(task_, start, now_.places);
        rebuild();
        if (value(price_, trouble()) < best) {
            best = value(price_, trouble());
            chosen = now_;
        }
    }
    now_ = chosen;
    rebuild();
}

Pose Annealer::pose(const Course& course, std::size_t k) const {
    return pose_of(task_, course.places[k]);
}

Link Annealer::make_link(const Course& course, std::size_t k) const {
    const Start& begin = task_.starts[static_cast<std::size_t>(course.start)];
    if (k == course.places.size()) {
        return tail_link(task_, begin, pose(course, k - 1));
    }
    const Pose to = pose(course, k);
    return best_link(task_, begin, k == 0 ? begin.pose : pose(course, k - 1), to, k == 0,
                     course.places[k].variant);
}

void Annealer::rebuild() {
    links_.clear();
    own_.clear();
    for (std::size_t k = 0; k <= now_.places.size(); ++k) {
        links_.push_back(make_link(now_, k));
        own_.push_back(burden(now_, links_[k]));
    }
    pairs_.assign(links_.size() * links_.size(), 0.0F);
    for (std::size_t i = 0; i < links_.size(); ++i) {
        for (std::size_t j = i + 1; j < links_.size(); ++j) {
            pairs_[i * links_.size() + j] = pair(links_[i], links_[j], j - i);
        }
    }
    total_up();
}

double Annealer::burden(const Course& course, const Link& link) const {
    return link.misfit_mm +
           (task_.others.empty()
                ? 0.0
                : clash_with_others(task_, task_.starts[static_cast<std::size_t>(course.start)], link));
}

float Annealer::pair(const Link& a, const Link& b, std::size_t apart) const {
    return static_cast<float>(clash(a, b, task_.field->gauge(), apart <= 1, false));
}

void Annealer::total_up() {
    price_ = start().price_mm;
    own_total_ = 0.0;
    for (std::size_t k = 0; k < links_.size(); ++k) {
        price_ += links_[k].price_mm;
        own_total_ += own_[k];
    }
    clash_total_ = std::accumulate(pairs_.begin(), pairs_.end(), 0.0);
}

void Annealer::set_clash_price(double price) {
    clash_price_ = price;
    best_value_ = value(best_price_, best_trouble_);
}

void Annealer::keep_best() {
    best_ = now_;
    best_price_ = price_;
    best_trouble_ = trouble();
    best_value_ = value(best_price_, best_trouble_);
}

bool Annealer::accept(double gain) {
    return gain >= 0.0 || (heat_mm_ > 0.0 && random_.share() < std::exp(gain / heat_mm_));
}

bool Annealer::try_places(std::size_t first, std::size_t last, const Course& next) {
    const std::size_t n = links_.size();
    fresh_.clear();
    double price = price_;
    double own = own_total_;
    double clashes = clash_total_;
    for (std::size_t k = first; k <= last; ++k) {
        fresh_.push_back(make_link(next, k));
        price += fresh_.back().price_mm - links_[k].price_mm;
        fresh_own_[k - first] = burden(next, fresh_.back());
        own += fresh_own_[k - first] - own_[k];
    }
    rows_.assign((last - first + 1) * n, 0.0F);
    for (std::size_t k = first; k <= last; ++k) {
        for (std::size_t j = 0; j < n; ++j) {
            if (j >= first && j <= k) {
                continue; // counted from the earlier row
            }
            const std::size_t low = std::min(j, k);
            const std::size_t high = std::max(j, k);
            const Link& other = j >= first && j <= last ? fresh_[j - first] : links_[j];
            const float now = pair(fresh_[k - first], other, high - low);
            rows_[(k - first) * n + j] = now;
            clashes += static_cast<double>(now) - static_cast<double>(pairs_[low * n + high]);
        }
    }
    if (!accept(value(price_, trouble()) - value(price, own + clashes))) {
        return false;
    }
    for (std::size_t k = first; k <= last; ++k) {
        links_[k] = fresh_[k - first];
        own_[k] = fresh_own_[k - first];
        for (std::size_t j = 0; j < n; ++j) {
            if (j < first || j > k) {
                pairs_[std::min(j, k) * n + std::max(j, k)] = rows_[(k - first) * n + j];
            }
        }
    }
    now_ = next;
    price_ = price;
    own_total_ = own;
    clash_total_ = clashes;
    return true;
}

bool Annealer::try_place(std::size_t k, const Place& place) {
    if (place == now_.places[k]) {
        return false;
    }
    next_ = now_;
    next_.places[k] = place;
    return try_places(k, k + 1, next_);
}

void Annealer::try_course() {
    const std::size_t n = links_.size();
    fresh_.resize(n);
    from_.assign(n, -1);
    std::vector<int> was(count());
    for (std::size_t k = 0; k < now_.places.size(); ++k) {
        was[static_cast<std::size_t>(now_.places[k].stop)] = static_cast<int>(k);
    }
    double price = task_.starts[static_cast<std::size_t>(next_.start)].price_mm;
    double own = 0.0;
    fresh_own_.resize(std::max(fresh_own_.size(), n));
    const bool same_side =
        task_.starts[static_cast<std::size_t>(next_.start)].plus_right == start().plus_right;
    for (std::size_t k = 0; k < n; ++k) {
        const bool tail = k + 1 == n;
        const int old = tail ? static_cast<int>(n) - 1 : was[static_cast<std::size_t>(next_.places[k].stop)];
        const auto o = static_cast<std::size_t>(old);
        const bool place_same = tail || now_.places[o] == next_.places[k];
        const bool before_same = k == 0 ? old == 0 && now_.start == next_.start
                                        : old > 0 && now_.places[o - 1] == next_.places[k - 1];
        if (place_same && before_same && same_side) {
            from_[k] = old;
            fresh_[k] = links_[o];
            fresh_own_[k] = own_[o];
        } else {
            fresh_[k] = make_link(next_, k);
            fresh_own_[k] = burden(next_, fresh_[k]);
        }
        price += fresh_[k].price_mm;
        own += fresh_own_[k];
    }
    const double enough = value(price_, trouble()) - value(price, own);
    if (enough < -8.0 * std::max(heat_mm_, 0.01)) {
        return; // hopeless before any clash is counted
    }
    rows_.assign(n * n, 0.0F);
    double clashes = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) {
            float now = 0.0F;
            if (from_[i] >= 0 && from_[j] >= 0) {
                const auto a = static_cast<std::size_t>(std::min(from_[i], from_[j]));
                const auto b = static_cast<std::size_t>(std::max(from_[i], from_[j]));
                now = pairs_[a * n + b];
            } else {
                now = pair(fresh_[i], fresh_[j], j - i);
            }
            rows_[i * n + j] = now;
            clashes += static_cast<double>(now);
        }
    }
    if (accept(value(price_, trouble()) - value(price, own + clashes))) {
        links_.swap(fresh_);
        pairs_.swap(rows_);
        own_.assign(fresh_own_.begin(), fresh_own_.begin() + static_cast<std::ptrdiff_t>(n));
        now_ = next_;
        price_ = price;
        own_total_ = own;
        clash_total_ = clashes;
    }
}

void Annealer::polish() {
    fresh_own_.resize(std::max<std::size_t>(links_.size(), 8));
    for (int round = 0; round < 4; ++round) {
        const double before = value(price_, trouble());
        for (std::size_t k = 0; k < now_.places.size(); ++k) {
            const Stop& stop = task_.stops[static_cast<std::size_t>(now_.places[k].stop)];
            std::vector<double> headings = free_headings(stop, start().plus_right, 15.0);
            if (!stop.fixed) {
                const Vec2 here = pose(now_, k).at_mm;
                headings.push_back(bearing_deg(k > 0 ? pose(now_, k - 1).at_mm : start().pose.at_mm, here));
                if (k + 1 < count()) {
                    headings.push_back(bearing_deg(here, pose(now_, k + 1).at_mm));
                }
            }
            for (const double heading : headings) {
                Place place = now_.places[k];
                place.heading_deg = heading;
                place.shift_mm = 0.0;
                (void)try_place(k, place);
            }
            for (int variant = 0; trouble() > 0.05 && variant < 8; ++variant) {
                Place place = now_.places[k];
                place.variant = variant;
                (void)try_place(k, place);
            }
        }
        if (value(price_, trouble()) > before - 1e-6 || (task_.go_on && !task_.go_on())) {
            break;
        }
    }
}

Woven Annealer::read_out() const {
    Woven out;
    out.start = start();
    out.places = now_.places;
    out.links = links_;
    out.price_mm = price_;
    for (const Link& link : links_) {
        out.misfit_mm += link.misfit_mm;
    }
    out.clash_mm = std::max(0.0, trouble() - out.misfit_mm);
    return out;
}

Woven weave(const WeaveTask& task, Random& random) {
    return Annealer(task, random).run();
}

} // namespace lanternleaf::routing_stages
