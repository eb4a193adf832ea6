#include "controls/toast.h"

#include <algorithm>

namespace lanternleaf {

void draw_toast(Ui& ui, const ToastLine& line) {
    const TextStyle style = ui.m.type(Type::Body);
    const float pad = 18;
    const float action_w = line.action.empty() ? 0 : ui.fonts().width(line.action, style.bold()) + 2 * pad;
    const float most = std::min(640.0f, ui.m.window.w - 2 * ui.m.page_margin) - 2 * pad - action_w;
    const auto lines = ui.fonts().wrap(line.text, style, most);
    float text_w = 0;
    for (const TextLine& l : lines) {
        text_w = std::max(text_w, l.width);
    }
    const float text_h = static_cast<float>(lines.size()) * style.lead;
    const float h = std::max(ui.m.target, text_h + 24);
    const float w = text_w + 2 * pad + action_w;
    const float foot = ui.m.action_h + ui.m.insets.bottom + 12;
    const Rect r{(ui.m.window.w - w) / 2, ui.m.window.h - foot - h, w, h};

    const Theme& t = ui.theme();
    ui.pen().shadow(r, ui.m.radius, Lift::Sheet);
    ui.pen().fill(r, t.ink, ui.m.radius);
    ui.pen().lines({r.x + pad, r.y + (h - text_h) / 2}, lines, style, t.panel, Align::Left, most);
    ui.add({.name = "toast", .role = Role::Note, .label = line.text, .rect = r});
    if (!line.action.empty()) {
        const Rect a{r.right() - action_w, r.y, action_w, h};
        // Ink is pale at night, so the word takes the amber or the leaf that reads on it.
        const Colour word = t.night ? rgb(0x00614A) : t.lamp;
        ui.pen().text_in(a, line.action, style.bold(), word);
        ui.add({.name = "toast/action", .role = Role::Button, .label = line.action, .rect = a});
    }
}

} // namespace lanternleaf
