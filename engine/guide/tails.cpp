#include "guide/facts.h"
#include "guide/strip_changes.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// How far before a patch a strip stops sticking: room to lift the tail and rub the patch down beneath it
// (common practice, 12 to 15 mm), and a little more where that keeps the stop clear of a pad.
constexpr double kTailLeast_mm = 12.0;
constexpr double kTailMost_mm = 18.0;
constexpr double kTailTry_mm = 0.5;
// Half the length of a usual pad along the tape: a stop nearer than this to a pad leaves the pad half loose.
constexpr double kHalfPad_mm = 4.0;
// A bare overlap of opposite traces counts as a crossing, which waits, when it is no longer than this many
// tape widths along the upper strip. Longer ones are strips lying on each other: a fault to see at once.
constexpr double kCrossingWidths = 2.5;

double along_run(const Run& run, Vec2 p) {
    return run.starts_at_mm + dot(p - run.from_mm, unit(run.to_mm - run.from_mm));
}

// Where along `run` (as arc length) `shape` begins; negative when they do not overlap.
double entry_on(const Run& run, const Convex& shape) {
    const Convex common = clip(run.outline, shape);
    if (common.empty() || area(common) <= 0.0) {
        return -1.0;
    }
    double first = 1e300;
    for (const Vec2 corner : common.corners()) {
        first = std::min(first, along_run(run, corner));
    }
    return std::max(first, run.starts_at_mm);
}

std::size_t run_holding(const Ribbon& ribbon, double at_mm) {
    std::size_t index = 0;
    while (index + 1 < ribbon.runs.size() && at_mm > ribbon.runs[index + 1].starts_at_mm) {
        ++index;
    }
    return index;
}

// Where the strip first comes over `shape` on its way to `near_mm`, followed back round a fold if it must be.
double entry_before(const Ribbon& ribbon, double near_mm, const Convex& shape) {
    double entry = near_mm;
    for (std::size_t i = run_holding(ribbon, near_mm) + 1; i-- > 0;) {
        const double here = entry_on(ribbon.runs[i], shape);
        if (here < 0.0) {
            break;
        }
        entry = std::min(entry, here);
        if (here > ribbon.runs[i].starts_at_mm + ribbon.width_mm / 2.0) {
            break;
        }
    }
    return entry;
}

// Where to stop sticking before `entry_mm`: clear of pads, and never on or just past a fold, which would then
// have to be made on loose tape: the fold is left for later too. 0 when so little is left that the whole
// strip waits.
double stop_before(const Ribbon& ribbon, double entry_mm, const std::vector<double>& pads_mm) {
    const auto clear = [&](double stop) {
        return std::none_of(pads_mm.begin(), pads_mm.end(),
                            [&](double pad) { return std::abs(pad - stop) < kHalfPad_mm; });
    };
    double stop = entry_mm - kTailLeast_mm;
    for (double back = kTailLeast_mm; back <= kTailMost_mm; back += kTailTry_mm) {
        if (clear(entry_mm - back)) {
            stop = entry_mm - back;
            break;
        }
    }
    const double half = ribbon.width_mm / 2.0;
    for (std::size_t i = ribbon.runs.size(); i-- > 1;) {
        const double fold = ribbon.runs[i].starts_at_mm;
        if (fold < entry_mm + half && stop < fold + half && stop > fold - half - 1.0) {
            stop = fold - half - 1.0;
        }
    }
    return stop < ribbon.width_mm ? 0.0 : stop;
}

struct Wait {
    double entry_mm = 1e300;
    std::string patch;
};

bool opposite(Side a, Side b) {
    return (a == Side::negative && b == Side::positive) || (a == Side::positive && b == Side::negative);
}

double extent_along(const Overlap& overlap, const Ribbon& ribbon) {
    const Vec2 heading = heading_at(ribbon, overlap.along_upper_mm);
    double low = 1e300;
    double high = -1e300;
    for (const Convex& piece : overlap.pieces) {
        for (const Vec2 corner : piece.corners()) {
            low = std::min(low, dot(corner, heading));
            high = std::max(high, dot(corner, heading));
        }
    }
    return high - low;
}

// Whether the upper strip goes clean across the lower one: short, and not at either strip's end.
bool goes_across(const Overlap& overlap, const Ribbon& upper, const Ribbon& lower) {
    const auto inside = [](double at_mm, const Ribbon& ribbon, double margin_mm) {
        return at_mm > margin_mm && at_mm < ribbon.length_mm - margin_mm;
    };
    return extent_along(overlap, upper) <= kCrossingWidths * std::max(upper.width_mm, lower.width_mm) &&
           inside(overlap.along_upper_mm, upper, lower.width_mm) &&
           inside(overlap.along_lower_mm, lower, upper.width_mm);
}

} // namespace

