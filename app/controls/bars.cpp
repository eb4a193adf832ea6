#include "controls/bars.h"

#include <algorithm>

namespace lanternleaf {

void range_bar(Ui& ui, std::string_view name, const Rect& r, const RangeLook& look) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const float track = std::min(r.h, 14.0f);
    const Rect trough{r.x, r.centre().y - track / 2, r.w, track};
    pen.fill(trough, t.well, track / 2);
    pen.outline(trough, t.edge, 1, track / 2);
    const float a = r.x + r.w * std::clamp(look.low, 0.0f, 1.0f);
    const float b = r.x + r.w * std::clamp(look.high, 0.0f, 1.0f);
    const Rect box{a, trough.y - 1, std::max(b - a, 3.0f), track + 2};
    pen.fill(box, t.leaf_tint);
    pen.outline(box, t.leaf, 2);
    if (look.value) {
        const float x = r.x + r.w * std::clamp(*look.value, 0.0f, 1.0f);
        const float y = r.centre().y;
        const float k = track * 0.64f;
        pen.line({x, y - k - 4}, {x, y + k + 4}, t.ink, 2.5f);
        pen.disc({x, y}, k, t.lamp);
        pen.ring({x, y}, k, t.night ? t.lamp_dk : t.ink, 2);
    }
    ui.add({.name = std::string(name), .role = Role::Note, .label = look.spoken, .rect = r});
}

void share_bar(Ui& ui, const Rect& r, float share, Colour fill) {
    const Theme& t = ui.theme();
    ui.pen().fill(r, t.well, r.h / 2);
    const float w = r.w * std::clamp(share, 0.0f, 1.0f);
    if (w > 0) {
        ui.pen().push_clip({r.x, r.y, w, r.h});
        ui.pen().fill(r, fill, r.h / 2);
        ui.pen().pop_clip();
    }
    ui.pen().outline(r, t.edge, 1, r.h / 2);
}

void brightness_bar(Ui& ui, const Rect& r, float share, bool green) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const float radius = 5;
    pen.fill(r, t.well, radius);
    const float k = std::clamp(share, 0.0f, 1.0f);
    if (k < 0.02f) {
        pen.outline(r, t.edge, 1.25f, radius);
        draw_icon(pen, Icon::BulbOff, r.centre(), std::min(20.0f, r.w * 0.8f), t.plum);
        return;
    }
    const float h = r.h * k;
    pen.push_clip({r.x, r.bottom() - h, r.w, h});
    pen.fill(r, green ? t.glow_green : t.lamp, radius);
    pen.pop_clip();
    pen.outline(r, t.edge, 1.25f, radius);
    const float y = std::clamp(r.bottom() - h, r.y + 1.5f, r.bottom() - 2.5f);
    pen.fill({r.x, y - 1.25f, r.w, 2.5f}, t.ink);
}

void pips(Ui& ui, const Rect& r, int count, int now, bool right) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    if (count <= 0) {
        return;
    }
    const float dot = std::min(14.0f, r.h);
    const float long_one = dot * 34 / 14;
    const float dots = dot * static_cast<float>(count - 1) + long_one;
    const float gap = count > 1 ? std::min(7.0f, (r.w - dots) / static_cast<float>(count - 1)) : 0;
    ui.add({.name = "pips",
            .role = Role::Note,
            .label = std::to_string(now + 1) + "/" + std::to_string(count),
            .rect = r});
    if (gap < 2) {
        // Too many to count by eye: say it instead.
        const TextStyle style = ui.m.type(Type::Small).bold();
        pen.text_in(r, std::to_string(now + 1) + "/" + std::to_string(count), style, t.ink2,
                    right ? Align::Right : Align::Left);
        return;
    }
    float x = right ? r.right() - dots - gap * static_cast<float>(count - 1) : r.x;
    const float y = r.centre().y - dot / 2;
    for (int i = 0; i < count; ++i) {
        if (i == now) {
            const Rect box{x, y - 1.5f, long_one, dot + 3};
            pen.fill(box, t.lamp, box.h / 2);
            pen.outline(box, t.lamp_dk, 2, box.h / 2);
            x += long_one + gap;
            continue;
        }
        if (i < now) {
            pen.disc({x + dot / 2, y + dot / 2}, dot / 2, t.leaf);
        } else {
            pen.ring({x + dot / 2, y + dot / 2}, dot / 2, t.edge, 2);
        }
        x += dot + gap;
    }
}

} // namespace lanternleaf
