#include "model/update_draw.h"

#include "exchange/bundle.h"

#include "base/overloaded.h"
#include "cardfile/cardfile.h"
#include "drawing/sheet_marks.h"
#include "model/draw_hit.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Beyond this many findings nobody looks for one-tap fixes; each costs up to kMostTries reviews.
constexpr std::size_t kMostWithFixes = 8;

void forget_selection_if_gone(DrawState& draw) {
    if (draw.selected != "foam" && !draw.selected.empty() && !place_of(draw.card, draw.selected)) {
        draw.selected.clear();
        draw.corner = -1;
    }
    if (!draw.laying.strip.empty() && find_strip(draw.card, draw.laying.strip) == nullptr) {
        draw.laying = {};
    }
    if (const Strip* strip = find_strip(draw.card, draw.selected)) {
        draw.corner = std::min(draw.corner, static_cast<int>(strip->path_mm.size()) - 1);
    } else {
        draw.corner = -1;
    }
}

void step_history(AppState& state, const Surroundings& around, bool back) {
    DrawState& draw = *state.draw;
    if (draw.laying.start) { // a first place tapped is taken back before any edit
        draw.laying = {};
        return;
    }
    const std::string label = back ? draw.history.undo() : draw.history.redo();
    if (label.empty()) {
        say(state, around, around.words(back ? "model.nothing_to_undo" : "model.nothing_to_redo"));
        return;
    }
    settle(draw);
    save_plan(state, around);
    if (draw.trouble.empty()) {
        say(state, around, around.words(back ? "model.undone" : "model.done_again", {{"what", label}}));
    }
}

void show_finding(AppState& state, int index) {
    DrawState& draw = *state.draw;
    if (index < 0 || index >= static_cast<int>(draw.review.findings.size())) {
        draw.shown_finding = -1;
        return;
    }
    draw.shown_finding = index;
    const Finding& finding = draw.review.findings[static_cast<std::size_t>(index)];
    state.camera.centre_mm = finding.at_mm;
    state.camera.zoom = std::max(state.camera.zoom, 2.0);
}

void apply_fix(AppState& state, const Surroundings& around, int finding, int fix) {
    const DrawState& draw = *state.draw;
    if (finding < 0 || finding >= static_cast<int>(draw.fixes.size())) {
        return;
    }
    const std::vector<Fix>& fixes = draw.fixes[static_cast<std::size_t>(finding)];
    if (fix >= 0 && fix < static_cast<int>(fixes.size())) {
        const Fix chosen = fixes[static_cast<std::size_t>(fix)];
        commit_edit(state, around, {EditList{chosen.label, {chosen.edit}}});
    }
}

void turn_selected(AppState& state, const Surroundings& around, double by_deg) {
    DrawState& draw = *state.draw;
    const std::string& id = draw.selected;
    if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, id)) {
        commit_edit(state, around, turn_mark(draw.card.sheet, *mark));
        return;
    }
    double turn = draw.card.holder.turn_deg;
    if (const Led* led = find_led(draw.card, id)) {
        turn = led->turn_deg;
        draw.led_turn_deg = snap_turn(turn + by_deg);
    }
    for (const ResistorPart& resistor : draw.card.resistors) {
        turn = resistor.id == id ? resistor.turn_deg : turn;
    }
    for (const Laid& laid : draw.card.laid) {
        const Patch* patch = std::get_if<Patch>(&laid);
        turn = patch != nullptr && patch->id == id ? patch->turn_deg : turn;
    }
    commit_edit(state, around, {edit::TurnPart{id, turn + by_deg}});
}

void copy_selected(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    const std::size_t leds = draw.card.leds.size();
    const std::size_t resistors = draw.card.resistors.size();
    if (commit_edit(state, around, {edit::CopyPart{draw.selected, {12, 0}}})) {
        draw.selected = draw.card.leds.size() > leds             ? draw.card.leds.back().id
                        : draw.card.resistors.size() > resistors ? draw.card.resistors.back().id
                                                                 : id_of(draw.card.laid.back());
    }
}

void add_mark(AppState& state, const Surroundings& around, SheetMark::Kind kind) {
    DrawState& draw = *state.draw;
    const Sheet& sheet = draw.card.sheet;
    const bool crease = kind == SheetMark::Kind::crease;
    if (commit_edit(state, around, crease ? add_crease(sheet) : add_clear(sheet, around.words))) {
        draw.tool = DrawTool::select;
        draw.selected =
            mark_id(kind, (crease ? draw.card.sheet.folds.size() : draw.card.sheet.keepouts.size()) - 1);
        state.sheet = SheetKind::none; // so that it can be dragged at once
    }
}

