// What taps and drags on the plan mean, tool by tool.
#include "base/readout.h"
#include "drawing/sheet_marks.h"
#include "model/draw_hit.h"
#include "model/update_draw.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kPatch_mm = 14.0;   ///< a patch laid by itself
constexpr double kLeastRun_mm = 1.0; ///< shorter runs are a second tap on the same place
constexpr double kPastPad_mm = 0.5;  ///< how far a strip runs on past the middle of the pad it ends on

Side side_of(DrawTool tool) {
    return tool == DrawTool::strip_plus ? Side::positive : Side::negative;
}

bool lays_strips(DrawTool tool) {
    return tool == DrawTool::strip_plus || tool == DrawTool::strip_minus;
}

const std::vector<Vec2>* growing_path(const DrawState& draw) {
    const Strip* strip = find_strip(draw.history.card(), draw.laying.strip);
    return strip == nullptr ? nullptr : &strip->path_mm;
}

/// The question for the next corner of the strip that is being laid.
SnapQuestion next_corner(const DrawState& draw, double reach_mm) {
    SnapQuestion ask;
    ask.side = side_of(draw.tool);
    ask.reach_mm = std::min(kSnapReach_mm, reach_mm);
    ask.from_mm = draw.laying.start;
    if (const std::vector<Vec2>* path = growing_path(draw)) {
        const bool at_end = draw.laying.end == 1;
        ask.ignore = draw.laying.strip;
        ask.from_mm = at_end ? path->back() : path->front();
        ask.before_mm = at_end ? (*path)[path->size() - 2] : (*path)[1];
    }
    return ask;
}

/// Begins on the end of a strip of the same side: that strip grows on. Else a new strip starts there.
void begin_strip(DrawState& draw, Vec2 at, double reach_mm) {
    const Side side = side_of(draw.tool);
    for (const Laid& laid : draw.card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        if (strip == nullptr || strip->side != side || strip->tape != draw.tape) {
            continue;
        }
        for (const int end : {0, 1}) {
            const Vec2 place = end == 0 ? strip->path_mm.front() : strip->path_mm.back();
            if (distance(place, at) <= std::min(kSnapReach_mm, reach_mm)) {
                draw.laying = {};
                draw.laying.strip = strip->id;
                draw.laying.end = end;
                return;
            }
        }
    }
    draw.laying = {};
    draw.laying.start = snap_corner(draw.card, draw.parts, next_corner(draw, reach_mm), at).at_mm;
}

/// The edit that the next corner at this place is; nothing when it is no new place.
std::optional<Edit> corner_edit(const DrawState& draw, const Snap& snap) {
    if (draw.laying.start) {
        if (distance(*draw.laying.start, snap.at_mm) < kLeastRun_mm) {
            return std::nullopt;
        }
        return Edit{edit::LayStrip{side_of(draw.tool), draw.tape, {*draw.laying.start, snap.at_mm}}};
    }
    const std::vector<Vec2>* path = growing_path(draw);
    if (path == nullptr) {
        return std::nullopt;
    }
    const bool at_end = draw.laying.end == 1;
    const Vec2 from = at_end ? path->back() : path->front();
    const Vec2 before = at_end ? (*path)[path->size() - 2] : (*path)[1];
    if (distance(from, snap.at_mm) < kLeastRun_mm) {
        return std::nullopt;
    }
    const Vec2 on = unit(from - before);
    const Vec2 to = snap.at_mm - from;
    const int last = static_cast<int>(path->size());
    if (std::abs(cross(on, to)) < 0.01 && dot(on, to) > 0.0) { // straight on: longer, with no fold
        return Edit{edit::MoveCorner{draw.laying.strip, at_end ? last - 1 : 0, snap.at_mm}};
    }
    return Edit{edit::InsertCorner{draw.laying.strip, at_end ? last : 0, snap.at_mm}};
}

void lay_corner(AppState& state, const Surroundings& around, const Snap& snap) {
    DrawState& draw = *state.draw;
    const std::optional<Edit> edit = corner_edit(draw, snap);
    const bool new_strip = draw.laying.start.has_value();
    draw.laying.aim.reset();
    if (!edit || !commit_edit(state, around, *edit)) {
        return;
    }
    if (new_strip) {
        draw.laying = {};
        draw.laying.strip = id_of(draw.card.laid.back());
    }
    if (snap.kind == SnapKind::contact || snap.kind == SnapKind::strip) {
        finish_strip(state, around); // it has arrived
    }
}

