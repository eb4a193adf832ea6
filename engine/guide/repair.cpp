#include "guide/repair.h"

#include "geometry/ribbon.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// A bridge lies on each side of the gap by at least this (common practice: a lap as long as the tape is
// wide), and is at least this long in all, which fingers can hold.
constexpr double kOnEach_mm = 5.0;
constexpr double kBridge_mm = 15.0;
// A patch is wider than the crossing by this on each side (common practice: 5 mm).
constexpr double kPatchRound_mm = 5.0;

double width_of(const Parts& parts, const Strip& strip) {
    const auto tape = parts.tapes.find(strip.tape);
    return tape == parts.tapes.end() ? 5.0 : tape->second.width_mm;
}

struct Pair {
    const Strip* near = nullptr;
    const Strip* far = nullptr;
    Nearest gap;
    Ribbon near_ribbon;
    Ribbon far_ribbon;
};

// The two strips of a finding that lie nearest to each other.
std::optional<Pair> pair_of(const Card& card, const Parts& parts, const Finding& finding) {
    std::vector<const Strip*> strips;
    for (const std::string& id : finding.parts) {
        if (const Strip* strip = find_strip(card, id)) {
            strips.push_back(strip);
        }
    }
    std::optional<Pair> best;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        for (std::size_t j = i + 1; j < strips.size(); ++j) {
            Pair pair{strips[i],
                      strips[j],
                      {},
                      make_ribbon(strips[i]->path_mm, width_of(parts, *strips[i])),
                      make_ribbon(strips[j]->path_mm, width_of(parts, *strips[j]))};
            for (const Run& one : pair.near_ribbon.runs) {
                for (const Run& other : pair.far_ribbon.runs) {
                    const Nearest here = nearest(one.outline, other.outline);
                    if (here.mm < pair.gap.mm) {
                        pair.gap = here;
                    }
                }
            }
            if (!best || pair.gap.mm < best->gap.mm) {
                best = std::move(pair);
            }
        }
    }
    return best;
}

double bridge_length(double gap_mm) {
    return std::max(kBridge_mm, std::ceil(gap_mm + 2.0 * kOnEach_mm));
}

// Of all the gaps a verdict names, the narrowest: closing it is what feeds the strips beyond the wider ones.
std::optional<Pair> narrowest_gap(const Card& card, const Parts& parts, const StepVerdict& verdict) {
    std::optional<Pair> best;
    for (const Finding& finding : verdict.findings) {
        if (finding.rule == "led-not-reached") {
            std::optional<Pair> pair = pair_of(card, parts, finding);
            if (pair && pair->gap.mm > 0.0 && (!best || pair->gap.mm < best->gap.mm)) {
                best = std::move(pair);
            }
        }
    }
    return best;
}

Repair bridge_over(const Pair& pair, const Words& words) {
    Change change;
    change.kind = ChangeKind::bridged;
    change.part = pair.far->id;
    change.at_mm = (pair.gap.on_a + pair.gap.on_b) * 0.5;
    change.mm = bridge_length(pair.gap.mm);
    return Repair{change, words("change.done_bridged")};
}

std::optional<Repair> patch_for(const Card& card, const Parts& parts, const Finding& finding,
                                const Words& words) {
    // The strip that lies lower is the one the patch goes onto.
    for (const Laid& laid : card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        if (strip != nullptr &&
            std::find(finding.parts.begin(), finding.parts.end(), strip->id) != finding.parts.end()) {
            Change change;
            change.kind = ChangeKind::patch_added;
            change.part = strip->id;
            change.at_mm = finding.at_mm;
            change.mm = width_of(parts, *strip) + 2.0 * kPatchRound_mm;
            return Repair{change, words("change.done_patched")};
        }
    }
    return std::nullopt;
}