void remove_selected(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    const Strip* strip = find_strip(draw.card, draw.selected);
    if (strip != nullptr && draw.corner >= 0 && strip->path_mm.size() > 2) {
        commit_edit(state, around, {edit::RemoveCorner{strip->id, draw.corner}});
    } else if (draw.selected == "foam") {
        commit_edit(state, around, {edit::SetFoam{std::nullopt}});
    } else if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, draw.selected)) {
        commit_edit(state, around, remove_mark(draw.card.sheet, *mark));
    } else if (!draw.selected.empty()) {
        commit_edit(state, around, {edit::RemovePart{draw.selected}});
    }
}

void make_this(AppState& state, const Surroundings& around) {
    const DrawState& draw = *state.draw;
    if (draw.review.count(Level::problem) > 0) {
        say(state, around, around.words("model.problems_first"));
        return;
    }
    if (draw.path.empty() || !draw.saved) {
        save_plan(state, around);
        if (!state.draw->saved) {
            return;
        }
    }
    const std::string path = state.draw->path;
    start_card(state, around, path);
}

void pick_tool(AppState& state, const Surroundings& around, DrawTool tool) {
    finish_strip(state, around);
    DrawState& draw = *state.draw;
    draw.tool = tool;
    draw.selected = tool == DrawTool::foam ? "foam" : tool == DrawTool::holder ? kHolderId : "";
    draw.corner = -1;
}

} // namespace

void settle(DrawState& draw) {
    draw.drag.reset();
    draw.suggested.reset();
    draw.card = draw.history.card();
    draw.review = review(draw.card, draw.parts, draw.words);
    draw.fixes.assign(draw.review.findings.size(), {});
    std::size_t tried = 0;
    int unreached = 0;
    for (std::size_t i = 0; i < draw.fixes.size() && tried < kMostWithFixes; ++i) {
        const Finding& finding = draw.review.findings[i];
        // A sheet with little laid has many pads unreached for one reason; the first two speak for all.
        const bool many = finding.rule == "led-not-reached" && ++unreached > 2;
        if (finding.level != Level::note && !many) {
            draw.fixes[i] = fixes_for(draw.card, draw.parts, draw.review, finding, draw.words);
            ++tried;
        }
    }
    draw.shown_finding = -1;
    forget_selection_if_gone(draw);
}

void preview(DrawState& draw, Card card) {
    draw.card = std::move(card);
    draw.review = review(draw.card, draw.parts, draw.words);
    draw.fixes.assign(draw.review.findings.size(), {});
    draw.shown_finding = -1;
}

bool commit_edit(AppState& state, const Surroundings& around, const Edit& edit) {
    DrawState& draw = *state.draw;
    Outcome<Card> changed = apply_edit(draw.history.card(), draw.parts, edit, around.words);
    if (!changed) {
        say(state, around, changed.problem().expected);
        settle(draw);
        return false;
    }
    draw.history.add(label_of(edit, around.words), std::move(changed).value());
    settle(draw);
    save_plan(state, around);
    return true;
}

void enter_draw(AppState& state, const Surroundings& around) {
    if (state.draw || !state.build) {
        return;
    }
    for (const ShelfCard& card : state.cards) {
        if (card.name == state.build->shelf.card_name && card.trouble.empty()) {
            open_plan(state, around, card.path);
        }
    }
}

