#include "controls/button.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kPad = 20;
constexpr float kIconGap = 10;
constexpr float kIcon = 26;

Target target_of(std::string_view name, const Rect& r, const ButtonLook& look, Role role) {
    return {.name = std::string(name),
            .role = role,
            .label = look.spoken.empty() ? look.label : look.spoken,
            .rect = r,
            .enabled = look.enabled,
            .checked = look.selected};
}

/// Fill and edge of a button that is not the primary; gives the colour of what stands on it.
Colour draw_base(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look, float edge_width,
                 Colour edge, Colour ink) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    if (!look.enabled) {
        pen.fill(r, t.well, ui.m.radius);
        pen.dashed_outline(r, t.edge, 1.5f, ui.m.radius, 6, 5);
        return t.ink2;
    }
    const bool down = ui.pressed(name);
    Colour ground = look.selected ? t.lamp_tint : t.panel;
    if (down) {
        ground = look.selected ? mixed(t.lamp_tint, t.lamp, 0.35f) : t.well;
    } else if (ui.hovered(name)) {
        ground = mixed(ground, t.well, 0.5f);
    }
    pen.fill(r, ground, ui.m.radius);
    if (look.selected) {
        pen.outline(r, t.ink, 3, ui.m.radius);
    } else {
        pen.outline(r, edge, edge_width, ui.m.radius);
    }
    return ink;
}

bool draw_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look, float edge_width,
                 Colour edge, Colour ink, TextStyle style) {
    const bool hit = offer(ui, target_of(name, r, look, Role::Button), look.reason);
    const Colour on = draw_base(ui, name, r, look, edge_width, edge, ink);
    const Rect box = ui.pressed(name) && look.enabled ? r.moved(0, 1) : r;
    const Icon icon = look.enabled ? look.icon : Icon::Lock;
    icon_and_label(ui, box.shrunk(8, 0), icon, ui.m.with_text(kIcon), look.label, style, on);
    return hit;
}

} // namespace

void icon_and_label(Ui& ui, const Rect& box, Icon icon, float icon_size, std::string_view label,
                    TextStyle style, Colour colour) {
    Pen& pen = ui.pen();
    if (label.empty()) {
        draw_icon(pen, icon, box.centre(), icon_size, colour);
        return;
    }
    const float icon_room = icon == Icon::None ? 0 : icon_size + kIconGap;
    const float room = box.w - icon_room;
    float text_w = ui.fonts().width(label, style);
    const bool forced = label.find('\n') != std::string_view::npos;
    if (text_w <= room && !forced) {
        const float x = box.x + (box.w - icon_room - text_w) / 2;
        draw_icon(pen, icon, {x + icon_size / 2, box.centre().y}, icon_size, colour);
        pen.text_in({x + icon_room, box.y, text_w, box.h}, label, style, colour, Align::Left);
        return;
    }
    // Two lines, closer together than in a paragraph; what still does not fit is shortened.
    TextStyle tight = style;
    tight.lead = style.size * 1.1f;
    auto lines = ui.fonts().wrap(label, tight, room);
    const auto most = static_cast<std::size_t>(std::max(1.0f, box.h / tight.lead));
    if (lines.size() > most || text_w > room * static_cast<float>(most)) {
        tight = tight.sized(style.size * 0.9f);
        lines = ui.fonts().wrap(label, tight, room);
    }
    lines.resize(std::min(lines.size(), most));
    text_w = 0;
    for (const TextLine& line : lines) {
        text_w = std::max(text_w, line.width);
    }
    const float h = static_cast<float>(lines.size()) * tight.lead;
    const float x = box.x + (box.w - icon_room - text_w) / 2;
    draw_icon(pen, icon, {x + icon_size / 2, box.centre().y}, icon_size, colour);
    const Align align = icon == Icon::None && !forced ? Align::Centre : Align::Left;
    pen.lines({x + icon_room, box.centre().y - h / 2}, lines, tight, colour, align, text_w);
}

float button_width(const Ui& ui, const ButtonLook& look) {
    const TextStyle style = look.bold ? ui.m.type(Type::Body).bold() : ui.m.type(Type::Body);
    const float icon = look.icon == Icon::None && look.enabled ? 0 : ui.m.with_text(kIcon) + kIconGap;
    return std::max(ui.m.target, ui.fonts().width(look.label, style) + icon + 2 * kPad);
}

float primary_width(const Ui& ui, const ButtonLook& look) {
    const float icon = look.icon == Icon::None ? 0 : ui.m.with_text(28) + 12;
    return ui.fonts().width(look.label, ui.m.type(Type::Action)) + icon + 2 * 32;
}

bool button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look) {
    const TextStyle body = ui.m.type(Type::Body);
    return draw_button(ui, name, r, look, 2, ui.theme().edge, ui.theme().ink, look.bold ? body.bold() : body);
}

bool icon_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look) {
    const bool hit = offer(ui, target_of(name, r, look, Role::Button), look.reason);
    const Theme& t = ui.theme();
    Colour on = t.ink;
    if (look.enabled) {
        on = draw_base(ui, name, r, look, 1.25f, t.edge, t.ink);
    } else {
        ui.pen().fill(r, t.well, ui.m.radius);
        ui.pen().outline(r, t.line, 1, ui.m.radius);
        on = mixed(t.ink2, t.well, 0.4f);
    }
    const Rect box = ui.pressed(name) && look.enabled ? r.moved(0, 1) : r;
    draw_icon(ui.pen(), look.icon, box.centre(), ui.m.with_text(28), on);
    return hit;
}

bool leaf_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look) {
    const Theme& t = ui.theme();
    return draw_button(ui, name, r, look, 2.5f, t.leaf, t.leaf_text,
                       ui.m.type(Type::Action).sized(ui.m.type(Type::Body).size * 1.1f));
}

bool primary_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look) {
    const Theme& t = ui.theme();
    const bool hit = offer(ui, target_of(name, r, look, Role::Primary), look.reason);
    if (!look.enabled) {
        const Colour on = draw_base(ui, name, r, look, 2, t.edge, t.ink);
        icon_and_label(ui, r.shrunk(16, 0), Icon::Lock, ui.m.with_text(28), look.label,
                       ui.m.type(Type::Action), on);
        return false;
    }
    const bool down = ui.pressed(name);
    Colour ground = down ? t.leaf_dk : t.leaf;
    if (!down && ui.hovered(name)) {
        ground = mixed(t.leaf, t.leaf_dk, 0.4f);
    }
    ui.pen().turned_corner_panel(r, ground, t.turned, ui.m.radius, ui.m.turned_corner);
    const Rect box = down ? r.moved(0, 1) : r;
    icon_and_label(ui, box.shrunk(16, 0), look.icon, ui.m.with_text(28), look.label, ui.m.type(Type::Action),
                   t.on_leaf);
    return hit;
}

} // namespace lanternleaf
