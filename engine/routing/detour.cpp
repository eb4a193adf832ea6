// A link that finds no clear way in three runs is led over one more place. Every place of a coarse lattice is
// tried with eight headings: few enough to try them all, and what is found has no luck in it.
#include "routing/weave.h"

#include <algorithm>

namespace lanternleaf::routing_stages {

namespace {

constexpr double kLattice_mm = 7.0;
constexpr double kTroublePrice = 40.0;
/// One lattice tried through costs about as much as this many moves of the annealing.
constexpr long kWorthMoves = 2000;
/// How far beyond its two ends a link may wander.
constexpr double kWander_mm = 70.0;

Link joined(const Link& a, const Link& b, const Gauge& gauge) {
    Link link = a;
    for (int i = 1; i < b.count; ++i) {
        link.add(b.middle[static_cast<std::size_t>(i)]);
    }
    // The place between lies on a straight run.
    const auto via = static_cast<std::size_t>(a.count - 1);
    for (auto i = via; i + 1 < static_cast<std::size_t>(link.count); ++i) {
        link.middle[i] = link.middle[i + 1];
    }
    --link.count;
    link.length_mm += b.length_mm;
    link.bends += b.bends;
    link.price_mm += b.price_mm;
    link.misfit_mm += b.misfit_mm;
    spread(link, gauge);
    return link;
}

/// How often a link comes too near itself.
double own_clash(const Link& a, const Link& b, const Gauge& gauge) {
    return clash(a, b, gauge, true, false);
}

class Wanderer {
public:
    Wanderer(const WeaveTask& task, Woven& woven) : task_(task), woven_(woven) {}

    [[nodiscard]] double trouble_of(const Link& link, std::size_t k) const {
        double sum = link.misfit_mm + clash_with_others(task_, woven_.start, link);
        for (std::size_t j = 0; j < woven_.links.size(); ++j) {
            if (j != k) {
                const bool near = (j > k ? j - k : k - j) <= 1;
                sum += clash(link, woven_.links[j], task_.field->gauge(), near, false);
            }
        }
        return sum;
    }

    /// Whether a better way was found for link k.
    bool lead(std::size_t k) {
        const Gauge& gauge = task_.field->gauge();
        const Pose from = k == 0 ? woven_.start.pose : pose_of(task_, woven_.places[k - 1]);
        const Pose to = pose_of(task_, woven_.places[k]);
        Box box;
        box.add(from.at_mm);
        box.add(to.at_mm);
        box = box.grown(kWander_mm);
        const double now = woven_.links[k].price_mm + kTroublePrice * trouble_of(woven_.links[k], k);
        double best = now - 1.0;
        Link chosen;
        for (double x = box.min.x; x <= box.max.x; x += kLattice_mm) {
            if (task_.go_on && !task_.go_on()) {
                break;
            }
            for (double y = box.min.y; y <= box.max.y; y += kLattice_mm) {
                const double least = 2.0 * (distance(from.at_mm, {x, y}) + distance({x, y}, to.at_mm));
                for (int eighth = 0; least < best && eighth < 8; ++eighth) {
                    const Pose via = make_pose({x, y}, 45.0 * eighth, 0.5 * gauge.half_mm);
                    const Link a = best_link(task_, woven_.start, from, via, k == 0, 0);
                    if (!a.made || a.price_mm + kTroublePrice * a.misfit_mm > best) {
                        continue;
                    }
                    const Link b = best_link(task_, woven_.start, via, to, false, 0);
                    if (!b.made) {
                        continue;
                    }
                    double value = a.price_mm + b.price_mm +
                                   kTroublePrice * (a.misfit_mm + b.misfit_mm + own_clash(a, b, gauge));
                    if (value >= best) {
                        continue;
                    }
                    const Link both = joined(a, b, gauge);
                    value += kTroublePrice * (trouble_of(both, k) - both.misfit_mm);
                    if (value < best) {
                        best = value;
                        chosen = both;
                    }
                }
            }
        }
        if (chosen.count == 0) {
            return false;
        }
        woven_.links[k] = chosen;
        return true;
    }

    void total_up() {
        const std::size_t n = woven_.links.size();
        woven_.price_mm = woven_.start.price_mm;
        woven_.misfit_mm = 0.0;
        woven_.clash_mm = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            woven_.price_mm += woven_.links[i].price_mm;
            woven_.misfit_mm += woven_.links[i].misfit_mm;
            woven_.clash_mm += clash_with_others(task_, woven_.start, woven_.links[i]);
            for (std::size_t j = i + 1; j < n; ++j) {
                woven_.clash_mm +=
                    clash(woven_.links[i], woven_.links[j], task_.field->gauge(), j == i + 1, false);
            }
        }
    }

private:
    const WeaveTask& task_;
    Woven& woven_;
};

} // namespace

void detour(const WeaveTask& task, Woven& woven) {
    Wanderer wanderer(task, woven);
    for (int round = 0; round < 2; ++round) {
        bool any = false;
        for (std::size_t k = 0; k + 1 < woven.links.size(); ++k) {
            if (wanderer.trouble_of(woven.links[k], k) > 0.05) {
                if (task.moves_left != nullptr && (*task.moves_left -= kWorthMoves) < 0) {
                    break;
                }
                any = wanderer.lead(k) || any;
            }
        }
        if (!any) {
            break;
        }
    }
    wanderer.total_up();
}

} // namespace lanternleaf::routing_stages
