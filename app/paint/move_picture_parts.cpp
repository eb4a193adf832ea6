// Pictures of moves that measure, mark and place parts, and of the cell.
#include "paint/move_picture_frames.h"

#include "paint/curve.h"

namespace lanternleaf::frames {

namespace {

constexpr double kPartScale = 0.098; ///< of a millimetre on the stage: a part fills the frame

/// Two strips under a part that lies `deg`: its pads 5 mm either side of the middle.
void two_strips(PictureStage& on, double deg) {
    on.turn(deg, false);
    const double off = 5.0 * kPartScale;
    on.tape(-off, -kFar, -off, kFar, Side::negative, 1.0f);
    on.tape(off, -kFar, off, kFar, Side::positive, 1.0f);
    for (const double y : {-0.78, 0.78}) {
        on.sign(-off, y, Side::negative);
        on.sign(off, y, Side::positive);
    }
    on.turn(0, false);
}

void part(PictureStage& on, double x, double y) {
    const MovePictureSpec& spec = on.spec();
    if (spec.kind == MoveKind::place_resistor) {
        on.resistor(x, y, spec.led_turn_deg, kPartScale);
    } else {
        on.led(x, y, spec.led_turn_deg, kPartScale, false);
    }
}

/// Side view of the flap holder: table, bed, cell, flap at an angle.
void flap_side(PictureStage& on, double open_deg, bool cell) {
    Pen& pen = on.pen();
    const Theme& theme = on.theme();
    const Colour ink = theme.ink;
    pen.line(on.to(-kFar, 0.52), on.to(kFar, 0.52), ink, 3.0f);
    if (cell) {
        const Point a = on.to(-0.52, 0.24);
        const Rect body{a.x, a.y, on.px(0.92), on.px(0.24)};
        pen.fill(body, theme.ag_hi, 4);
        pen.outline(body, ink, 2.0f, 4);
    }
    // The flap rises from its hinge at the right over the cell's edge; its inner face carries the tape.
    const Vec2 over{0.48, 0.17};
    const Vec2 end = over + turned({-1.20, 0.0}, open_deg);
    const Vec2 lift = turned({0.0, 0.05}, open_deg);
    const Vec2 tape_from = over + turned({-0.06, 0.0}, open_deg) + lift;
    const Vec2 tape_to = over + turned({-1.04, 0.0}, open_deg) + lift;
    pen.line(on.to(-0.50, 0.50), on.to(0.36, 0.50), theme.night ? theme.edge : theme.minus, 4.0f);
    pen.line(on.to(tape_from.x, tape_from.y), on.to(tape_to.x, tape_to.y), theme.plus, 5.0f);
    const Point flap[] = {on.to(0.72, 0.51), on.to(over.x, over.y), on.to(end.x, end.y)};
    pen.stroke(flap, ink, 3.0f, false, true);
}

} // namespace

void measure(PictureStage& on, const Beat& beat) {
    on.sheet_corner();
    const double x = 0.34;
    const double y = 0.30;
    const Theme& theme = on.theme();
    on.disc(x, y, 0.10, false);
    on.pen().line(on.to(x - 0.18, y), on.to(x + 0.18, y), theme.ink, 2.0f);
    on.pen().line(on.to(x, y - 0.18), on.to(x, y + 0.18), theme.ink, 2.0f);
    if (beat.frame == 0) {
        on.ruler(-0.62, y - 0.22, 1.7, false);
        on.straight_arrow(-0.60, y, x - 0.14, y, true);
        on.label(-0.14, y + 0.24, on.spec().from_left, theme.ink);
    } else {
        on.ruler(x - 0.22, -0.62, 1.7, true);
        on.straight_arrow(x, -0.60, x, y - 0.14, true);
        on.label(x + 0.42, -0.14, on.spec().from_top, theme.ink);
    }
}

void mark_pad(PictureStage& on, const Beat& beat) {
    on.led(0, 0, on.spec().led_turn_deg, kPartScale, true);
    const Vec2 pad = turned({(beat.frame == 0 ? -4.6 : 4.6) * kPartScale, 0}, on.spec().led_turn_deg);
    on.pen().ring(on.to(pad.x, pad.y), on.px(0.24), on.theme().lamp, 4.0f);
    on.pencil(pad.x + 0.10, pad.y + 0.02 + 0.04 * beat.swing, 35.0);
}

void place_part(PictureStage& on, const Beat& beat) {
    const MovePictureSpec& spec = on.spec();
    const bool resistor = spec.kind == MoveKind::place_resistor;
    const int frame = resistor ? beat.frame + 1 : beat.frame;
    if (frame == 0) {
        on.led(0, 0, spec.led_turn_deg, kPartScale * 1.25, false);
        for (const double way : {-1.0, 1.0}) {
            const Vec2 end = turned({way * 0.60, 0}, spec.led_turn_deg);
            on.pen().ring(on.to(end.x, end.y), on.px(0.24), on.theme().lamp, 4.0f);
        }
        return;
    }
    two_strips(on, spec.led_turn_deg);
    if (frame == 1) {
        const double up = -0.30 - 0.06 * beat.swing;
        if (!resistor) {
            on.led(0, 0, spec.led_turn_deg, kPartScale, true);
        }
        on.turn(0, false);
        part(on, 0.10, up);
        on.straight_arrow(0.92, -0.40, 0.92, 0.10);
        return;
    }
    part(on, 0, 0);
    for (const double way : {-1.0, 1.0}) {
        const Vec2 end = turned({way * 5.0 * kPartScale, 0}, spec.led_turn_deg);
        if (way > 0) {
            on.finger(end.x + 0.04, end.y + 0.05 * beat.swing, 48.0);
        } else {
            on.pen().ring(on.to(end.x, end.y), on.px(0.24), on.theme().lamp, 4.0f);
        }
    }
}

void cell_in(PictureStage& on, const Beat& beat) {
    if (beat.frame == 0) {
        on.cell(0, 0, 0.72, on.spec().plus_up);
        return;
    }
    on.disc(-0.18, 0.12, 0.66, true);
    on.tape(-0.18, 0.12, -0.18, -kFar, Side::negative, 1.0f);
    on.disc(-0.18, 0.12, 0.66, true);
    on.cell(0.20 - 0.10 * beat.go, 0.12, 0.60, on.spec().plus_up);
    on.finger(0.62 - 0.10 * beat.go, 0.22, 24.0);
    on.straight_arrow(0.62, -0.66, 0.10, -0.66);
}

void flap_way(PictureStage& on, const Beat& beat) {
    // Seen from above: bed and flap, the hinge between.
    on.turn(on.spec().flap_turn_deg - 90.0, false);
    Pen& pen = on.pen();
    const Theme& theme = on.theme();
    const auto box = [&](double top, double bottom, bool dashed) {
        const Point outline[] = {on.to(-0.46, top), on.to(0.46, top), on.to(0.46, bottom),
                                 on.to(-0.46, bottom)};
        if (dashed) {
            pen.dashed(outline, theme.edge, 1.8f, {5, 4}, 0, true);
        } else {
            pen.fill_convex(outline, theme.panel);
            pen.stroke(outline, theme.ink, 2.2f, true);
        }
    };
    box(-0.86, 0.0, false);
    on.disc(0, -0.44, 0.34, true);
    if (beat.frame == 0) {
        box(0.0, 0.86, false);
        on.disc(0, 0.44, 0.34, false);
        on.dashed_line(-0.46, 0, 0.46, 0);
        on.curved_arrow(0.62, -0.40, 0.98, 0.0, 0.62, 0.42);
    } else {
        box(0.0, 0.86, true);
        box(-0.84, 0.0, false);
        on.dashed_line(-0.46, 0, 0.46, 0);
        on.curved_arrow(0.62, 0.42, 0.98, 0.0, 0.62, -0.40);
    }
}

void light_test(PictureStage& on, const Beat& beat) {
    if (beat.frame == 0) {
        flap_side(on, 14.0 - 14.0 * beat.go, true);
        on.finger(-0.24, -0.12 + 0.26 * beat.go, -58.0);
        on.straight_arrow(-0.62, -0.62, -0.62, -0.16);
        return;
    }
    on.led(-0.42, -0.30, 90, 0.06, false, static_cast<float>(0.9 * beat.go));
    on.led(0.42, -0.30, 90, 0.06, false, static_cast<float>(0.9 * beat.go));
    on.led(0.0, 0.42, 0, 0.06, false, static_cast<float>(0.9 * beat.go));
}

} // namespace lanternleaf::frames
