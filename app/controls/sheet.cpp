#include "controls/sheet.h"

#include <algorithm>

namespace lanternleaf {

SheetSide usual_side(const Metrics& metrics) {
    return metrics.form == Form::Landscape ? SheetSide::Side : SheetSide::Bottom;
}

SheetPaper::SheetPaper(Ui& ui, std::string_view name, SheetSide side, bool open, float height,
                       std::string_view title, Icon icon, std::optional<Rect> over)
    : ui_(ui) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const Metrics& m = ui.m;
    const std::string id(name);
    // A sheet seen for the first time slides in from nothing.
    const std::string slide = id + "#slide";
    if (open && !ui.has_glide(slide)) {
        ui.set_glide(slide, 0);
    }
    const float raw = ui.glide(slide, open ? 1.0f : 0.0f, kSheet_s);
    shown_ = raw > 0 || open;
    if (!shown_) {
        return;
    }
    const float in = ease_out(raw);
    const float top = m.top_h + m.insets.top;
    const Rect scrim{0, top, m.window.w, m.window.h - top};
    pen.fill(scrim, faded(t.scrim, in));

    if (side == SheetSide::Bottom) {
        const float w = std::min(m.window.w, 720.0f);
        const float h = std::min(height + m.insets.bottom, m.window.h - top - 24);
        paper_ = {(m.window.w - w) / 2, m.window.h - h * in, w, h};
    } else {
        const float w = over ? over->w : std::min(520.0f, m.window.w - 40);
        const float x = over ? over->x : m.window.w - m.page_margin - m.insets.right - w;
        const float y = over ? over->y : top + 86;
        // A sheet that would reach below the window moves up, as far as the top bar; then it is cut.
        const float foot = m.window.h - m.insets.bottom - 8;
        const float at = std::max(top + 8, std::min(y, foot - height));
        paper_ = Rect{x, at, w, std::min(height, foot - at)}.moved(24 * (1 - in), 0);
    }
    const unsigned corners = side == SheetSide::Bottom ? unsigned{kCornersTop} : unsigned{kCornersAll};
    ui.add({.name = id + "/scrim", .role = Role::Scrim, .rect = scrim});
    ui.add({.name = id, .role = Role::Sheet, .label = std::string(title), .rect = paper_});
    pen.shadow(paper_, m.radius, Lift::Sheet);
    pen.fill(paper_.moved(0, 3), t.table_edge, m.radius, corners);
    pen.fill(paper_, t.panel, m.radius, corners);
    pen.outline(paper_, t.line, 1, m.radius, corners);

    const Rect safe{paper_.x, paper_.y, paper_.w,
                    paper_.h - (side == SheetSide::Bottom ? m.insets.bottom : 0)};
    Rect inner = safe.shrunk(m.phone() ? 12.0f : 20.0f, 10);
    const TextStyle h2 = m.type(Type::H2);
    Rect head = inner.cut_top(std::max(m.target, h2.lead + 12));
    inner.cut_bottom(m.phone() ? 2.0f : 14.0f);
    body_ = inner;

    const Rect cross = Rect{head.right() - m.target + 8, head.centre().y - m.target / 2, m.target, m.target};
    head.w -= m.target;
    if (icon != Icon::None) {
        draw_icon(pen, icon, {head.x + 15, head.centre().y}, m.with_text(30), t.blue);
        head.cut_left(40);
    }
    pen.text_in(head, ui.fonts().fitted(title, h2, head.w), h2, t.ink, Align::Left);
    if (ui.pressed(id + "/close")) {
        pen.fill(cross, t.well, m.radius_small);
    }
    draw_icon(pen, Icon::Cross, cross.centre(), m.with_text(26), t.ink);
    const bool tapped = offer(
        ui, {.name = id + "/close", .role = Role::Button, .label = ui.words("sheet.close"), .rect = cross});
    closed_ = open && (tapped || ui.tapped(id + "/scrim") || ui.take_key(Key::Escape));
    pen.push_clip(paper_);
    ui.targets.push_clip(paper_);
}

SheetPaper::~SheetPaper() {
    if (shown_) {
        ui_.pen().pop_clip();
        ui_.targets.pop_clip();
    }
}

} // namespace lanternleaf
