#include "drawing/snap.h"

#include "conductors/conductors.h"
#include "geometry/convex.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

double whole(double mm) {
    return std::round(mm / kSnapGrid_mm) * kSnapGrid_mm + 0.0;
}

struct Hold {
    Vec2 at_mm;
    SnapKind kind = SnapKind::pad;
    std::string on;
};

bool is_for(Side side, const std::string& pad) {
    return side == Side::link || (side == Side::negative) == (pad == "-");
}

void add_pads(const Package& package, const std::string& id, Vec2 at_mm, double turn_deg, Side side,
              std::vector<Hold>& out) {
    for (const PadShape& pad : package.pads) {
        // A resistor stands in either trace: both of its pads are for every side.
        if (pad.name == "1" || pad.name == "2") {
            out.push_back({at_mm + turned(pad.at_mm, turn_deg), SnapKind::pad, id + "." + pad.name});
        } else if (is_for(side, pad.name)) {
            out.push_back({at_mm + turned(pad.at_mm, turn_deg), SnapKind::pad, id + pad.name});
        }
    }
}

/// The places a strip of this side may hold on to.
std::vector<Hold> holds_of(const Card& card, const Parts& parts, Side side) {
    std::vector<Hold> out;
    const HolderShape holder = holder_shape(card, parts);
    for (const CellFace face : {CellFace::negative, CellFace::positive}) {
        const char* sign = face == CellFace::negative ? "-" : "+";
        if (is_for(side, sign)) {
            out.push_back(
                {holder.at_mm[terminal_of(card, face)], SnapKind::contact, std::string("holder") + sign});
        }
    }
    for (const Led& led : card.leds) {
        add_pads(parts.packages.at(parts.leds.at(led.type).package), led.id, led.at_mm, led.turn_deg, side,
                 out);
    }
    for (const ResistorPart& resistor : card.resistors) {
        if (parts.resistor) {
            add_pads(*parts.resistor, resistor.id, resistor.at_mm, resistor.turn_deg, side, out);
        }
    }
    return out;
}

const Hold* nearest_hold(const std::vector<Hold>& holds, Vec2 raw, double reach) {
    const Hold* best = nullptr;
    for (const Hold& hold : holds) {
        const double far = distance(hold.at_mm, raw);
        if (far <= reach && (best == nullptr || far < distance(best->at_mm, raw))) {
            best = &hold;
        }
    }
    return best;
}

Vec2 foot(Vec2 a, Vec2 b, Vec2 p) {
    const Vec2 way = b - a;
    const double size = dot(way, way);
    const double share = size > 0.0 ? std::clamp(dot(p - a, way) / size, 0.0, 1.0) : 0.0;
    return a + way * share;
}

/// The nearest place on the centre line of another strip of that side; ends win a little.
std::optional<Hold> nearest_strip(const Card& card, const SnapQuestion& ask, Vec2 raw) {
    std::optional<Hold> best;
    double least = ask.reach_mm;
    for (const Laid& laid : card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        if (strip == nullptr || strip->id == ask.ignore || strip->side != ask.side) {
            continue;
        }
        for (std::size_t i = 1; i < strip->path_mm.size(); ++i) {
            const Vec2 on = foot(strip->path_mm[i - 1], strip->path_mm[i], raw);
            if (distance(on, raw) <= least) {
                least = distance(on, raw);
                best = Hold{on, SnapKind::strip, strip->id};
            }
        }
    }
    return best;
}

/// The way a run from `from` to `raw` takes: straight on when it nearly is, else the nearest 15 degree step.
struct Way {
    Vec2 way;
    bool straight = false;
};

Way way_of(const SnapQuestion& ask, Vec2 from, Vec2 raw) {
    const Vec2 wish = unit(raw - from);
    if (ask.before_mm) {
        const Vec2 on = unit(from - *ask.before_mm);
        if (degrees(std::acos(std::clamp(dot(wish, on), -1.0, 1.0))) <= kSnapTurn_deg / 2.0) {
            return {on, true};
        }
    }
    return {direction(snap_turn(degrees(std::atan2(wish.y, wish.x)))), false};
}

} // namespace

Vec2 snap_to_grid(Vec2 raw_mm) {
    return {whole(raw_mm.x), whole(raw_mm.y)};
}

double snap_turn(double deg) {
    const double step = std::round(deg / kSnapTurn_deg) * kSnapTurn_deg;
    const double wrapped = std::fmod(step, 360.0);
    return wrapped < 0.0 ? wrapped + 360.0 : wrapped + 0.0;
}

Vec2 snap_run(Vec2 from_mm, Vec2 raw_mm) {
    const Vec2 way = raw_mm - from_mm;
    if (length(way) < kSnapGrid_mm / 2.0) {
        return from_mm;
    }
    const Vec2 step = direction(snap_turn(degrees(std::atan2(way.y, way.x))));
    return from_mm + step * std::max(kSnapGrid_mm, whole(dot(way, step)));
}