void tap_strip(AppState& state, const Surroundings& around, Vec2 at, double reach_mm) {
    DrawState& draw = *state.draw;
    if (!draw.laying.under_way()) {
        begin_strip(draw, at, reach_mm);
        return;
    }
    const SnapQuestion ask = next_corner(draw, reach_mm);
    // A second tap on the end finishes; nearer than a tape's width nobody means a corner.
    if (ask.from_mm && distance(*ask.from_mm, at) < std::min(reach_mm * 0.6, 5.0)) {
        finish_strip(state, around);
        return;
    }
    lay_corner(state, around, snap_corner(draw.card, draw.parts, ask, at));
}

void tap_light(AppState& state, const Surroundings& around, Vec2 at, double reach_mm) {
    DrawState& draw = *state.draw;
    const DrawHit hit = hit_at(draw, at, reach_mm * 0.6);
    const bool part =
        find_led(draw.card, hit.id) != nullptr || (!hit.none() && hit.id[0] == 'R' && hit.run < 0);
    if (part) {
        draw.selected = hit.id;
        return;
    }
    if (draw.ohm > 0.0) {
        const edit::PlaceResistor place{draw.ohm, snap_to_grid(at), 0.0};
        if (commit_edit(state, around, {place})) {
            draw.selected = draw.card.resistors.back().id;
        }
        return;
    }
    const PartSnap snap = snap_led(draw.card, draw.parts, draw.led_type, at, draw.led_turn_deg);
    if (commit_edit(state, around, {edit::PlaceLed{draw.led_type, snap.at_mm, snap.turn_deg}})) {
        draw.selected = draw.card.leds.back().id;
    }
}

void tap_patch(AppState& state, const Surroundings& around, Vec2 at, double reach_mm) {
    DrawState& draw = *state.draw;
    if (const Overlap* crossing = crossing_at(draw, at, std::max(reach_mm, kPatch_mm / 2.0))) {
        const std::string lower = strip_of(draw.card, draw.review.conductors, crossing->lower).id;
        const std::string upper = strip_of(draw.card, draw.review.conductors, crossing->upper).id;
        commit_edit(state, around, {edit::PatchCrossing{lower, upper, crossing->at_mm}});
        return;
    }
    commit_edit(state, around, {edit::PlacePatch{snap_to_grid(at), {kPatch_mm, kPatch_mm}, 0.0}});
}

void tap_foam(AppState& state, const Surroundings& around, Vec2 at) {
    DrawState& draw = *state.draw;
    Foam foam = draw.card.foam.value_or(Foam{1.5, 3, {}, {}});
    const Edge edge = edge_at(draw.card.sheet, at);
    if (std::erase(foam.edges, edge) == 0) {
        foam.edges.push_back(edge);
    }
    commit_edit(state, around, {edit::SetFoam{foam}});
}

