#include "paint/lens.h"

#include "paint/board_layers.h"
#include "paint/picture_stage.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

void arrow_head(Pen& pen, Point tip, Point way, Colour colour) {
    const Point side{-way.y, way.x};
    const Point left = tip - way * 7 + side * 5;
    const Point right = tip - way * 7 - side * 5;
    const Point head[] = {left, tip, right};
    pen.stroke(head, colour, 2.0f, false, true);
}

/// The gap as a tinted band across the tape, with arrows from both sides and its length above.
void dimension(const layers::Canvas& on, const LensDimension& gap, float em) {
    const Colour plum = on.theme.plum;
    const Point a = on.to(gap.from_mm);
    const Point b = on.to(gap.to_mm);
    const float far = distance(a, b);
    if (far < 0.5f) {
        return;
    }
    const Point way = (b - a) * (1 / far);
    const Point up =
        way.x >= 0 ? Point{way.y, -way.x} : Point{-way.y, way.x}; // towards the top of the screen
    const float over = on.px(4.2);
    const Point band[] = {a + up * over, b + up * over, b - up * over, a - up * over};
    on.pen.fill_convex(band, faded(plum, 0.16f));
    on.pen.line(a + up * over, a - up * over, plum, 2.0f);
    on.pen.line(b + up * over, b - up * over, plum, 2.0f);
    const Point left = a + up * (over - 8);
    const Point right = b + up * (over - 8);
    on.pen.line(left - way * 24, left - way * 3, plum, 2.0f);
    arrow_head(on.pen, left - way * 3, way, plum);
    on.pen.line(right + way * 24, right + way * 3, plum, 2.0f);
    arrow_head(on.pen, right + way * 3, way * -1, plum);
    const TextStyle style{em + 3, (em + 3) * 1.3f, Weight::Bold};
    const float wide = on.pen.fonts().width(gap.text, style);
    Rect box{right.x + way.x * 30, right.y - style.lead / 2, wide + 8, style.lead};
    box.x = std::min(box.x, on.at.area.right() - box.w - 4);
    on.pen.fill(box, on.theme.sheet, 3);
    on.pen.text_in(box, gap.text, style, plum);
}

void repair(const layers::Canvas& on, const LensRepair& repair, float em) {
    if (repair.path_mm.size() < 2) {
        return;
    }
    const std::vector<Point> path = on.to(repair.path_mm);
    const float half = on.px(repair.width_mm) / 2 - 2;
    std::vector<Point> outline = layers::beside(path, -half);
    const std::vector<Point> back = layers::beside(path, half);
    outline.insert(outline.end(), back.rbegin(), back.rend());
    on.pen.fill_polygon(outline, faded(on.theme.cu_hi, 0.55f));
    on.pen.dashed(outline, on.theme.leaf, 3.0f, {8, 5}, 0, true);
    if (repair.text.empty()) {
        return;
    }
    const TextStyle style{em, em * 1.3f, Weight::Regular};
    const float wide = on.pen.fonts().width(repair.text, style) + 8;
    Point low = path.back();
    for (const Point p : path) {
        low.y = std::max(low.y, p.y);
    }
    Rect box{low.x + 12, low.y + half + 12, wide, style.lead};
    box.x = std::clamp(box.x, on.at.area.x + 6, std::max(on.at.area.x + 6, on.at.area.right() - wide - 6));
    box.y = std::min(box.y, on.at.area.bottom() - box.h - 6);
    const Point from = path[path.size() / 2] + Point{0, half};
    on.pen.line({std::min(path.back().x - 8, box.x + 6), from.y}, {box.x + 4, box.y + 4}, on.theme.leaf, 2.5f,
                true);
    on.pen.fill(box, on.theme.sheet, 3);
    on.pen.text_in(box, repair.text, style, on.theme.leaf_text);
}

} // namespace

void draw_lens(Pen& pen, const Theme& theme, const Rect& frame, const BoardView& view, const LensSpec& spec,
               float label_em, float ppm) {
    Viewport at;
    at.area = frame;
    at.ppm = static_cast<double>(ppm);
    at.middle = frame.centre();
    at.centre_mm = spec.centre_mm;
    BoardLook look;
    look.label_em = label_em;
    const layers::Canvas on{pen, theme, view, at, look};
    pen.fill(frame, theme.sheet, 12);
    pen.push_clip(frame);
    std::size_t next_patch = 0;
    for (const StripView& strip : view.strips) {
        while (next_patch < view.patches.size() && view.patches[next_patch].laid_index < strip.laid_index) {
            layers::patch(on, view.patches[next_patch++]);
        }
        layers::strip(on, strip);
    }
    for (const JointView& joint : view.joints) {
        layers::joint(on, joint);
    }
    for (const PartView& part : view.parts) {
        if (part.state == ItemState::done) {
            layers::part(on, part);
        }
    }
    if (spec.repair) {
        repair(on, *spec.repair, label_em);
    }
    if (spec.dimension) {
        dimension(on, *spec.dimension, label_em);
    }
    const TextStyle style{label_em, label_em * 1.3f, Weight::Regular};
    for (const LensName& name : spec.names) {
        const float wide = pen.fonts().width(name.text, style) + 8;
        Rect box = around(on.to(name.at_mm), wide, style.lead);
        box.x = std::clamp(box.x, frame.x + 8, std::max(frame.x + 8, frame.right() - wide - 8));
        box.y = std::clamp(box.y, frame.y + 6, std::max(frame.y + 6, frame.bottom() - box.h - 6));
        pen.fill(box, theme.sheet, 3);
        pen.text_in(box, name.text, style, theme.ink);
    }
    pen.pop_clip();
    close_frame(pen, frame, 12, theme.panel, theme.line);
}

} // namespace lanternleaf