void update_draw(AppState& state, const Surroundings& around, const DrawCommand& command) {
    // What needs no plan on the table.
    if (const auto* open = std::get_if<draw::Open>(&command)) {
        open_plan(state, around, open->path);
        return;
    }
    if (const auto* fresh = std::get_if<draw::NewCard>(&command)) {
        new_plan(state, around, fresh->width_mm, fresh->height_mm);
        return;
    }
    const bool box = std::visit(
        Overloaded{
            [&](const draw::OpenLightBox&) { return open_light_box(state, around), true; },
            [&](const draw::CloseLightBox&) { return state.light_box = {}, true; },
            [&](const draw::Calibrate& c) {
                state.light_box.calibrating = c.on;
                state.light_box.draft_px_per_mm = state.settings.px_per_mm;
                return true;
            },
            [&](const draw::SetScale& c) { return state.light_box.draft_px_per_mm = c.px_per_mm, true; },
            [&](const draw::KeepScale&) { return keep_scale(state, around), true; },
            [&](const draw::LockLightBox& c) { return state.light_box.locked = c.on, true; },
            [&](const draw::LookAt& c) { return state.light_box.look_at_mm = c.mm, true; },
            [](const auto&) { return false; },
        },
        command);
    if (box || !state.draw) {
        return;
    }
    DrawState& plan = *state.draw;
    if (plan.search.work != nullptr && !std::holds_alternative<draw::SearchOn>(command) &&
        !std::holds_alternative<draw::StopSearch>(command)) {
        plan.search = {}; // a hand on the plan: what is looked for would be for another card
    }
    std::visit(Overloaded{
                   [&](const draw::SendCard&) {
                       const std::string name = card_name(plan.path);
                       for (LooseFile& file : pack_card(plan.card, name, plan.card_folder, plan.parts)) {
                           const bool card = file.name.ends_with(".json");
                           state.to_give.push_back({file.name, std::move(file.bytes),
                                                    card ? "application/json" : "image/png", name});
                       }
                   },
                   [&](const draw::PickTool& c) { pick_tool(state, around, c.tool); },
                   [&](const draw::Tap& c) { tap_plan(state, around, c.at_mm, c.reach_mm); },
                   [&](const draw::DragStart& c) { drag_start(state, c.from_mm, c.reach_mm); },
                   [&](const draw::DragTo& c) { drag_to(state, c.to_mm, c.reach_mm); },
                   [&](const draw::DragEnd& c) { drag_end(state, around, c.keep); },
                   [&](const draw::Do& c) {
                       commit_edit(state, around, c.edit);
                       if (state.sheet == SheetKind::draw_audience) {
                           state.sheet = SheetKind::none;
                       }
                   },
                   [&](const draw::TypeTitle& c) {
                       plan.title = c.text;
                       if (c.done) {
                           plan.title.reset();
                           if (c.text != plan.history.card().title) {
                               commit_edit(state, around, {edit::SetTitle{c.text}});
                           }
                       }
                   },
                   [&](const draw::Undo&) { step_history(state, around, true); },
                   [&](const draw::Redo&) { step_history(state, around, false); },
                   [&](const draw::SelectPart& c) {
                       plan.selected = c.id;
                       plan.corner = -1;
                   },
                   [&](const draw::FinishStrip&) { finish_strip(state, around); },
                   [&](const draw::ChooseTape& c) {
                       plan.tape = c.tape;
                       state.sheet = SheetKind::none;
                       if (const Strip* strip = find_strip(plan.card, plan.selected);
                           strip != nullptr && strip->tape != c.tape) {
                           commit_edit(state, around, {edit::SetTape{plan.selected, c.tape}});
                       }
                   },
                   [&](const draw::ChooseLight& c) {
                       plan.ohm = c.ohm;
                       plan.led_type = c.ohm > 0.0 ? plan.led_type : c.type;
                       state.sheet = SheetKind::none;
                       if (c.ohm <= 0.0 && find_led(plan.card, plan.selected) != nullptr) {
                           commit_edit(state, around, {edit::SetLedType{plan.selected, c.type}});
                       }
                   },
                   [&](const draw::Nudge& c) { nudge(state, around, c.by_mm); },
                   [&](const draw::Add& c) { add_mark(state, around, c.kind); },
                   [&](const draw::RemoveSelected&) { remove_selected(state, around); },
                   [&](const draw::TurnSelected& c) { turn_selected(state, around, c.by_deg); },
                   [&](const draw::CopySelected&) { copy_selected(state, around); },
                   [&](const draw::ShowFinding& c) { show_finding(state, c.index); },
                   [&](const draw::ApplyFix& c) { apply_fix(state, around, c.finding, c.fix); },
                   [&](const draw::ShowLayers& c) {
                       plan.lights = c.lights;
                       plan.notes = c.notes;
                   },
                   [&](const draw::Suggest&) { suggest_traces(state, around); },
                   [&](const draw::SearchOn&) { search_on(state, around); },
                   [&](const draw::StopSearch&) { end_search(state, around); },
                   [&](const draw::LookAtSuggestion& c) { look_at_suggestion(state, c.index); },
                   [&](const draw::TakeSuggestion&) { take_suggestion(state, around); },
                   [&](const draw::LeaveSuggestions&) { settle(plan); },
                   [&](const draw::WishPrint& c) { state.print = c.wish; },
                   [&](const draw::Print&) { print_plan(state, around); },
                   [&](const draw::PrintPage&) { give_step_page(state, around); },
                   [&](const draw::PlaceArt& c) { commit_edit(state, around, {edit::SetArt{c.art}}); },
                   [&](const draw::MakeThis&) { make_this(state, around); },
                   [](const auto&) {},
               },
               command);
}

} // namespace lanternleaf
