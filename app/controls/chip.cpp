#include "controls/chip.h"

#include <algorithm>

#include "controls/button.h"

namespace lanternleaf {

bool chip(Ui& ui, std::string_view name, const Rect& r, std::string_view label, bool on) {
    const Theme& t = ui.theme();
    const bool hit = offer(ui, {.name = std::string(name),
                                .role = Role::Toggle,
                                .label = std::string(label),
                                .rect = r,
                                .checked = on});
    const bool down = ui.pressed(name);
    if (on) {
        ui.pen().fill(r, down ? t.well : t.panel, r.h / 2);
        ui.pen().outline(r, t.ink, 1.25f, r.h / 2);
    } else {
        ui.pen().fill(r, t.well, r.h / 2);
        ui.pen().dashed_outline(r, t.edge, 1.5f, r.h / 2, 5, 4);
    }
    const Rect box = down ? r.moved(0, 1) : r;
    icon_and_label(ui, box.shrunk(10, 0), on ? Icon::Eye : Icon::EyeOff, ui.m.with_text(20), label,
                   ui.m.type(Type::Small), on ? t.ink : t.ink2);
    return hit;
}

float chip_width(const Ui& ui, std::string_view label) {
    return ui.fonts().width(label, ui.m.type(Type::Small)) + ui.m.with_text(20) + 10 + 2 * 16;
}

bool safety_chip(Ui& ui, const Rect& r, std::string_view label) {
    const Theme& t = ui.theme();
    const bool hit =
        offer(ui, {.name = "safety", .role = Role::Button, .label = std::string(label), .rect = r});
    const bool down = ui.pressed("safety");
    ui.pen().fill(r, down ? t.plum_tint : t.panel, r.h / 2);
    ui.pen().outline(r, t.plum, 2, r.h / 2);
    const Rect box = down ? r.moved(0, 1) : r;
    icon_and_label(ui, box.shrunk(6, 0), Icon::Cellsafe, ui.m.with_text(27), label,
                   ui.m.type(Type::Body).bold(), t.plum);
    return hit;
}

float safety_chip_width(const Ui& ui, std::string_view label) {
    const float pad = ui.m.phone() ? 11 : 17;
    return ui.fonts().width(label, ui.m.type(Type::Body).bold()) + ui.m.with_text(27) + 10 + 2 * pad;
}

void tag(Ui& ui, const Rect& r, std::string_view label, bool problem) {
    const Theme& t = ui.theme();
    ui.pen().fill(r, problem ? t.plum_tint : t.leaf_tint, 6);
    if (problem) {
        ui.pen().outline(r, t.plum, 2, 6);
    }
    icon_and_label(ui, r, problem ? Icon::Problem : Icon::Tick, ui.m.with_text(20), label,
                   ui.m.type(Type::Small).bold(), problem ? t.plum : t.leaf_text);
}

void pill(Ui& ui, const Rect& r, std::string_view label, bool now) {
    const Theme& t = ui.theme();
    ui.pen().fill(r, now ? t.lamp : t.panel, r.h / 2);
    ui.pen().outline(r, now ? t.on_lamp : t.edge, now ? 2.0f : 1.25f, r.h / 2);
    ui.pen().text_in(r, label, ui.m.type(Type::CardLabel), now ? t.on_lamp : t.ink);
}

bool tool_tile(Ui& ui, std::string_view name, const Rect& r, const TileLook& look) {
    const Theme& t = ui.theme();
    const bool hit = offer(ui,
                           {.name = std::string(name),
                            .role = Role::Tab,
                            .label = look.label,
                            .rect = r,
                            .enabled = look.enabled,
                            .checked = look.selected},
                           look.reason);
    const bool down = ui.pressed(name) && look.enabled;
    Pen& pen = ui.pen();
    pen.fill(r, look.selected ? t.lamp_tint : down || !look.enabled ? t.well : t.panel, ui.m.radius_small);
    if (look.selected) {
        pen.outline(r, t.ink, 3, ui.m.radius_small);
    } else if (look.enabled) {
        pen.outline(r, t.edge, 1.25f, ui.m.radius_small);
    } else {
        pen.dashed_outline(r, t.edge, 1.5f, ui.m.radius_small, 5, 4);
    }
    const TextStyle small = ui.m.type(Type::Small);
    const TextStyle style = look.selected ? small.bold() : small;
    const Colour on = look.enabled ? t.ink : t.ink2;
    const float icon = ui.m.with_text(27);
    const float h = icon + 4 + style.lead;
    const float y = r.centre().y - h / 2 + (down ? 1.0f : 0.0f);
    draw_icon(pen, look.icon, {r.centre().x, y + icon / 2}, icon, on);
    pen.text({r.centre().x, y + icon + 4}, ui.fonts().fitted(look.label, style, r.w - 8), style, on,
             Align::Centre);
    return hit;
}

} // namespace lanternleaf