std::vector<Tail> tails(const Card& card, const Parts& parts) {
    const Conductors conductors = find_conductors(card, parts);
    std::vector<std::vector<double>> pads_mm(conductors.strips.size());
    for (const Contact& contact : conductors.contacts) {
        for (const auto& [strip, along_mm, pad] : {std::tuple{contact.a, contact.along_a_mm, contact.b},
                                                   std::tuple{contact.b, contact.along_b_mm, contact.a}}) {
            const bool on_pad = pad.kind == PieceKind::led_pad || pad.kind == PieceKind::resistor_pad;
            if (strip.kind == PieceKind::strip && on_pad) {
                pads_mm[static_cast<std::size_t>(strip.index)].push_back(along_mm);
            }
        }
    }

    std::vector<Tail> waiting;
    std::vector<int> wait_of(conductors.strips.size(), -1); // index into `waiting`, by strip
    for (std::size_t upper = 0; upper < conductors.strips.size(); ++upper) {
        const StripShape& shape = conductors.strips[upper];
        Wait first;
        const auto take = [&](double entry_mm, const std::string& patch) {
            if (entry_mm < first.entry_mm) {
                first = {entry_mm, patch};
            }
        };
        for (const Overlap& overlap : conductors.overlaps) {
            if (overlap.upper != static_cast<int>(upper)) {
                continue;
            }
            const StripShape& lower = conductors.strips[static_cast<std::size_t>(overlap.lower)];
            for (const int patch : overlap.patches) {
                const PatchShape& patch_shape = conductors.patches[static_cast<std::size_t>(patch)];
                take(entry_before(shape.ribbon, overlap.along_upper_mm, patch_shape.outline),
                     id_of(card.laid[static_cast<std::size_t>(patch_shape.laid_index)]));
            }
            const Side side = strip_of(card, conductors, overlap.upper).side;
            if (overlap.patches.empty() && opposite(side, strip_of(card, conductors, overlap.lower).side) &&
                goes_across(overlap, shape.ribbon, lower.ribbon)) {
                for (const Convex& piece : overlap.pieces) {
                    take(entry_before(shape.ribbon, overlap.along_upper_mm, piece), "");
                }
            }
            // A lap onto a piece that is itself still waiting cannot be made before that piece is down.
            const int under = wait_of[static_cast<std::size_t>(overlap.lower)];
            if (under >= 0 && overlap.along_lower_mm > waiting[static_cast<std::size_t>(under)].stop_mm) {
                for (const Convex& piece : overlap.pieces) {
                    take(entry_before(shape.ribbon, overlap.along_upper_mm, piece),
                         waiting[static_cast<std::size_t>(under)].patch);
                }
            }
        }
        // What was torn or cut off a waiting strip is the far part of its tail, and waits with it.
        const std::string& id = strip_of(card, conductors, static_cast<int>(upper)).id;
        for (const Tail& tail : waiting) {
            const std::string& base = id_of(card.laid[static_cast<std::size_t>(tail.laid_index)]);
            if (id != base && is_piece_of(id, base, false)) {
                take(0.0, tail.patch);
            }
        }
        if (first.entry_mm < 1e300) {
            wait_of[upper] = static_cast<int>(waiting.size());
            waiting.push_back(
                {shape.laid_index, stop_before(shape.ribbon, first.entry_mm, pads_mm[upper]), first.patch});
        }
    }
    return waiting;
}

namespace {

// The strip from its start up to `stop_mm`, as it lies while its tail is loose.
Strip cut_back(const Strip& strip, double stop_mm) {
    Strip out = strip;
    out.path_mm.clear();
    out.ends[1] = EndStyle::plain;
    double done_mm = 0.0;
    out.path_mm.push_back(strip.path_mm.front());
    for (std::size_t i = 1; i < strip.path_mm.size(); ++i) {
        const Vec2 from = strip.path_mm[i - 1];
        const Vec2 to = strip.path_mm[i];
        const double run_mm = distance(from, to);
        if (done_mm + run_mm >= stop_mm) {
            out.path_mm.push_back(from + unit(to - from) * (stop_mm - done_mm));
            break;
        }
        out.path_mm.push_back(to);
        done_mm += run_mm;
    }
    return out;
}

} // namespace

Card card_after(const Card& card, const std::vector<Tail>& waits, StepId step) {
    Card out = card;
    if (step < StepId::pad_edges) {
        out.foam.reset();
    }
    if (step < StepId::place_leds) {
        out.leds.clear();
        out.resistors.clear();
    }
    if (step >= StepId::insulate) {
        return out;
    }
    out.laid.clear();
    for (std::size_t i = 0; i < card.laid.size(); ++i) {
        const Strip* strip = std::get_if<Strip>(&card.laid[i]);
        if (strip == nullptr || step_of(strip->side) > step) {
            continue;
        }
        const auto wait = std::find_if(waits.begin(), waits.end(), [&](const Tail& tail) {
            return tail.laid_index == static_cast<int>(i);
        });
        if (wait == waits.end()) {
            out.laid.emplace_back(*strip);
        } else if (wait->stop_mm > 0.0) {
            out.laid.emplace_back(cut_back(*strip, wait->stop_mm));
        }
    }
    return out;
}

Card card_after(const Card& card, const Parts& parts, StepId step) {
    return card_after(card, tails(card, parts), step);
}

} // namespace lanternleaf
