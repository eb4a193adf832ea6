#include "controls/hold_button.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

std::string second_line(const HoldLook& look, double held_s) {
    if (held_s <= 0) {
        return look.idle;
    }
    const int left = std::max(1, static_cast<int>(std::ceil(kHold_s - held_s)));
    if (left == 1) {
        return look.one_more;
    }
    std::string text = look.more;
    if (const auto at = text.find("{n}"); at != std::string::npos) {
        text.replace(at, 3, std::to_string(left));
    }
    return text;
}

} // namespace

bool hold_button(Ui& ui, std::string_view name, const Rect& r, const HoldLook& look) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    // Primary, so that Space with no focus holds it; a tap alone does nothing.
    ui.add({.name = std::string(name), .role = Role::Primary, .label = look.label, .rect = r});
    const double held = ui.held_s(name);
    const std::string drain = std::string(name) + "#drain";
    float share = static_cast<float>(std::min(1.0, held / kHold_s));
    // The share shown last tells whether the hold was complete before; a late frame cannot skip the moment.
    const bool done = share >= 1 && ui.glide_value(drain) < 1;
    if (held > 0 && share < 1) {
        ui.keep_awake("hold button");
    }
    // While held the share is set; when let go it glides back to nothing.
    if (held > 0) {
        ui.set_glide(drain, share);
    } else {
        share = ui.glide(drain, 0, kDrain_s);
    }

    pen.turned_corner_panel(r, t.leaf, t.turned, ui.m.radius, ui.m.turned_corner);
    if (share > 0) {
        const float w = r.w * share;
        pen.push_clip({r.x, r.y, w, r.h});
        pen.turned_corner_panel(r, t.leaf_dk, t.turned, ui.m.radius, ui.m.turned_corner);
        pen.pop_clip();
    }
    const float ring = std::min(24.0f, r.h * 0.3f);
    const Point c{r.x + 26 + ring, r.centre().y};
    pen.ring(c, ring, faded(t.on_leaf, 0.35f), 5);
    if (share > 0) {
        pen.arc(c, ring - 2.5f, -kPi / 2, -kPi / 2 + 2 * kPi * share, t.lamp, 5);
    }
    draw_icon(pen, Icon::Hand, c, ring * 1.05f, t.on_leaf);

    const TextStyle head = ui.m.type(Type::Action).sized(ui.m.type(Type::Action).size * 0.94f);
    const TextStyle body = ui.m.type(Type::Body).sized(ui.m.type(Type::Body).size * 0.95f);
    const float x = c.x + ring + 18;
    const float room = r.right() - x - 16;
    const auto lines = ui.fonts().wrap(look.label, head, room);
    const float h = static_cast<float>(lines.size()) * head.lead + body.lead;
    const float y = r.centre().y - h / 2;
    pen.lines({x, y}, lines, head, t.on_leaf, Align::Left, room);
    pen.text({x, y + h - body.lead}, ui.fonts().fitted(second_line(look, held), body, room), body, t.on_leaf);
    return done;
}

} // namespace lanternleaf
