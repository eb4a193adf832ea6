#include "sheets/legend.h"

#include "sheets/paper.h"
#include "sheets/plan_drawing.h"
#include "sheets/symbols.h"

namespace lanternleaf {

namespace {

constexpr double kLegendRow_mm = 7.6;
constexpr Vec2 kSample_mm{18.0, 5.0};

void draw_tape(PagePen& pen, Vec2 corner, Side side, const char* name) {
    const SideLook look = look_of(side);
    pen.box(corner, kSample_mm, look.edge, look.fill);
    draw_sign(pen, corner + Vec2{4.0, 2.5}, look.sign, 1.05, 0.4);
    pen.text(corner + Vec2{12.0, 3.7}, name, 3.2, true, TextAlign::centre);
}

void draw_sample(PagePen& pen, Vec2 corner, int row) {
    const Vec2 far = corner + kSample_mm;
    const double middle = corner.y + kSample_mm.y / 2.0;
    switch (row) {
    case 0:
        draw_tape(pen, corner, Side::negative, "N1");
        break;
    case 1:
        draw_tape(pen, corner, Side::positive, "S1");
        break;
    case 2:
        pen.box(corner, {5, 5}, Stroke{0.35, kBlack, {}}, kWhite);
        draw_sign(pen, corner + Vec2{2.5, 2.5}, '-', 1.3, 0.5);
        pen.box(corner + Vec2{13, 0}, {5, 5}, Stroke{0.35, kBlack, {}}, kWhite);
        draw_sign(pen, corner + Vec2{15.5, 2.5}, '+', 1.3, 0.5);
        break;
    case 3:
        pen.box(corner, kSample_mm, Stroke{0.3, grey(0.2), {}}, grey(0.97));
        draw_hatch(pen, {corner, {far.x, corner.y}, far, {corner.x, far.y}}, 1.5, {0.12, grey(0.5), {}});
        break;
    case 4:
        pen.box(corner, {8, 5}, {}, grey(0.80));
        pen.line(corner, corner + Vec2{8, 5}, {0.2, kBlack, {}});
        pen.box(corner + Vec2{11, 0}, {5, 5}, Stroke{0.3, kBlack, {0.5, 0.6}}, {});
        break;
    case 5:
        pen.line({corner.x, middle}, {far.x, middle}, {0.3, grey(0.15), {5.0, 1.5, 0.8, 1.5}});
        break;
    default:
        for (double y = corner.y + 0.9; y < far.y; y += 1.7) {
            for (double x = corner.x + 0.9; x < corner.x + 8.0; x += 1.7) {
                pen.disc({x, y}, 0.2, {}, grey(0.55));
            }
        }
        draw_hatch(pen, {corner + Vec2{10, 0}, {far.x, corner.y}, far, {corner.x + 10, far.y}}, 3.0,
                   {0.12, grey(0.55), {}});
        pen.box(corner + Vec2{10, 0}, {8, 5}, Stroke{0.25, grey(0.25), {1.0, 0.8}}, {});
        break;
    }
}

} // namespace

void draw_legend(PagePen& pen, Vec2 corner_mm, const Lettering& lettering, const Words& words) {
    static constexpr const char* kKeys[] = {
        "sheets.legend_negative", "sheets.legend_positive", "sheets.legend_pads", "sheets.legend_patch",
        "sheets.legend_fold",     "sheets.legend_crease",   "sheets.legend_foam",
    };
    for (int row = 0; row < 7; ++row) {
        const Vec2 at = corner_mm + Vec2{0, kLegendRow_mm * row};
        draw_sample(pen, at, row);
        pen.text(at + Vec2{kSample_mm.x + 4.0, 3.8},
                 lettering.fitted(words(kKeys[row]), kBody_mm, kLegendWidth_mm - kSample_mm.x - 4.0),
                 kBody_mm);
    }
}

} // namespace lanternleaf
