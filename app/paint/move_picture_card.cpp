// Pictures of moves with the card as a whole: backing, pressing, foam, closing, the label.
#include "paint/move_picture_frames.h"

#include "paint/icons.h"

namespace lanternleaf::frames {

namespace {

void bar(PictureStage& on, double x, double y, double w, double h, Colour fill, Colour line) {
    const Point a = on.to(x, y);
    const Rect r{a.x, a.y, on.px(w), on.px(h)};
    on.pen().fill(r, fill, 2);
    on.pen().outline(r, line, 1.8f, 2);
}

Colour foam_colour(const Theme& theme) {
    return mixed(theme.sheet, theme.patch, 0.75f);
}

/// The card from its edge: back, foam at both ends, holder with cell, cover.
void card_side(PictureStage& on, double cover_up, bool pressed) {
    const Theme& theme = on.theme();
    Pen& pen = on.pen();
    pen.line(on.to(-0.95, 0.58), on.to(0.95, 0.58), theme.ink, 3.4f, true);
    const double sag = pressed ? 0.16 : 0.0;
    for (const double x : {-0.92, 0.66}) {
        for (int layer = 0; layer < 3; ++layer) {
            bar(on, x, 0.16 + 0.13 * layer, 0.26, 0.13, foam_colour(theme), theme.patch_ln);
        }
    }
    bar(on, -0.42, 0.40, 0.60, 0.17, theme.ag_hi, theme.night ? theme.minus : theme.ink);
    const Point cover[] = {on.to(-0.95, 0.13), on.to(-0.5, 0.13 + sag * 0.8), on.to(-0.12, 0.13 + sag * 1.45),
                           on.to(0.3, 0.13 + sag * 0.8), on.to(0.95, 0.13 - cover_up)};
    pen.stroke(cover, theme.ink, 3.4f, false, true);
    const Point flap[] = {on.to(-0.40, 0.36), on.to(0.24, 0.30 + sag * 0.45), on.to(0.36, 0.55)};
    pen.stroke(flap, theme.plus, 2.6f, false, true);
}

} // namespace

void peel(PictureStage& on, const Beat& beat) {
    const double lift = beat.frame == 0 ? 0.30 : 0.85;
    const Theme& theme = on.theme();
    bar(on, -0.78, -0.40, 1.56, 0.98, theme.ag_hi, theme.ink);
    on.sticky(on.to(-0.78 + lift, -0.40), on.to(0.78, -0.40), on.to(0.78, 0.58), on.to(-0.78, 0.58));
    const double up = 0.06 * beat.swing;
    on.sticky(on.to(-0.78 + lift, -0.40), on.to(-0.78 + 2 * lift, -0.40 + lift * 0.8 + up),
              on.to(-0.78 + lift * 1.2, 0.30 + up), on.to(-0.78, 0.58));
    on.curved_arrow(-0.70, -0.66, -0.10, -0.92, 0.40, -0.56);
}

void press(PictureStage& on, const Beat& beat) {
    const Theme& theme = on.theme();
    const MovePictureSpec& spec = on.spec();
    if (!spec.id.empty() && spec.id[0] == 'P') {
        on.patch(0, 0.1, 1.0);
    } else {
        const Point outline[] = {on.to(-0.62, -0.50), on.to(0.62, -0.50), on.to(0.62, 0.66),
                                 on.to(-0.62, 0.66)};
        on.pen().fill_convex(outline, theme.panel);
        on.pen().stroke(outline, theme.ink, 2.2f, true);
        on.disc(0, 0.08, 0.44, true);
    }
    if (beat.frame == 0) {
        on.finger(0, 0.06 + 0.05 * beat.swing, 52.0);
        on.straight_arrow(-0.30, -0.86, -0.30, -0.30);
    } else {
        on.bone_folder(-0.10 + 0.16 * beat.swing, 0.02, 46.0, 0.0);
        on.straight_arrow(-0.50, -0.76, 0.40, -0.76, true);
    }
}

void foam(PictureStage& on, const Beat& beat) {
    const Theme& theme = on.theme();
    if (beat.frame == 0) {
        bar(on, -kFar, -0.16, 1.76, 0.34, foam_colour(theme), theme.patch_ln);
        bar(on, 0.16, -0.16, kFar, 0.34, foam_colour(theme), theme.patch_ln);
        on.dashed_line(0.11, -0.50, 0.11, 0.52);
        on.scissors(0.11, 0.40, 90, 14.0 + 6.0 * beat.swing);
        return;
    }
    const int layers = std::min(4, std::max(1, on.spec().layers));
    const double thick = 0.24;
    on.pen().line(on.to(-0.95, 0.66), on.to(0.95, 0.66), theme.ink, 3.4f, true);
    for (int i = 0; i < layers; ++i) {
        const bool top = i + 1 == layers;
        const double y = 0.64 - thick * (i + 1) - (top ? 0.12 + 0.08 * (1 - beat.go) : 0.0);
        bar(on, -0.60, y, 1.2, thick, foam_colour(theme), theme.patch_ln);
    }
    on.straight_arrow(0.82, -0.56, 0.82, -0.06);
}

void close(PictureStage& on, const Beat& beat) {
    const Theme& theme = on.theme();
    const bool pressed = beat.frame == 1;
    if (pressed) {
        on.bulb_glow(0.40, 0.34, 0.7, static_cast<float>(0.55 + 0.35 * beat.go));
    }
    card_side(on, 0.0, pressed);
    if (pressed) {
        on.finger(-0.10, 0.10, -62.0);
    } else {
        on.straight_arrow(-0.12, -0.10, -0.12, -0.62);
    }
    draw_icon(on.pen(), pressed ? Icon::Bulb : Icon::BulbOff, on.to(0.84, -0.56), on.px(0.48), theme.ink);
}

void label(PictureStage& on, const Beat& beat) {
    const Theme& theme = on.theme();
    const Point outline[] = {on.to(-0.80, -0.50), on.to(0.62, -0.50), on.to(0.62, 0.56), on.to(-0.80, 0.56)};
    on.pen().fill_convex(outline, theme.panel);
    on.pen().stroke(outline, theme.ink, 2.2f, true);
    draw_icon(on.pen(), Icon::Caution, on.to(-0.50, -0.18), on.px(0.40), theme.plum);
    for (const double y : {-0.24, -0.06, 0.16, 0.34}) {
        const double from = y < 0.1 ? -0.18 : -0.62;
        on.pen().line(on.to(from, y), on.to(y > 0.3 ? 0.0 : 0.44, y), theme.edge, 2.4f, true);
    }
    on.pencil(0.02 + 0.06 * beat.swing, 0.36, -42.0);
}

void adult(PictureStage& on, const Beat&) {
    const Theme& theme = on.theme();
    on.cell(-0.50, 0.10, 0.42, true);
    draw_icon(on.pen(), Icon::Cellsafe, on.to(0.42, 0.02), on.px(0.96), theme.plum);
}

} // namespace lanternleaf::frames
