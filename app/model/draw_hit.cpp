#include "model/draw_hit.h"

#include "drawing/sheet_marks.h"
#include "geometry/ribbon.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// The nearest of several candidates within reach.
struct Nearest1 {
    double least;
    DrawHit hit;

    void see(double far, DrawHit candidate) {
        if (far <= least) {
            least = far;
            hit = std::move(candidate);
        }
    }
};

double outside(const Convex& shape, Vec2 p) {
    if (contains(shape, p)) {
        return 0.0;
    }
    double least = 1e300;
    const auto corners = shape.corners();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        least = std::min(least, distance_to_segment(p, corners[i], corners[(i + 1) % corners.size()]));
    }
    return least;
}

/// Lights and resistors first, then strips, patches, the holder.
DrawHit thing_at(const DrawState& draw, Vec2 at, double reach_mm) {
    const Card& card = draw.card;
    Nearest1 parts{reach_mm, {}};
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        parts.see(outside(led_body(card, draw.parts, static_cast<int>(i)), at), {card.leds[i].id, -1, -1});
    }
    for (std::size_t i = 0; i < card.resistors.size(); ++i) {
        parts.see(outside(resistor_body(card, draw.parts, static_cast<int>(i)), at),
                  {card.resistors[i].id, -1, -1});
    }
    if (!parts.hit.none()) {
        return parts.hit;
    }
    Nearest1 strips{reach_mm, {}};
    const Conductors& made = draw.review.conductors;
    for (std::size_t i = made.strips.size(); i-- > 0;) { // the upper one wins where two cross
        const Strip& strip = strip_of(card, made, static_cast<int>(i));
        for (std::size_t k = 1; k < strip.path_mm.size(); ++k) {
            const double far = distance_to_segment(at, strip.path_mm[k - 1], strip.path_mm[k]) -
                               made.strips[i].ribbon.width_mm / 2.0;
            if (far < strips.least || (strips.hit.none() && far <= strips.least)) {
                strips.least = std::max(far, 0.0);
                strips.hit = {strip.id, -1, static_cast<int>(k) - 1};
            }
        }
    }
    if (!strips.hit.none()) {
        return strips.hit;
    }
    Nearest1 rest{reach_mm, {}};
    for (const PatchShape& patch : made.patches) {
        rest.see(outside(patch.outline, at),
                 {id_of(card.laid[static_cast<std::size_t>(patch.laid_index)]), -1, -1});
    }
    if (rest.hit.none()) {
        const HolderShape holder = holder_shape(card, draw.parts);
        for (int i = 0; i < 2; ++i) {
            const double far = holder.flap ? distance(holder.disc_at_mm[i], at) - holder.disc_radius_mm[i]
                                           : outside(holder.pad[i], at);
            rest.see(std::max(0.0, far), {kHolderId, -1, -1});
        }
        if (!holder.body.empty()) {
            rest.see(outside(holder.body, at), {kHolderId, -1, -1});
        }
    }
    return rest.hit;
}

} // namespace

DrawHit hit_at(const DrawState& draw, Vec2 at, double reach_mm) {
    const Card& card = draw.card;
    if (const Strip* strip = find_strip(card, draw.selected)) {
        Nearest1 corners{reach_mm, {}};
        for (std::size_t i = 0; i < strip->path_mm.size(); ++i) {
            corners.see(distance(strip->path_mm[i], at), {strip->id, static_cast<int>(i), -1});
        }
        if (!corners.hit.none()) {
            return corners.hit;
        }
    }
    if (const std::optional<SheetMark> mark = find_mark(card.sheet, draw.selected);
        mark && mark->kind == SheetMark::Kind::clear) {
        Nearest1 corners{reach_mm, {}};
        const std::vector<Vec2>& outline = card.sheet.keepouts[mark->index].outline_mm;
        for (std::size_t i = 0; i < outline.size(); ++i) {
            corners.see(distance(outline[i], at), {draw.selected, static_cast<int>(i), -1});
        }
        if (!corners.hit.none()) {
            return corners.hit;
        }
    }
    // What lies right under the finger; else what it comes nearest to.
    const DrawHit under = thing_at(draw, at, 0.0);
    const DrawHit near = under.none() ? thing_at(draw, at, reach_mm * 0.5) : under;
    return near.none() ? DrawHit{mark_at(card.sheet, at, reach_mm * 0.5), -1, -1} : near;
}

const Overlap* crossing_at(const DrawState& draw, Vec2 at, double reach_mm) {
    const Overlap* best = nullptr;
    for (const Overlap& overlap : draw.review.conductors.overlaps) {
        const Side lower = strip_of(draw.card, draw.review.conductors, overlap.lower).side;
        const Side upper = strip_of(draw.card, draw.review.conductors, overlap.upper).side;
        const bool crosses = lower != upper && lower != Side::link && upper != Side::link;
        const double far = distance(overlap.at_mm, at);
        if (crosses && far <= reach_mm && (best == nullptr || far < distance(best->at_mm, at))) {
            best = &overlap;
        }
    }
    return best;
}

Edge edge_at(const Sheet& sheet, Vec2 at) {
    const std::pair<double, Edge> edges[] = {{at.y, Edge::top},
                                             {sheet.width_mm - at.x, Edge::right},
                                             {sheet.height_mm - at.y, Edge::bottom},
                                             {at.x, Edge::left}};
    return std::min_element(std::begin(edges), std::end(edges),
                            [](const auto& a, const auto& b) { return a.first < b.first; })
        ->second;
}

std::optional<Vec2> place_of(const Card& card, const std::string& id) {
    if (id == kHolderId) {
        return card.holder.at_mm;
    }
    if (const std::optional<SheetMark> mark = find_mark(card.sheet, id)) {
        return place_of_mark(card.sheet, *mark);
    }
    if (const Led* led = find_led(card, id)) {
        return led->at_mm;
    }
    for (const ResistorPart& resistor : card.resistors) {
        if (resistor.id == id) {
            return resistor.at_mm;
        }
    }
    for (const Laid& laid : card.laid) {
        if (id_of(laid) != id) {
            continue;
        }
        if (const Patch* patch = std::get_if<Patch>(&laid)) {
            return patch->at_mm;
        }
        const Strip& strip = std::get<Strip>(laid);
        const Ribbon ribbon = make_ribbon(strip.path_mm, 1.0);
        return point_at(ribbon, ribbon.length_mm / 2.0);
    }
    return std::nullopt;
}

} // namespace lanternleaf
