// The Log's panels beside the steps: how the real thing differs, and the builds of the card.
#include "controls/button.h"
#include "controls/panel.h"
#include "screens/log.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

float line_height(const Ui& ui, const std::string& text, float width) {
    return ui.fonts().wrapped_height(text, ui.m.type(Type::Body), width - 36) + 10;
}

Icon icon_of(LogLineKind kind) {
    switch (kind) {
    case LogLineKind::change:
        return Icon::Differ;
    case LogLineKind::mend:
        return Icon::Repeat;
    case LogLineKind::note:
        return Icon::Log;
    case LogLineKind::plain:
        return Icon::Fine;
    }
    return Icon::None;
}

} // namespace

float draw_log_line(Ui& ui, const Rect& r, float y, const LogLine& line) {
    const TextStyle body = ui.m.type(Type::Body);
    draw_icon(ui.pen(), icon_of(line.kind), {r.x + 12, y + body.lead / 2}, 24,
              line.kind == LogLineKind::plain ? ui.theme().leaf_text : ui.theme().ink);
    return ui.pen().paragraph({r.x + 36, y}, r.w - 36, line.text, body, ui.theme().ink) + 10;
}

float draw_log_as_built(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const float width = r.w - 2 * ui.m.panel_pad_x;
    const float head_h = std::max(ui.m.button_h, ui.m.type(Type::H2).lead);
    float height = 22 + head_h + 8;
    for (const LogLine& line : view.as_built) {
        height += line_height(ui, line.text, width);
    }
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 10);
    Rect head = inside.cut_top(head_h);
    const ButtonLook look{.label = ui.words("log.add_note"), .icon = Icon::Plus};
    const Rect slot = head.cut_right(button_width(ui, look));
    if (button(ui, "log/add-note", {slot.x, slot.centre().y - ui.m.button_h / 2, slot.w, ui.m.button_h},
               look)) {
        screen.say(command::Log{logbook::BeginNote{}});
    }
    ui.pen().text_in(head, ui.words("log.as_built"), ui.m.type(Type::H2), ui.theme().ink, Align::Left);
    inside.cut_top(8);
    for (const LogLine& line : view.as_built) {
        inside.cut_top(draw_log_line(ui, inside, inside.y, line));
    }
    return height;
}

float draw_log_builds(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const float row_h = std::max(ui.m.target, body.lead + 20);
    const bool several = view.others.size() > 1;
    const float head_h =
        several ? std::max(ui.m.button_h, ui.m.type(Type::H2).lead) : ui.m.type(Type::H2).lead;
    const float height = 24 + head_h + 8 + static_cast<float>(view.others.size()) * row_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 12);
    Rect head = inside.cut_top(head_h);
    if (several) {
        const ButtonLook look{
            .label = ui.words("log.compare"), .icon = Icon::Differ, .spoken = ui.words("log.compare_spoken")};
        const Rect slot = head.cut_right(button_width(ui, look));
        if (button(ui, "log/compare-with",
                   {slot.x, slot.centre().y - ui.m.button_h / 2, slot.w, ui.m.button_h}, look)) {
            screen.say(command::OpenSheet{SheetKind::log_compare});
        }
    }
    ui.pen().text_in(head, ui.words("log.builds_of_card"), ui.m.type(Type::H2), ui.theme().ink, Align::Left);
    inside.cut_top(8);
    // Wide: when, who, time, outcome, what was put right. Narrow: when, or who made it, and outcome.
    const bool wide = inside.w > 760;
    const bool named = std::any_of(view.others.begin(), view.others.end(),
                                   [](const LogView::Other& other) { return !other.who.empty(); });
    const float when_w = wide ? (named ? 0.2f : 0.24f) : 0.5f;
    const float who_w = wide && named ? 0.2f : 0.0f;
    for (const LogView::Other& other : view.others) {
        const Rect line = inside.cut_top(row_h);
        const std::string name = "log/build/" + other.number;
        ui.add({.name = name,
                .role = Role::Item,
                .label = ui.words("log.build_spoken",
                                  {{"number", other.number}, {"when", other.when}, {"state", other.state}}),
                .rect = line,
                .checked = other.chosen});
        if (other.chosen || ui.pressed(name)) {
            ui.pen().fill(line, other.chosen ? ui.theme().lamp_tint : ui.theme().well, 10);
        } else {
            divider(ui, {line.x, line.y}, {line.right(), line.y});
        }
        const TextStyle style = other.chosen ? body.bold() : body;
        ui.pen().text_in({line.x + 14, line.y, 60, line.h}, other.number, style, ui.theme().ink, Align::Left);
        float x = line.x + 60;
        const auto column = [&](float share, const std::string& words) {
            const float w = (line.right() - 8 - line.x - 60) * share;
            ui.pen().text_in({x, line.y, w - 8, line.h}, ui.fonts().fitted(words, style, w - 8), style,
                             ui.theme().ink, Align::Left);
            x += w;
        };
        column(when_w, wide || other.who.empty() ? other.when : other.who);
        if (wide) {
            if (named) {
                column(who_w, other.who);
            }
            column(0.12f, other.time);
        }
        draw_icon(ui.pen(), other.finished ? Icon::Fine : Icon::Clock, {x + 11, line.centre().y}, 22,
                  other.finished ? ui.theme().leaf_text : ui.theme().ochre);
        x += 30;
        column(wide ? 0.22f : 0.4f, other.state);
        if (wide) {
            column(named ? 0.2f : 0.36f, other.put_right);
        }
        if (ui.tapped(name)) {
            screen.say(command::OpenLog{other.journal});
        }
    }
    return height;
}

} // namespace lanternleaf
