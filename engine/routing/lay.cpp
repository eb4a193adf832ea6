#include "routing/lay.h"

#include <algorithm>
#include <set>

namespace lanternleaf::routing_stages {

namespace {

/// A bend of less than this is drift from the grid, not a fold (sine of the turn)...
constexpr double kStraightOn = 0.03;
/// ...as long as leaving it out moves the tape less than this.
constexpr double kStraightOn_mm = 0.4;
/// Tape reaches this far under a resistor beyond its pad's inner edge.
constexpr double kUnderResistor_mm = 0.5;
constexpr double kPatch_mm = 14.0;
constexpr double kPatchSpare_mm = 4.5;

Vec2 snapped(Vec2 p, double step) {
    const auto snap = [step](double v) {
        // The nearest number that prints with few digits.
        return std::round(std::round(v / step) * step * 100.0) / 100.0;
    };
    return {snap(p.x), snap(p.y)};
}

/// Middle points without the stops that lie on a straight run.
std::vector<Vec2> chain_of(const Woven& ribbon) {
    std::vector<Vec2> chain;
    for (const Link& link : ribbon.links) {
        for (int i = chain.empty() ? 0 : 1; i < link.count; ++i) {
            const Vec2 p = link.middle[static_cast<std::size_t>(i)];
            if (chain.empty() || distance(chain.back(), p) > 1e-6) {
                chain.push_back(p);
            }
        }
    }
    std::vector<Vec2> out;
    for (std::size_t i = 0; i < chain.size(); ++i) {
        if (i > 0 && i + 1 < chain.size()) {
            const Vec2 in = unit(chain[i] - out.back());
            const Vec2 on = unit(chain[i + 1] - chain[i]);
            if (std::abs(cross(in, on)) < 0.002 && dot(in, on) > 0.0) {
                continue;
            }
        }
        out.push_back(chain[i]);
    }
    return out;
}

std::vector<Vec2> beside(const std::vector<Vec2>& chain, double off) {
    std::vector<Vec2> out;
    Vec2 in = unit(chain[1] - chain[0]);
    for (std::size_t i = 0; i < chain.size(); ++i) {
        const Vec2 on = i + 1 < chain.size() ? unit(chain[i + 1] - chain[i]) : in;
        const Vec2 n_in = quarter_turn(in);
        const Vec2 n_on = quarter_turn(on);
        out.push_back(chain[i] + (n_in + n_on) * (off / (1.0 + dot(n_in, n_on))));
        in = on;
    }
    return out;
}

/// On the grid, without points that no longer bend.
std::vector<Vec2> tidy(const std::vector<Vec2>& path, double step) {
    std::vector<Vec2> grid;
    for (const Vec2 p : path) {
        const Vec2 q = snapped(p, step);
        if (grid.empty() || !(grid.back() == q)) {
            grid.push_back(q);
        }
    }
    for (std::size_t i = 1; i + 1 < grid.size();) {
        const Vec2 in = unit(grid[i] - grid[i - 1]);
        const Vec2 on = unit(grid[i + 1] - grid[i]);
        if (dot(in, on) > 0.0 && std::abs(cross(in, on)) < kStraightOn &&
            distance_to_segment(grid[i], grid[i - 1], grid[i + 1]) < kStraightOn_mm) {
            grid.erase(grid.begin() + static_cast<std::ptrdiff_t>(i));
        } else {
            ++i;
        }
    }
    return grid;
}

struct Tape {
    Side side = Side::negative;
    std::vector<Vec2> path;
};

/// Cuts a tape where a resistor bridges it.
void cut(std::vector<Tape>& tapes, Vec2 at, Vec2 along, double gap_mm) {
    for (std::size_t t = 0; t < tapes.size(); ++t) {
        std::vector<Vec2>& path = tapes[t].path;
        for (std::size_t i = 1; i < path.size(); ++i) {
            if (distance_to_segment(at, path[i - 1], path[i]) > 1.0) {
                continue;
            }
            const double way = dot(along, path[i] - path[i - 1]) >= 0.0 ? 1.0 : -1.0;
            Tape rest{tapes[t].side, {at + along * (way * gap_mm)}};
            rest.path.insert(rest.path.end(), path.begin() + static_cast<std::ptrdiff_t>(i), path.end());
            path.resize(i);
            path.push_back(at - along * (way * gap_mm));
            tapes.insert(tapes.begin() + static_cast<std::ptrdiff_t>(t) + 1, rest);
            return;
        }
    }
}

double tidy_turn(double deg) {
    const double whole = std::round(deg);
    return whole - 360.0 * std::floor(whole / 360.0);
}

class Builder {
public:
    Builder(const Layer& layer, const std::vector<Woven>& ribbons)
        : layer_(layer), gauge_(layer.task->field->gauge()), ribbons_(ribbons) {
        made_.card = *layer.kept;
        for (const Laid& laid : made_.card.laid) {
            used_.insert(id_of(laid));
        }
        for (const Led& led : made_.card.leds) {
            used_.insert(led.id);
        }
        for (const ResistorPart& part : made_.card.resistors) {
            used_.insert(part.id);
        }
    }

