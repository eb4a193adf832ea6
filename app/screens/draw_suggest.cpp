// Suggested traces: the work while they are looked for, then one way after another, what each costs, and the
// answer.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/panel.h"
#include "screens/draw_choices.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Below this nobody waits: a panel that only flickers would be in the way.
constexpr double kUnseen_s = 0.2;

void draw_looking(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const RouteProgress progress = screen.state.draw->search.work->progress();
    Rect inside = area.shrunk(brief ? 4.0f : 16.0f, brief ? 0.0f : 11.0f);
    const ButtonLook stop{.label = ui.words("draw.stop"), .icon = Icon::Cross};
    const Rect slot = inside.cut_right(button_width(ui, stop));
    if (button(ui, "draw/suggest/stop", around(slot.centre(), slot.w, ui.m.target), stop)) {
        act(screen, draw::StopSearch{});
    }
    inside.cut_right(14);
    const TextStyle body = ui.m.type(Type::Body);
    const int found = progress.suggestions;
    const std::string words =
        found == 0 ? ui.words("draw.looking") : ui.words("draw.looking_on", {{"n", found}});
    const float text_h = body.lead;
    const float y = inside.centre().y - (text_h + 22) / 2;
    ui.pen().text_in({inside.x, y, inside.w, text_h}, ui.fonts().fitted(words, body.bold(), inside.w),
                     body.bold(), ui.theme().ink, Align::Left);
    share_bar(ui, {inside.x, y + text_h + 8, inside.w, 14}, static_cast<float>(progress.done),
              ui.theme().leaf);
}

/// The traces that were found: which one, what it costs, and the answer.
void draw_found(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const std::vector<Suggestion>& found = draw.suggested->suggestions;
    const auto count = static_cast<int>(found.size());
    const Suggestion& now = found[static_cast<std::size_t>(draw.suggestion)];
    Rect inside = area.shrunk(brief ? 0.0f : 16.0f, brief ? 0.0f : 11.0f);
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const auto many = [&](int n, const char* none, const char* some) {
        return n == 0 ? ui.words(none) : ui.words(some, {{"n", n}});
    };
    const std::string tape =
        ui.words("draw.of_tape", {{"length", ui.words.mm(std::round(now.report.length_mm))}});
    const std::string cost = ui.words(
        "draw.cost", {{"tape", tape},
                      {"folds", many(now.report.folds, "draw.no_folds", "draw.folds")},
                      {"joints", many(now.report.joints, "draw.no_joints", "draw.joints")},
                      {"crossings", many(now.report.crossings, "draw.no_crossings", "draw.crossings")}});
    if (!brief) {
        const Rect head = inside.cut_top(body.lead + 4);
        const std::string title =
            count == 1 ? ui.words("draw.one_way")
                       : ui.words("draw.way_of", {{"number", draw.suggestion + 1}, {"count", count}});
        const float used = ui.pen().text_in(head, title, body.bold(), ui.theme().ink, Align::Left);
        const float room = head.w - used - 14;
        ui.pen().text_in({head.x + used + 14, head.y, room, head.h}, ui.fonts().fitted(cost, small, room),
                         small, ui.theme().ink2, Align::Left);
        inside.cut_top(8);
    }
    Rect row = inside.cut_top(ui.m.target);
    const ButtonLook use{.label = ui.words("draw.use"), .icon = Icon::Tick, .bold = true};
    const float use_w = primary_width(ui, use);
    if (primary_button(ui, "draw/suggest/use", row.cut_right(use_w), use)) {
        act(screen, draw::TakeSuggestion{});
    }
    row.cut_right(8);
    const ButtonLook leave{.label = ui.words("draw.leave"), .icon = Icon::Cross};
    // On a phone a word less: both ways to look need their room.
    const bool narrow = row.w < button_width(ui, leave) + 2 * ui.m.target + 36;
    if (narrow ? icon_button(ui, "draw/suggest/leave", row.cut_right(ui.m.target),
                             {.icon = Icon::Cross, .spoken = ui.words("draw.leave")})
               : button(ui, "draw/suggest/leave", row.cut_right(button_width(ui, leave)), leave)) {
        act(screen, draw::LeaveSuggestions{});
    }
    row.cut_right(8);
    if (count > 1) {
        const int before = (draw.suggestion + count - 1) % count;
        const int after = (draw.suggestion + 1) % count;
        if (icon_button(ui, "draw/suggest/back", row.cut_left(ui.m.target),
                        {.icon = Icon::Back, .spoken = ui.words("draw.one_before")})) {
            act(screen, draw::LookAtSuggestion{before});
        }
        row.cut_left(8);
        if (icon_button(ui, "draw/suggest/next", row.cut_left(ui.m.target),
                        {.icon = Icon::Next, .spoken = ui.words("draw.next_one")})) {
            act(screen, draw::LookAtSuggestion{after});
        }
        row.cut_left(12);
    }
    if (brief && row.w > 40) {
        ui.pen().text_in(row, ui.fonts().fitted(tape, small, row.w), small, ui.theme().ink2, Align::Left);
    }
}

} // namespace

bool draw_suggestions(Screen& screen, const Rect& area, bool brief) {
    const DrawState& draw = *screen.state.draw;
    const bool found = draw.suggested && !draw.suggested->suggestions.empty();
    const bool looking = draw.search.work != nullptr;
    if (looking) {
        act(screen, draw::SearchOn{}); // a piece a frame, so that a finger is never kept waiting long
        screen.ui.keep_awake("suggest");
    }
    if (!found && !(looking && screen.around.clock_s - draw.search.began_s >= kUnseen_s)) {
        return false;
    }
    if (!brief) {
        panel(screen.ui, area);
    }
    if (found) {
        draw_found(screen, area, brief);
    } else {
        draw_looking(screen, area, brief);
    }
    return true;
}

} // namespace lanternleaf
