#include "controls/nav.h"

#include <algorithm>

#include "controls/button.h"

namespace lanternleaf {

namespace {

constexpr float kPad = 9;
constexpr float kIcon = 26;
constexpr float kGap = 6;

} // namespace

float nav_item_width(const Ui& ui, const NavPlace& place) {
    // The bold width, so that nothing moves when another place is chosen.
    return ui.fonts().width(place.label, ui.m.type(Type::Body).bold()) + ui.m.with_text(kIcon) + kGap +
           2 * kPad;
}

bool nav_item(Ui& ui, const NavPlace& place, const Rect& r, bool selected) {
    const Theme& t = ui.theme();
    const bool hit = offer(
        ui, {.name = place.name, .role = Role::Tab, .label = place.label, .rect = r, .checked = selected});
    const bool down = ui.pressed(place.name);
    if (down || (ui.hovered(place.name) && !selected)) {
        ui.pen().fill(r.shrunk(2, 4), t.well, ui.m.radius_small);
    }
    const Colour on = selected ? t.leaf_text : t.ink;
    const TextStyle style = selected ? ui.m.type(Type::Body).bold() : ui.m.type(Type::Body);
    const float icon = ui.m.with_text(kIcon);
    const float dy = down ? 1.0f : 0.0f;
    const float x = r.x + kPad;
    draw_icon(ui.pen(), place.icon, {x + icon / 2, r.centre().y + dy}, icon, on);
    ui.pen().text_in({x + icon + kGap, r.y + dy, r.w, r.h}, place.label, style, on, Align::Left);
    if (selected) {
        const Rect mark{r.x + kPad - 4, r.bottom() - 9, r.w - 2 * kPad + 8, 6};
        ui.pen().fill(mark, t.lamp, 3);
        if (!t.night) {
            ui.pen().outline(mark, t.lamp_dk, 1, 3);
        }
    }
    return hit;
}

int nav_bar(Ui& ui, std::span<const NavPlace> places, int selected, const Rect& bar, float x, float* right) {
    int hit = -1;
    const float h = std::min(bar.h - 4, std::max(60.0f, ui.m.button_h + 4));
    for (std::size_t i = 0; i < places.size(); ++i) {
        const float w = nav_item_width(ui, places[i]);
        if (nav_item(ui, places[i], {x, bar.bottom() - h - 3, w, h}, static_cast<int>(i) == selected)) {
            hit = static_cast<int>(i);
        }
        x += w + 8;
    }
    if (right != nullptr) {
        *right = x;
    }
    return hit;
}

bool nav_menu(Ui& ui, const Rect& r, std::string_view title) {
    const Theme& t = ui.theme();
    const bool hit =
        offer(ui, {.name = "nav/menu", .role = Role::Button, .label = std::string(title), .rect = r});
    if (ui.pressed("nav/menu")) {
        ui.pen().fill(r.shrunk(0, 4), t.well, ui.m.radius_small);
    }
    const float y = r.centre().y;
    draw_mark(ui.pen(), {r.x + 20, y}, std::min(38.0f, r.h * 0.6f), t);
    draw_icon(ui.pen(), Icon::Down, {r.x + 52, y}, ui.m.with_text(20), t.ink);
    const TextStyle style = ui.m.type(Type::Body).bold();
    ui.pen().text_in({r.x + 70, r.y, r.w - 72, r.h}, ui.fonts().fitted(title, style, r.w - 72), style, t.ink,
                     Align::Left);
    return hit;
}

} // namespace lanternleaf