    LaidCard build() {
        for (const Woven& ribbon : ribbons_) {
            turn_parts(ribbon);
            add_tapes(ribbon);
        }
        for (const Side side : {Side::negative, Side::positive}) {
            for (const Tape& tape : tapes_) {
                if (tape.side == side) {
                    add_strip(tape);
                }
            }
        }
        add_patches();
        return std::move(made_);
    }

private:
    void turn_parts(const Woven& ribbon) {
        for (const Place& place : ribbon.places) {
            const Stop& stop = layer_.task->stops[static_cast<std::size_t>(place.stop)];
            if (stop.fixed) {
                continue;
            }
            const bool led = stop.kind == Stop::Kind::led;
            const auto i = static_cast<std::size_t>(stop.index);
            double& turn = led ? made_.card.leds[i].turn_deg : made_.card.resistors[i].turn_deg;
            const double wanted = tidy_turn(led ? place.heading_deg + (ribbon.start.plus_right ? 90.0 : -90.0)
                                                : place.heading_deg);
            const double off = std::abs(std::remainder(wanted - turn, led ? 360.0 : 180.0));
            if (off < 0.75) {
                continue; // as it lies already
            }
            turn = wanted;
            made_.turned.push_back(led ? made_.card.leds[i].id : made_.card.resistors[i].id);
        }
    }

    void add_tapes(const Woven& ribbon) {
        const std::vector<Vec2> chain = chain_of(ribbon);
        if (chain.size() < 2) {
            return;
        }
        const Roots roots = roots_of(*layer_.card, *layer_.parts, gauge_, ribbon.start, ribbons_);
        for (const bool is_right : {true, false}) {
            const std::vector<Vec2>& root = is_right ? roots.right : roots.left;
            std::vector<Vec2> path = beside(chain, is_right ? gauge_.off_mm : -gauge_.off_mm);
            path.erase(path.begin());
            path.insert(path.begin(), root.begin(), root.end());
            std::vector<Tape> tapes{
                {is_right == ribbon.start.plus_right ? Side::positive : Side::negative, path}};
            for (const Place& place : ribbon.places) {
                const Stop& stop = layer_.task->stops[static_cast<std::size_t>(place.stop)];
                if (stop.kind == Stop::Kind::resistor && (place.lane > 0) == is_right) {
                    const double gap = pad_span(*layer_.parts->resistor).from_mm - kUnderResistor_mm;
                    cut(tapes, stop.at_mm, direction(place.heading_deg), std::max(0.5, gap));
                }
            }
            tapes_.insert(tapes_.end(), tapes.begin(), tapes.end());
        }
    }

    std::string fresh_id(const char* letter) {
        for (int number = 1;; ++number) {
            std::string id = letter;
            id += std::to_string(number);
            if (used_.insert(id).second) {
                return id;
            }
        }
    }