/// What dragging the thing at hand to there would do.
std::optional<Edit> drag_edit(const DrawState& draw, Vec2 to, double reach_mm) {
    const DrawDrag& drag = *draw.drag;
    const Card& base = draw.history.card();
    const Vec2 goal = drag.was_mm + (to - drag.from_mm);
    if (const Strip* strip = find_strip(base, drag.hit.id)) {
        if (drag.hit.corner >= 0) {
            const auto place = static_cast<std::size_t>(drag.hit.corner);
            SnapQuestion ask;
            ask.side = strip->side;
            ask.ignore = strip->id;
            ask.reach_mm = std::min(kSnapReach_mm, reach_mm);
            const bool first = place == 0;
            const bool last = place + 1 == strip->path_mm.size();
            if (first || last) {
                ask.from_mm = first ? strip->path_mm[1] : strip->path_mm[place - 1];
                if (strip->path_mm.size() > 2) {
                    ask.before_mm = first ? strip->path_mm[2] : strip->path_mm[place - 2];
                }
            }
            const Snap snap = snap_corner(base, draw.parts, ask, goal);
            const bool held = snap.kind == SnapKind::pad || snap.kind == SnapKind::contact || first || last;
            return Edit{edit::MoveCorner{strip->id, drag.hit.corner, held ? snap.at_mm : snap_to_grid(goal)}};
        }
        const auto run = static_cast<std::size_t>(std::max(0, drag.hit.run));
        const Vec2 right = quarter_turn(unit(strip->path_mm[run + 1] - strip->path_mm[run]));
        const double by = std::round(dot(to - drag.from_mm, right));
        if (strip->path_mm.size() == 2) { // a straight strip moves as a whole, along itself too
            const Vec2 whole = snap_to_grid(to - drag.from_mm);
            return Edit{edit::MoveStrip{strip->id, whole}};
        }
        return Edit{edit::MoveRun{strip->id, drag.hit.run, by}};
    }
    if (const Led* led = find_led(base, drag.hit.id)) {
        const PartSnap snap = snap_led(base, draw.parts, led->type, goal, led->turn_deg);
        if (snap.across && std::abs(std::remainder(snap.turn_deg - led->turn_deg, 180.0)) < 1.0) {
            return Edit{edit::MovePart{led->id, snap.at_mm}}; // turning is the maker's to say
        }
    }
    if (const std::optional<SheetMark> mark = find_mark(base.sheet, drag.hit.id)) {
        return drag.hit.corner >= 0
                   ? move_mark_corner(base.sheet, *mark, static_cast<std::size_t>(drag.hit.corner),
                                      snap_to_grid(goal))
                   : move_mark(base.sheet, *mark, snap_to_grid(to - drag.from_mm));
    }
    return Edit{edit::MovePart{drag.hit.id, snap_to_grid(goal)}};
}

} // namespace

void finish_strip(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    const std::string id = draw.laying.strip;
    draw.laying = {};
    const Strip* strip = find_strip(draw.card, id);
    if (strip == nullptr) {
        return;
    }
    // An end in the middle of a pad runs on past it, so that the whole pad lies on tape.
    std::vector<PadOutline> pads = draw.review.conductors.led_pads;
    pads.insert(pads.end(), draw.review.conductors.resistor_pads.begin(),
                draw.review.conductors.resistor_pads.end());
    EditList past{around.words("model.did_run_past", {{"strip", id}}), {}};
    for (const bool start : {true, false}) {
        const std::size_t last = strip->path_mm.size() - 1;
        const Vec2 end = start ? strip->path_mm.front() : strip->path_mm.back();
        const Vec2 out = unit(end - (start ? strip->path_mm[1] : strip->path_mm[last - 1]));
        for (const PadOutline& pad : pads) {
            double half_mm = 0.0; // of the pad, along the strip
            for (const Vec2 corner : pad.outline.corners()) {
                half_mm = std::max(half_mm, dot(corner - pad.at_mm, out));
            }
            const Vec2 to = end + out * (half_mm + kPastPad_mm);
            const Sheet& sheet = draw.card.sheet;
            const bool on_sheet =
                to.x > 3 && to.y > 3 && to.x < sheet.width_mm - 3 && to.y < sheet.height_mm - 3;
            if (distance(pad.at_mm, end) < 1.0 && on_sheet) {
                past.edits.push_back({edit::MoveCorner{id, start ? 0 : static_cast<int>(last), to}});
            }
        }
    }
    if (!past.edits.empty()) {
        commit_edit(state, around, {past});
    }
}

void tap_plan(AppState& state, const Surroundings& around, Vec2 at, double reach_mm) {
    DrawState& draw = *state.draw;
    switch (draw.tool) {
    case DrawTool::select: {
        const DrawHit hit = hit_at(draw, at, reach_mm);
        draw.selected = hit.id;
        draw.corner = hit.corner;
        draw.selected_at_mm = at;
        break;
    }
    case DrawTool::strip_plus:
    case DrawTool::strip_minus:
        tap_strip(state, around, at, reach_mm);
        break;
    case DrawTool::light:
        tap_light(state, around, at, reach_mm);
        break;
    case DrawTool::patch:
        tap_patch(state, around, at, reach_mm);
        break;
    case DrawTool::holder:
        commit_edit(state, around, {edit::MovePart{kHolderId, snap_to_grid(at)}});
        draw.selected = kHolderId;
        break;
    case DrawTool::foam:
        tap_foam(state, around, at);
        break;
    }
}

