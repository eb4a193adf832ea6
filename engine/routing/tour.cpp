#include "routing/tour.h"

#include <algorithm>
#include <cstdint>

namespace lanternleaf::routing_stages {

namespace {

constexpr double kGain_mm = 1e-9;

class Distances {
public:
    explicit Distances(std::span<const Vec2> places) : count_(places.size()), mm_(count_ * count_) {
        for (std::size_t i = 0; i < count_; ++i) {
            for (std::size_t j = 0; j < count_; ++j) {
                mm_[i * count_ + j] = distance(places[i], places[j]);
            }
        }
    }

    [[nodiscard]] double operator()(int a, int b) const {
        return mm_[static_cast<std::size_t>(a) * count_ + static_cast<std::size_t>(b)];
    }

private:
    std::size_t count_;
    std::vector<double> mm_;
};

double length_of(const std::vector<int>& order, const Distances& mm) {
    double sum = 0.0;
    for (std::size_t i = 1; i < order.size(); ++i) {
        sum += mm(order[i - 1], order[i]);
    }
    return sum;
}

std::vector<int> nearest_first(std::size_t count, const Distances& mm) {
    std::vector<int> order{0};
    std::vector<bool> used(count, false);
    used[0] = true;
    while (order.size() < count) {
        int best = -1;
        for (int k = 0; k < static_cast<int>(count); ++k) {
            if (!used[static_cast<std::size_t>(k)] &&
                (best < 0 || mm(order.back(), k) < mm(order.back(), best))) {
                best = k;
            }
        }
        used[static_cast<std::size_t>(best)] = true;
        order.push_back(best);
    }
    return order;
}

/// Turns a stretch round where that shortens the path; the last one may be turned out to the end.
bool two_opt(std::vector<int>& order, const Distances& mm) {
    bool any = false;
    const std::size_t n = order.size();
    for (std::size_t i = 1; i + 1 < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) {
            double gain = mm(order[i - 1], order[i]) - mm(order[i - 1], order[j]);
            if (j + 1 < n) {
                gain += mm(order[j], order[j + 1]) - mm(order[i], order[j + 1]);
            }
            if (gain > kGain_mm) {
                std::reverse(order.begin() + static_cast<std::ptrdiff_t>(i),
                             order.begin() + static_cast<std::ptrdiff_t>(j) + 1);
                any = true;
            }
        }
    }
    return any;
}

/// Moves one to three places in a row elsewhere.
bool or_opt(std::vector<int>& order, const Distances& mm) {
    const std::size_t n = order.size();
    for (std::size_t size = 1; size <= 3; ++size) {
        for (std::size_t i = 1; i + size <= n; ++i) {
            std::vector<int> rest(order);
            const auto first = rest.begin() + static_cast<std::ptrdiff_t>(i);
            std::vector<int> moved(first, first + static_cast<std::ptrdiff_t>(size));
            rest.erase(first, first + static_cast<std::ptrdiff_t>(size));
            const double without = length_of(rest, mm);
            const double now = length_of(order, mm);
            const double inside = length_of(moved, mm);
            for (std::size_t at = 1; at <= rest.size(); ++at) {
                const int before = rest[at - 1];
                const bool end = at == rest.size();
                const double open = end ? 0.0 : mm(before, rest[at]);
                for (const bool turn : {false, true}) {
                    const int head = turn ? moved.back() : moved.front();
                    const int foot = turn ? moved.front() : moved.back();
                    const double with =
                        without - open + inside + mm(before, head) + (end ? 0.0 : mm(foot, rest[at]));
                    if (with < now - kGain_mm) {
                        if (turn) {
                            std::reverse(moved.begin(), moved.end());
                        }
                        rest.insert(rest.begin() + static_cast<std::ptrdiff_t>(at), moved.begin(),
                                    moved.end());
                        order = std::move(rest);
                        return true;
                    }
                }
            }
        }
    }
    return false;
}

/// Held and Karp: best[set][last] over the places other than 0.
Tour exact_tour(std::span<const Vec2> places, const Distances& mm) {
    const std::size_t n = places.size() - 1;
    const std::size_t sets = std::size_t{1} << n;
    std::vector<float> best(sets * n, 1e30F);
    std::vector<std::int8_t> from(sets * n, -1);
    for (std::size_t k = 0; k < n; ++k) {
        best[(std::size_t{1} << k) * n + k] = static_cast<float>(mm(0, static_cast<int>(k) + 1));
    }
    for (std::size_t set = 1; set < sets; ++set) {
        for (std::size_t last = 0; last < n; ++last) {
            const float here = best[set * n + last];
            if (here >= 1e30F) {
                continue;
            }
            for (std::size_t next = 0; next < n; ++next) {
                if ((set >> next & 1U) != 0) {
                    continue;
                }
                const std::size_t wider = (set | std::size_t{1} << next) * n + next;
                const float there =
                    here + static_cast<float>(mm(static_cast<int>(last) + 1, static_cast<int>(next) + 1));
                if (there < best[wider]) {
                    best[wider] = there;
                    from[wider] = static_cast<std::int8_t>(last);
                }
            }
        }
    }
    Tour tour;
    tour.exact = true;
    std::size_t set = sets - 1;
    std::size_t last = 0;
    for (std::size_t k = 1; k < n; ++k) {
        last = best[set * n + k] < best[set * n + last] ? k : last;
    }
    for (;;) {
        tour.order.push_back(static_cast<int>(last) + 1);
        const int before = from[set * n + last];
        set &= ~(std::size_t{1} << last);
        if (before < 0) {
            break;
        }
        last = static_cast<std::size_t>(before);
    }
    tour.order.push_back(0);
    std::reverse(tour.order.begin(), tour.order.end());
    tour.length_mm = length_of(tour.order, mm);
    return tour;
}

} // namespace

Tour quick_tour(std::span<const Vec2> places) {
    const Distances mm(places);
    Tour tour;
    if (places.empty()) {
        return tour;
    }
    tour.order = nearest_first(places.size(), mm);
    while (two_opt(tour.order, mm) || or_opt(tour.order, mm)) {
    }
    tour.length_mm = length_of(tour.order, mm);
    return tour;
}

Tour short_tour(std::span<const Vec2> places) {
    if (places.size() < 2 || places.size() > kExactPlaces) {
        return quick_tour(places);
    }
    return exact_tour(places, Distances(places));
}

} // namespace lanternleaf::routing_stages
