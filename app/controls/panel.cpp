#include "controls/panel.h"

namespace lanternleaf {

void panel(Ui& ui, const Rect& r) {
    const Theme& t = ui.theme();
    ui.pen().shadow(r, ui.m.radius, Lift::Panel);
    ui.pen().fill(r.moved(0, 2), t.table_edge, ui.m.radius);
    ui.pen().fill(r, t.panel, ui.m.radius);
    ui.pen().outline(r, t.line, 1, ui.m.radius);
}

void well(Ui& ui, const Rect& r, Colour colour) {
    ui.pen().fill(r, colour, ui.m.radius_small);
}

void divider(Ui& ui, Point a, Point b) {
    const Point ends[] = {a, b};
    ui.pen().dashed(ends, ui.theme().line, 1.5f, {5, 4});
}

void table(Ui& ui) {
    ui.pen().fill({0, 0, ui.m.window.w, ui.m.window.h}, ui.theme().table);
}

void bar(Ui& ui, const Rect& r, bool at_top) {
    const Theme& t = ui.theme();
    ui.pen().fill(r, t.panel);
    const float y = at_top ? r.bottom() - 1 : r.y;
    ui.pen().fill({r.x, y, r.w, 1}, t.line);
}

void number_disc(Ui& ui, Point centre, float radius, std::string_view number, Colour fill, Colour ink,
                 Colour ring) {
    ui.pen().disc(centre, radius, fill);
    ui.pen().ring(centre, radius, ring, 2);
    const TextStyle style = ui.m.type(Type::Small).bold().sized(radius * 1.15f);
    ui.pen().text_in(around(centre, 2 * radius, 2 * radius), number, style, ink);
}

} // namespace lanternleaf