    void add_strip(const Tape& tape) {
        Strip strip;
        strip.id = fresh_id(tape.side == Side::negative ? "N" : "S");
        strip.side = tape.side;
        strip.tape = gauge_.tape;
        strip.path_mm = tidy(tape.path, gauge_.snap_mm);
        if (strip.path_mm.size() < 2) {
            return;
        }
        made_.laid.push_back(strip.id);
        made_.card.laid.emplace_back(strip);
    }

    [[nodiscard]] bool is_ours(const std::string& id) const {
        return std::find(made_.laid.begin(), made_.laid.end(), id) != made_.laid.end();
    }

    /// A patch wherever opposite sides lie over each other: under the upper strip.
    void add_patches() {
        const Conductors found = find_conductors(made_.card, *layer_.parts);

        struct Wanted {
            Patch patch;
            std::size_t under = 0; ///< place in laid of the strip it lies under
        };

        std::vector<Wanted> wanted;
        for (const Overlap& overlap : found.overlaps) {
            const Strip& lower = strip_of(made_.card, found, overlap.lower);
            const Strip& upper = strip_of(made_.card, found, overlap.upper);
            if (lower.side == upper.side || (!is_ours(lower.id) && !is_ours(upper.id)) ||
                !overlap.patches.empty()) {
                continue;
            }
            const Ribbon& ribbon = found.strips[static_cast<std::size_t>(overlap.upper)].ribbon;
            const double turn = bearing_deg({}, heading_at(ribbon, overlap.along_upper_mm));
            Box box;
            for (const Convex& piece : overlap.pieces) {
                for (const Vec2 corner : piece.corners()) {
                    box.add(turned(corner - overlap.at_mm, -turn));
                }
            }
            Wanted one;
            one.patch.at_mm = snapped(overlap.at_mm, 0.5);
            one.patch.turn_deg = tidy_turn(turn);
            one.patch.size_mm = {
                std::max(kPatch_mm, std::ceil(box.max.x - box.min.x + 2.0 * kPatchSpare_mm)),
                std::max(kPatch_mm, std::ceil(box.max.y - box.min.y + 2.0 * kPatchSpare_mm))};
            one.under =
                static_cast<std::size_t>(found.strips[static_cast<std::size_t>(overlap.upper)].laid_index);
            wanted.push_back(one);
        }
        // All under the first strip of its side that any of them lies under: hands do one kind of thing at a
        // time.
        std::size_t first[2] = {made_.card.laid.size(), made_.card.laid.size()};
        const auto kind_of = [&](std::size_t place) {
            return std::get<Strip>(made_.card.laid[place]).side == Side::negative ? 0 : 1;
        };
        for (std::size_t place = made_.card.laid.size(); place-- > 0;) {
            if (is_ours(id_of(made_.card.laid[place]))) {
                first[kind_of(place)] = place;
            }
        }
        std::vector<Laid> minus_patches;
        std::vector<Laid> plus_patches;
        for (Wanted& one : wanted) {
            one.patch.id = fresh_id("P");
            made_.laid.push_back(one.patch.id);
            (kind_of(one.under) == 0 ? minus_patches : plus_patches).emplace_back(one.patch);
        }
        auto& laid = made_.card.laid;
        laid.insert(laid.begin() + static_cast<std::ptrdiff_t>(first[1]), plus_patches.begin(),
                    plus_patches.end());
        laid.insert(laid.begin() + static_cast<std::ptrdiff_t>(std::min(first[0], laid.size())),
                    minus_patches.begin(), minus_patches.end());
    }

    const Layer& layer_;
    const Gauge& gauge_;
    const std::vector<Woven>& ribbons_;
    LaidCard made_;
    std::vector<Tape> tapes_;
    std::set<std::string> used_;
};

} // namespace

LaidCard lay(const Layer& layer, const std::vector<Woven>& ribbons) {
    return Builder(layer, ribbons).build();
}

} // namespace lanternleaf::routing_stages
