#include "controls/segmented.h"

#include <algorithm>

#include "controls/button.h"

namespace lanternleaf {

float segmented_width(const Ui& ui, std::span<const Segment> segments) {
    float widest = 0;
    for (const Segment& s : segments) {
        const float icon = s.icon == Icon::None ? 0 : ui.m.with_text(24) + 10;
        widest = std::max(widest, ui.fonts().width(s.label, ui.m.type(Type::Body).bold()) + icon + 36);
    }
    return widest * static_cast<float>(segments.size());
}

bool segmented(Ui& ui, std::string_view name, const Rect& r, std::span<const Segment> segments, int& index) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const int count = static_cast<int>(segments.size());
    if (count == 0) {
        return false;
    }
    bool changed = false;
    pen.fill(r, t.panel, ui.m.radius);
    const float w = r.w / static_cast<float>(count);
    for (int i = 0; i < count; ++i) {
        const Segment& s = segments[static_cast<std::size_t>(i)];
        const Rect box{r.x + w * static_cast<float>(i), r.y, w, r.h};
        const std::string id = std::string(name) + "/" + (s.name.empty() ? std::to_string(i) : s.name);
        const bool on = i == index;
        if (offer(ui, {.name = id, .role = Role::Tab, .label = s.label, .rect = box, .checked = on}) && !on) {
            index = i;
            changed = true;
        }
        const unsigned corners =
            (i == 0 ? unsigned{kCornersLeft} : 0u) | (i + 1 == count ? unsigned{kCornersRight} : 0u);
        if (on) {
            pen.fill(box, t.lamp, ui.m.radius, corners);
        } else if (ui.pressed(id)) {
            pen.fill(box, t.well, ui.m.radius, corners);
        }
        if (i > 0 && !on && i - 1 != index) {
            pen.fill({box.x, box.y + 8, 1, box.h - 16}, t.edge);
        }
        const TextStyle style = on ? ui.m.type(Type::Body).bold() : ui.m.type(Type::Body);
        icon_and_label(ui, box.shrunk(6, 0), s.icon, ui.m.with_text(24), s.label, style,
                       on ? t.on_lamp : t.ink);
    }
    pen.outline(r, t.edge, 1.5f, ui.m.radius);
    return changed;
}

} // namespace lanternleaf