Snap snap_corner(const Card& card, const Parts& parts, const SnapQuestion& ask, Vec2 raw) {
    Snap snap;
    const auto done = [&](Vec2 at, SnapKind kind, std::string on) {
        snap.at_mm = at;
        snap.kind = kind;
        snap.on = std::move(on);
        snap.length_mm = ask.from_mm ? distance(*ask.from_mm, at) : 0.0;
        return snap;
    };
    const std::vector<Hold> holds = holds_of(card, parts, ask.side);
    const Hold* hold = nearest_hold(holds, raw, ask.reach_mm);
    const std::optional<Hold> strip = nearest_strip(card, ask, raw);
    if (!ask.from_mm) {
        if (hold != nullptr) {
            return done(hold->at_mm, hold->kind, hold->on);
        }
        return strip ? done(strip->at_mm, strip->kind, strip->on)
                     : done(snap_to_grid(raw), SnapKind::grid, "");
    }
    const Vec2 from = *ask.from_mm;
    const Way way = way_of(ask, from, raw);
    // A pad that lies in the way of the run: end under its middle, without leaving the step. Off the way by
    // less than a millimetre is in the way.
    const double reach_along = dot(raw - from, way.way);
    if (hold != nullptr) {
        const double off = std::abs(cross(way.way, hold->at_mm - from));
        const double ahead = dot(hold->at_mm - from, way.way);
        if (off < kSnapGrid_mm && ahead > 0.0) {
            return done(off < 1e-6 ? hold->at_mm : from + way.way * ahead, hold->kind, hold->on);
        }
        if (distance(hold->at_mm, from) > kSnapGrid_mm) {
            return done(hold->at_mm, hold->kind, hold->on);
        }
    }
    if (strip && distance(strip->at_mm, from) > kSnapGrid_mm) {
        // Where the run meets that strip's centre line, when it does within reach; else the nearest place.
        const Strip* goal = find_strip(card, strip->on);
        for (std::size_t i = 1; goal != nullptr && i < goal->path_mm.size(); ++i) {
            const Vec2 a = goal->path_mm[i - 1];
            const Vec2 along_goal = goal->path_mm[i] - a;
            const double det = cross(way.way, along_goal);
            if (std::abs(det) < 1e-9 * length(along_goal)) {
                continue;
            }
            const double t = cross(a - from, along_goal) / det;
            const double u = cross(a - from, way.way) / det;
            const Vec2 meet = from + way.way * t;
            if (t > 0.0 && u >= 0.0 && u <= 1.0 && distance(meet, raw) <= ask.reach_mm) {
                return done(meet, SnapKind::strip, strip->on);
            }
        }
        return done(strip->at_mm, SnapKind::strip, strip->on);
    }
    // Level with a pad further on: the next run then goes straight to it.
    double best = ask.reach_mm / 2.0;
    std::optional<Hold> level;
    double level_mm = 0.0;
    for (const Hold& each : holds) {
        const Vec2 to = each.at_mm - from;
        const double ahead = dot(to, way.way);
        if (ahead > kSnapGrid_mm && std::abs(ahead - reach_along) < best &&
            std::abs(cross(way.way, to)) > ask.reach_mm) {
            best = std::abs(ahead - reach_along);
            level = each;
            level_mm = ahead;
        }
    }
    if (level) {
        return done(from + way.way * level_mm, SnapKind::in_line, level->on);
    }
    const double far = std::max(0.0, whole(reach_along));
    return done(from + way.way * far, way.straight ? SnapKind::straight : SnapKind::turn, "");
}

PartSnap snap_led(const Card& card, const Parts& parts, const std::string& type, Vec2 raw, double turn_deg) {
    PartSnap plain{snap_to_grid(raw), snap_turn(turn_deg), false};
    const auto led = parts.leds.find(type);
    if (led == parts.leds.end()) {
        return plain;
    }
    const Package& package = parts.packages.at(led->second.package);
    if (package.pads.size() != 2) {
        return plain;
    }
    const double span_mm = distance(package.pads[0].at_mm, package.pads[1].at_mm);
    const double pad_mm = std::min(package.pads[0].size_mm.x, package.pads[1].size_mm.x);
    PartSnap best = plain;
    double least = 2.5 * kSnapReach_mm;
    for (const Laid& one : card.laid) {
        const Strip* minus = std::get_if<Strip>(&one);
        if (minus == nullptr || minus->side != Side::negative) {
            continue;
        }
        for (const Laid& other : card.laid) {
            const Strip* plus = std::get_if<Strip>(&other);
            if (plus == nullptr || plus->side != Side::positive) {
                continue;
            }
            for (std::size_t i = 1; i < minus->path_mm.size(); ++i) {
                for (std::size_t k = 1; k < plus->path_mm.size(); ++k) {
                    const Vec2 way = unit(minus->path_mm[i] - minus->path_mm[i - 1]);
                    const Vec2 plus_way = unit(plus->path_mm[k] - plus->path_mm[k - 1]);
                    if (std::abs(cross(way, plus_way)) > 0.02) {
                        continue;
                    }
                    // The same whole-millimetre place along both runs, where both go on.
                    const Vec2 on = foot(minus->path_mm[i - 1], minus->path_mm[i], raw);
                    const double along_mm = whole(distance(minus->path_mm[i - 1], on));
                    const Vec2 from = minus->path_mm[i - 1] + way * along_mm;
                    const Vec2 to = foot(plus->path_mm[k - 1], plus->path_mm[k], from);
                    const double gap = distance(from, to);
                    if (std::abs(dot(to - from, way)) > 0.1 || std::abs(gap - span_mm) > pad_mm * 0.5) {
                        continue;
                    }
                    const Vec2 middle = (from + to) * 0.5;
                    if (distance(middle, raw) < least) {
                        least = distance(middle, raw);
                        const Vec2 across = unit(to - from);
                        best = {middle, degrees(std::atan2(across.y, across.x)), true};
                        best.turn_deg += best.turn_deg < 0.0 ? 360.0 : 0.0;
                    }
                }
            }
        }
    }
    return best;
}

} // namespace lanternleaf
