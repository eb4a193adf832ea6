#include "sheets/symbols.h"

#include <algorithm>
#include <numbers>

namespace lanternleaf {

SideLook look_of(Side side) {
    switch (side) {
    case Side::negative:
        return {{0.45, kBlack, {}}, grey(0.80), '-'};
    case Side::positive:
        return {{0.35, kBlack, {2.4, 1.0}}, kWhite, '+'};
    case Side::link:
        return {{0.35, kBlack, {0.6, 0.8}}, grey(0.93), ' '};
    }
    return {};
}

void draw_sign(PagePen& pen, Vec2 at_mm, char sign, double arm_mm, double width_mm) {
    const Stroke stroke{width_mm, kBlack, {}};
    if (sign == '+' || sign == '-') {
        pen.line(at_mm - Vec2{arm_mm, 0}, at_mm + Vec2{arm_mm, 0}, stroke);
    }
    if (sign == '+') {
        pen.line(at_mm - Vec2{0, arm_mm}, at_mm + Vec2{0, arm_mm}, stroke);
    }
}

void draw_hatch(PagePen& pen, const std::vector<Vec2>& outline_mm, double pitch_mm, const Stroke& stroke) {
    constexpr std::size_t kMostLines = 4'000;
    // Lines x + y = level; where the outline crosses one, sorted by x, pairs bound what is inside.
    double low = 1e300;
    double high = -1e300;
    for (const Vec2 p : outline_mm) {
        low = std::min(low, p.x + p.y);
        high = std::max(high, p.x + p.y);
    }
    const double step = std::max(pitch_mm * std::numbers::sqrt2, (high - low) / kMostLines);
    for (double level = std::ceil(low / step) * step; level < high; level += step) {
        std::vector<double> at_x;
        for (std::size_t i = 0; i < outline_mm.size(); ++i) {
            const Vec2 a = outline_mm[i];
            const Vec2 b = outline_mm[(i + 1) % outline_mm.size()];
            const double da = a.x + a.y - level;
            const double db = b.x + b.y - level;
            if ((da < 0.0) != (db < 0.0)) {
                at_x.push_back(a.x + (b.x - a.x) * da / (da - db));
            }
        }
        std::sort(at_x.begin(), at_x.end());
        for (std::size_t i = 0; i + 1 < at_x.size(); i += 2) {
            pen.line({at_x[i], level - at_x[i]}, {at_x[i + 1], level - at_x[i + 1]}, stroke);
        }
    }
}

void draw_tick_box(PagePen& pen, Vec2 corner_mm, double size_mm) {
    pen.round_box(corner_mm, {size_mm, size_mm}, size_mm * 0.12, Stroke{0.35, kBlack, {}}, kWhite);
}

void draw_warning_triangle(PagePen& pen, Vec2 foot_mm, double height_mm) {
    // Corners of an equilateral triangle, each rounded about a centre that lies r inside both its sides.
    const double r = height_mm * 0.09;
    const double inner = height_mm - 3.0 * r; // the triangle through the three centres is 3 r lower
    const double half = inner / std::numbers::sqrt3;
    const Vec2 centres[] = {foot_mm + Vec2{0, -r - inner}, foot_mm + Vec2{half, -r},
                            foot_mm + Vec2{-half, -r}};
    std::vector<Vec2> outline;
    for (int corner = 0; corner < 3; ++corner) {
        for (int i = 0; i <= 8; ++i) {
            outline.push_back(centres[corner] + direction(-150.0 + 120.0 * corner + 15.0 * i) * r);
        }
    }
    pen.shape(std::move(outline), Stroke{height_mm * 0.045, kBlack, {}}, kWhite);
    const double top = -height_mm * 0.66;
    pen.shape({foot_mm + Vec2{-height_mm * 0.055, top}, foot_mm + Vec2{height_mm * 0.055, top},
               foot_mm + Vec2{height_mm * 0.03, -height_mm * 0.30},
               foot_mm + Vec2{-height_mm * 0.03, -height_mm * 0.30}},
              {}, kBlack);
    pen.disc(foot_mm + Vec2{0, -height_mm * 0.19}, height_mm * 0.055, {}, kBlack);
}

void draw_registration(PagePen& pen, Vec2 at_mm) {
    const Stroke thin{0.2, kBlack, {}};
    pen.disc(at_mm, 2.2, thin, {});
    pen.line(at_mm - Vec2{4, 0}, at_mm + Vec2{4, 0}, thin);
    pen.line(at_mm - Vec2{0, 4}, at_mm + Vec2{0, 4}, thin);
}

void draw_arrow(PagePen& pen, Vec2 from_mm, Vec2 to_mm, double width_mm, Ink ink) {
    const Vec2 ahead = unit(to_mm - from_mm);
    const double head = std::min(width_mm * 3.2, distance(from_mm, to_mm));
    const Vec2 neck = to_mm - ahead * head;
    const Vec2 side = quarter_turn(ahead) * (head * 0.5);
    pen.line(from_mm, neck, {width_mm, ink, {}});
    pen.shape({to_mm, neck + side, neck - side}, {}, ink);
}

void draw_check_bar(PagePen& pen, Vec2 from_mm, double length_mm) {
    constexpr double kHigh = 3.0;
    const Stroke edge{0.2, kBlack, {}};
    const double tenth = length_mm / 10.0;
    for (int i = 0; i < 10; ++i) {
        pen.box(from_mm + Vec2{tenth * i, 1.0}, {tenth, kHigh - 1.0}, edge, i % 2 == 0 ? grey(0.0) : kWhite);
    }
    for (const double x : {0.0, length_mm}) {
        pen.line(from_mm + Vec2{x, -1.0}, from_mm + Vec2{x, kHigh + 1.0}, edge);
    }
}

} // namespace lanternleaf
