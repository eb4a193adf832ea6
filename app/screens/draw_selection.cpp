// What can be done with the thing that is selected, and what the strip at hand asks for.
#include "controls/button.h"
#include "controls/panel.h"
#include "screens/draw_choices.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void draw_choices(Screen& screen, Rect row, const std::vector<Choice>& choices) {
    Ui& ui = screen.ui;
    constexpr float kGap = 8;
    const auto wanted = [&](bool icons) {
        float wide = -kGap;
        for (const Choice& choice : choices) {
            wide +=
                button_width(ui, {.label = choice.label, .icon = icons ? choice.icon : Icon::None}) + kGap;
        }
        return wide;
    };
    // First the icons go, then each gets an equal share and two lines; a word is dearer than a picture.
    const bool icons = wanted(true) <= row.w;
    const bool shared = !icons && wanted(false) > row.w;
    const float share = (row.w + kGap) / static_cast<float>(choices.size()) - kGap;
    for (const Choice& choice : choices) {
        const ButtonLook look{
            .label = choice.label, .icon = icons ? choice.icon : Icon::None, .spoken = choice.label};
        const Rect r = row.cut_left(shared ? share : button_width(ui, look));
        row.cut_left(kGap);
        const bool tight = shared && share < 72;
        if (tight ? icon_button(ui, choice.name, r, {.icon = choice.icon, .spoken = choice.label})
                  : button(ui, choice.name, r, look)) {
            screen.say(choice.command);
        }
    }
}

void draw_laying_row(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    Rect inside = area.shrunk(brief ? 4.0f : 16.0f, 0);
    const ButtonLook done{.label = ui.words("draw.done"), .icon = Icon::Tick, .bold = true};
    const Rect slot = inside.cut_right(primary_width(ui, done));
    const float h = std::min(area.h - 4, ui.m.primary_h);
    if (primary_button(ui, "draw/done", around(slot.centre(), slot.w, h), done)) {
        act(screen, draw::FinishStrip{});
    }
    inside.cut_right(12);
    const TextStyle body = ui.m.type(Type::Body);
    const bool plus = draw.tool == DrawTool::strip_plus;
    const std::string title =
        draw.laying.strip.empty()
            ? ui.words(plus ? "draw.laying_plus" : "draw.laying_minus")
            : ui.words(plus ? "draw.laying_plus_on" : "draw.laying_minus_on", {{"id", draw.laying.strip}});
    const std::string words = draw.laying.start ? ui.words("draw.laying_began") : ui.words("draw.laying_on");
    if (brief) {
        ui.pen().text_in(
            {inside.x, inside.y, inside.w, inside.h},
            ui.fonts().fitted(ui.words("draw.laying_brief", {{"strip", title}, {"words", words}}),
                              ui.m.type(Type::Small), inside.w),
            ui.m.type(Type::Small), ui.theme().ink, Align::Left);
        return;
    }
    const float text_h = body.lead + ui.fonts().wrapped_height(words, body, inside.w);
    const float y = inside.centre().y - text_h / 2;
    ui.pen().text({inside.x, y}, title, body.bold(), ui.theme().ink);
    ui.pen().paragraph({inside.x, y + body.lead}, inside.w, words, body, ui.theme().ink);
}

} // namespace

bool draw_selection(Screen& screen, const Rect& area, bool brief) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const bool laying = draw.laying.under_way();
    if (draw_suggestions(screen, area, brief)) {
        return true;
    }
    if (!laying && draw.selected.empty()) {
        return false;
    }
    if (!brief) {
        panel(ui, area);
    }
    if (laying) {
        draw_laying_row(screen, area, brief);
        return true;
    }
    const Selection selection = selection_of(draw, ui.words);
    if (brief) {
        Rect row = area;
        const TextStyle body = ui.m.type(Type::Body).bold();
        const float w = std::min(ui.fonts().width(selection.title, body) + 16, area.w * 0.32f);
        ui.pen().text_in(row.cut_left(w), ui.fonts().fitted(selection.title, body, w - 8), body,
                         ui.theme().ink, Align::Left);
        row.y += 2;
        row.h = ui.m.target;
        draw_choices(screen, row, selection.choices);
        return true;
    }
    Rect inside = area.shrunk(16, 11);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect head = inside.cut_top(body.lead + 4);
    const float used = ui.pen().text_in(head, selection.title, body.bold(), ui.theme().ink, Align::Left);
    const TextStyle small = ui.m.type(Type::Small);
    const float room = head.w - used - 16;
    ui.pen().text_in({head.x + used + 14, head.y, room, head.h},
                     ui.fonts().fitted(selection.words, small, room), small, ui.theme().ink2, Align::Left);
    inside.cut_top(8);
    draw_choices(screen, {inside.x, inside.y, inside.w, ui.m.target}, selection.choices);
    return true;
}

} // namespace lanternleaf