void drag_start(AppState& state, Vec2 from, double reach_mm) {
    DrawState& draw = *state.draw;
    if (lays_strips(draw.tool)) {
        if (!draw.laying.under_way()) {
            begin_strip(draw, from, reach_mm);
            draw.laying.fresh = true;
        }
        draw.drag = DrawDrag{{}, from, from, std::nullopt};
        return;
    }
    const DrawHit hit = hit_at(draw, from, reach_mm);
    if (hit.none()) {
        return; // bare paper: the view moves instead
    }
    DrawDrag drag{hit, from, from, std::nullopt};
    if (const Strip* strip = find_strip(draw.card, hit.id); strip != nullptr && hit.corner >= 0) {
        drag.was_mm = strip->path_mm[static_cast<std::size_t>(hit.corner)];
    } else if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, hit.id);
               mark && hit.corner >= 0) {
        drag.was_mm = draw.card.sheet.keepouts[mark->index].outline_mm[static_cast<std::size_t>(hit.corner)];
    } else if (const std::optional<Vec2> place = place_of(draw.card, hit.id)) {
        drag.was_mm = *place;
    }
    draw.selected = hit.id;
    draw.corner = hit.corner;
    draw.selected_at_mm = from;
    draw.drag = drag;
}

void drag_to(AppState& state, Vec2 to, double reach_mm) {
    DrawState& draw = *state.draw;
    if (!draw.drag) {
        return;
    }
    if (lays_strips(draw.tool)) {
        const Snap aim = snap_corner(draw.history.card(), draw.parts, next_corner(draw, reach_mm), to);
        draw.drag->edit = corner_edit(draw, aim);
        if (draw.drag->edit) {
            Outcome<Card> shown = apply_edit(draw.history.card(), draw.parts, *draw.drag->edit);
            if (shown) {
                preview(draw, std::move(shown).value());
            }
        }
        draw.laying.aim = aim;
        return;
    }
    if (distance(to, draw.drag->from_mm) < kSnapGrid_mm / 2.0) { // back where it began: as if never moved
        draw.drag->edit.reset();
        preview(draw, draw.history.card());
        return;
    }
    const std::optional<Edit> edit = drag_edit(draw, to, reach_mm);
    if (!edit) {
        return;
    }
    Outcome<Card> shown = apply_edit(draw.history.card(), draw.parts, *edit);
    if (shown) { // a place that cannot be leaves the last one that could
        draw.drag->edit = edit;
        preview(draw, std::move(shown).value());
    }
}

void drag_end(AppState& state, const Surroundings& around, bool keep) {
    DrawState& draw = *state.draw;
    if (!draw.drag) {
        return;
    }
    const std::optional<Edit> edit = draw.drag->edit;
    const std::optional<Snap> aim = draw.laying.aim;
    draw.drag.reset();
    draw.laying.aim.reset();
    if (lays_strips(draw.tool)) {
        draw.card = draw.history.card();
        if (keep && aim && edit) {
            lay_corner(state, around, *aim);
        } else {
            if (!keep && draw.laying.fresh) {
                draw.laying = {};
            }
            settle(draw);
        }
        draw.laying.fresh = false;
        return;
    }
    if (keep && edit && !(draw.card == draw.history.card())) {
        commit_edit(state, around, *edit);
    } else {
        settle(draw);
    }
}

void nudge(AppState& state, const Surroundings& around, Vec2 by) {
    DrawState& draw = *state.draw;
    const std::string& id = draw.selected;
    if (const Strip* strip = find_strip(draw.card, id)) {
        if (draw.corner >= 0) {
            const Vec2 at = strip->path_mm[static_cast<std::size_t>(draw.corner)];
            commit_edit(state, around, {edit::MoveCorner{id, draw.corner, at + by}});
        } else {
            commit_edit(state, around, {edit::MoveStrip{id, by}});
        }
    } else if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, id)) {
        commit_edit(state, around, move_mark(draw.card.sheet, *mark, by));
    } else if (const std::optional<Vec2> at = place_of(draw.card, id)) {
        commit_edit(state, around, {edit::MovePart{id, *at + by}});
    }
}

} // namespace lanternleaf
