// Suggested traces: looked for by the engine, looked at one by one, taken as a single edit that can be
// undone.
#include "model/update_draw.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr int kWanted = 3; ///< different ones to choose from

/// What makes the card at hand into the suggested one: its strips, and the parts it turned.
Edit edit_for(const Card& now, const Suggestion& suggestion, const Words& words) {
    EditList list{words("model.did_lay_suggested"), {{edit::ReplaceLaid{suggestion.card.laid}}}};
    const auto turned = [&](const auto& before, const auto& after) {
        for (const auto& part : after) {
            const auto same = std::find_if(before.begin(), before.end(),
                                           [&](const auto& each) { return each.id == part.id; });
            if (same != before.end() && same->turn_deg != part.turn_deg) {
                list.edits.push_back({edit::TurnPart{part.id, part.turn_deg}});
            }
        }
    };
    turned(now.leds, suggestion.card.leds);
    turned(now.resistors, suggestion.card.resistors);
    return {std::move(list)};
}

} // namespace

void suggest_traces(AppState& state, const Surroundings& around) {
    finish_strip(state, around);
    DrawState& draw = *state.draw;
    if (draw.history.card().leds.empty()) {
        say(state, around, around.words("model.place_light"));
        return;
    }
    RouteRequest request;
    request.card = draw.history.card();
    request.parts = draw.parts;
    request.tape = draw.tape;
    request.words = around.words;
    request.suggestions = kWanted;
    draw.selected.clear();
    draw.search = {std::make_shared<RouteSearch>(std::move(request)), around.clock_s};
}

void search_on(AppState& state, const Surroundings& around) {
    TraceSearch& search = state.draw->search;
    if (search.work == nullptr) {
        return;
    }
    if (!search.work->step()) {
        end_search(state, around);
    }
}

void end_search(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    if (draw.search.work == nullptr) {
        return;
    }
    RouteResult found = draw.search.work->take();
    draw.search = {};
    settle(draw);
    if (found.suggestions.empty()) {
        if (!found.stopped) {
            say(state, around, found.why_not.empty() ? around.words("model.no_way_found") : found.why_not);
            draw.selected = found.move_led;
        }
        return;
    }
    const std::string why_not = found.why_not;
    draw.suggested = std::move(found);
    look_at_suggestion(state, 0);
    if (!why_not.empty()) {
        say(state, around, why_not);
    }
}

void look_at_suggestion(AppState& state, int index) {
    DrawState& draw = *state.draw;
    if (!draw.suggested || index < 0 || index >= static_cast<int>(draw.suggested->suggestions.size())) {
        return;
    }
    draw.suggestion = index;
    const Suggestion& suggestion = draw.suggested->suggestions[static_cast<std::size_t>(index)];
    const Outcome<Card> shown =
        apply_edit(draw.history.card(), draw.parts, edit_for(draw.history.card(), suggestion, draw.words));
    if (shown) {
        preview(draw, shown.value());
    }
}

void take_suggestion(AppState& state, const Surroundings& around) {
    DrawState& draw = *state.draw;
    if (!draw.suggested || draw.suggestion >= static_cast<int>(draw.suggested->suggestions.size())) {
        return;
    }
    const Suggestion taken = draw.suggested->suggestions[static_cast<std::size_t>(draw.suggestion)];
    commit_edit(state, around, edit_for(draw.history.card(), taken, draw.words));
}

} // namespace lanternleaf