std::optional<Repair> foam_for(const Card& card, const Parts& parts, const Words& words) {
    const auto cell = parts.cells.find(card.cell.type);
    const auto holder = parts.holders.find(card.holder.type);
    if (!card.foam || card.foam->thickness_mm <= 0.0 || cell == parts.cells.end() ||
        holder == parts.holders.end()) {
        return std::nullopt;
    }
    const double least_mm = card.cell.count * cell->second.height_mm + 2.0 * holder->second.paper_mm;
    Change change;
    change.kind = ChangeKind::foam_layers;
    change.count = static_cast<int>(std::ceil(least_mm / card.foam->thickness_mm - 1e-9));
    if (change.count == card.foam->layers ||
        change.count * card.foam->thickness_mm > least_mm + holder->second.travel_mm) {
        return std::nullopt; // this foam cannot do it in whole layers
    }
    return Repair{change, words("change.done_foam")};
}

std::optional<Repair> repair_of(const Card& card, const Parts& parts, const Finding& finding,
                                const Words& words) {
    if (finding.rule == "led-reversed") {
        for (const std::string& id : finding.parts) {
            std::string led = id;
            while (!led.empty() && (led.back() == '-' || led.back() == '+')) {
                led.pop_back();
            }
            if (find_led(card, led) != nullptr) {
                Change change;
                change.kind = ChangeKind::led_turned;
                change.part = led;
                return Repair{change, words("change.done_turned")};
            }
        }
    }
    if (finding.rule == "crossing-bare") {
        return patch_for(card, parts, finding, words);
    }
    if (finding.rule == "cells-stacked" && card.cell.count > 1) {
        Change change;
        change.kind = ChangeKind::cells_stacked;
        change.count = 1;
        return Repair{change, words("change.done_one_cell")};
    }
    if (finding.rule == "foam-low" || finding.rule == "foam-high") {
        return foam_for(card, parts, words);
    }
    return std::nullopt;
}

} // namespace

std::optional<Repair> repair_for(const Card& as_built, const Parts& parts, const StepVerdict& verdict,
                                 const Words& words) {
    if (const std::optional<Pair> gap = narrowest_gap(as_built, parts, verdict)) {
        return bridge_over(*gap, words);
    }
    for (const Finding& finding : verdict.findings) {
        if (std::optional<Repair> repair = repair_of(as_built, parts, finding, words)) {
            // Offered only when the engine takes it.
            if (apply_change(as_built, parts, repair->change).ok()) {
                return repair;
            }
        }
    }
    return std::nullopt;
}

std::optional<CloseUp> close_up_for(const Card& as_built, const Parts& parts, const StepVerdict& verdict) {
    const std::optional<Pair> pair = narrowest_gap(as_built, parts, verdict);
    if (!pair || pair->gap.mm > kBridge_mm) {
        return std::nullopt;
    }
    CloseUp close_up;
    close_up.from_mm = pair->gap.on_a;
    close_up.to_mm = pair->gap.on_b;
    close_up.gap_mm = pair->gap.mm;
    close_up.near = pair->near->id;
    close_up.far = pair->far->id;
    const Vec2 middle = (close_up.from_mm + close_up.to_mm) * 0.5;
    const double at = along(pair->far_ribbon, middle);
    const Vec2 way = heading_at(pair->far_ribbon, at);
    const Vec2 centre = point_at(pair->far_ribbon, at);
    // The bridge runs along the far strip's line, through the middle of the gap.
    const Vec2 on_line = centre + way * dot(middle - centre, way);
    close_up.bridge_length_mm = bridge_length(pair->gap.mm);
    close_up.bridge_width_mm = width_of(parts, *pair->far);
    close_up.bridge_mm = {on_line - way * (close_up.bridge_length_mm / 2.0),
                          on_line + way * (close_up.bridge_length_mm / 2.0)};
    close_up.near_mm = point_at(pair->near_ribbon, along(pair->near_ribbon, middle));
    close_up.far_mm = centre;
    return close_up;
}

} // namespace lanternleaf
