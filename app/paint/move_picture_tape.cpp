// Pictures of moves that lay tape. Drawn for tape that comes from below and turns right; turned for other
// ways.
#include "paint/move_picture_frames.h"

namespace lanternleaf::frames {

namespace {

constexpr double kHalf = PictureStage::kTape / 2;

/// Turns the stage so that "up" is the way the tape runs.
void face(PictureStage& on) {
    on.turn(on.spec().heading_deg - 270.0, on.spec().kind == MoveKind::fold && !on.spec().turn_right);
}

Side other(Side side) {
    return side == Side::positive ? Side::negative : Side::positive;
}

/// Rubbing with the bone folder along the tape.
void rub(PictureStage& on, double x, double y, const Beat& beat) {
    on.straight_arrow(x + 0.62, y + 0.34, x + 0.62, y - 0.34, true);
    const double tool = on.spec().heading_deg - 270.0 + 48.0;
    on.bone_folder(x - 0.02, y + 0.02 + 0.16 * beat.swing, tool, 0.0);
}

} // namespace

void fold(PictureStage& on, const Beat& beat) {
    face(on);
    const double x = -0.16; // middle of the strip that comes up
    const double top = -0.55;
    if (beat.frame == 0) {
        on.tape(x, kFar, x, top);
        on.crease(x - kHalf, top, x + kHalf, top);
        const double end = 0.22 + 0.10 * beat.swing;
        on.sticky(on.to(x - kHalf, top), on.to(x + kHalf, top), on.to(x + kHalf + 0.12, end + 0.12),
                  on.to(x - kHalf + 0.10, end + 0.12));
        on.sign(x, 0.82);
        on.curved_arrow(0.28, -0.66, 0.78, -0.52, 0.62, 0.10);
        return;
    }
    const double low = top + PictureStage::kTape;
    if (beat.frame == 1) {
        on.tape(x, kFar, x, top);
        // The folded corner's other half peeps out behind.
        on.sticky(on.to(x - kHalf, top), on.to(x + 0.28, top), on.to(x + 0.28, top + 0.10),
                  on.to(x - kHalf, top + 0.03));
        const double drop = 0.10 + 0.07 * beat.swing;
        on.lifted(on.to(x - kHalf, top), on.to(0.94, top + 0.16 + drop), on.to(0.88, low + 0.18 + drop),
                  on.to(x + kHalf, low));
        on.crease(x - kHalf, top, x + kHalf, low);
        on.sign(0.42, top + 0.46);
        on.sign(x, 0.82);
        on.curved_arrow(0.05, 0.80, 0.55, 0.86, 0.74, 0.52);
        return;
    }
    on.tape(x, kFar, x, top);
    on.tape(x - kHalf, (top + low) / 2, kFar, (top + low) / 2);
    on.tape(x, kFar, x, low - 0.045); // the inner edge of the corner belongs to the strip that came up
    on.crease(x - kHalf, top, x + kHalf, low);
    on.sign(0.80, (top + low) / 2);
    on.sign(x, 0.82);
    const double tool = on.spec().heading_deg - 270.0;
    on.bone_folder(x + 0.20 + 0.08 * beat.swing, top + 0.30 + 0.08 * beat.swing,
                   (on.spec().turn_right ? 46.0 : 134.0) + tool, 0.0);
    on.straight_arrow(0.48, 0.14, 0.86, 0.50, true);
}

void start(PictureStage& on, const Beat& beat) {
    face(on);
    const bool holder = on.spec().on_flap || on.spec().on_bed;
    if (beat.frame == 0) {
        // Backing peeled from the first centimetres.
        on.tape(0, kFar, 0, -0.30);
        on.sticky(on.to(-kHalf, 0.52), on.to(kHalf, 0.52), on.to(kHalf + 0.44, 1.02 - 0.06 * beat.swing),
                  on.to(-kHalf + 0.40, 1.14));
        on.sign(0, 0.12);
        on.curved_arrow(0.56, 0.20, 0.92, 0.34, 0.78, 0.72);
        return;
    }
    if (holder) {
        on.disc(0, 0.22, 0.82, on.spec().on_bed);
    } else {
        on.tape(-kFar, 0.46, kFar, 0.46, on.spec().side, 0.55f);
    }
    if (beat.frame == 1) {
        on.later(0, 0.52, 0, -kFar);
        const Point at = on.to(0, 0.22);
        on.pen().disc(at, 9, on.theme().lamp);
        on.pen().ring(at, 9, on.theme().on_lamp, 2.6f);
        on.pen().disc(at, 3.4f, on.theme().on_lamp);
        on.straight_arrow(0, -0.16, 0, -0.72);
        return;
    }
    on.tape(0, 0.52, 0, -kFar);
    on.sign(0, -0.70);
    on.finger(0.0, 0.10 + 0.05 * beat.swing, on.spec().heading_deg - 270.0 + 50.0);
}

void run(PictureStage& on, const Beat& beat) {
    face(on);
    if (beat.frame == 0) {
        on.tape(0, kFar, 0, 0.42);
        on.later(0, 0.42, 0, -kFar);
        on.lifted(on.to(-kHalf, 0.42), on.to(-kHalf + 0.30, -0.66), on.to(kHalf + 0.34, -0.58),
                  on.to(kHalf, 0.42));
        on.sign(0, 0.76);
        on.curved_arrow(0.80, -0.30, 0.92, 0.08, 0.62, 0.36);
        return;
    }
    if (beat.frame == 1) {
        const double end = -0.10 - 0.30 * beat.go;
        on.later(0, end, 0, -kFar);
        on.tape(0, kFar, 0, end);
        on.sign(0, 0.72);
        on.straight_arrow(0.62, 0.55, 0.62, -0.60);
        on.finger(0.0, end + 0.16, on.spec().heading_deg - 270.0 + 128.0);
        return;
    }
    on.tape(0, kFar, 0, -kFar);
    on.sign(0, 0.78);
    on.sign(0, -0.78);
    rub(on, 0, 0, beat);
}

void joint(PictureStage& on, const Beat& beat) {
    face(on);
    on.tape(-kFar, -0.26, kFar, -0.26, on.spec().side, 1.0f);
    on.sign(-0.76, -0.26);
    if (beat.frame == 0) {
        const double up = 0.05 * beat.swing;
        on.lifted(on.to(-kHalf, kFar), on.to(-kHalf + 0.02, -0.50 - up), on.to(kHalf + 0.02, -0.50 - up),
                  on.to(kHalf, kFar));
        on.sign(0, 0.56);
        on.dashed_line(-0.52, -0.26 - kHalf, -0.52, -0.26 + kHalf);
        on.straight_arrow(0.62, 0.80, 0.62, 0.24);
        return;
    }
    on.tape(0, kFar, 0, -0.26 - kHalf);
    const Point c = on.to(0, -0.26);
    const float side = on.px(PictureStage::kTape);
    on.pen().dashed_outline(around(c, side, side),
                            on.spec().side == Side::positive ? on.theme().plus_dk : on.theme().minus, 1.6f, 0,
                            5, 4);
    on.sign(0, 0.66);
    rub(on, 0.0, -0.20, beat);
}

void cut(PictureStage& on, const Beat& beat) {
    face(on);
    on.tape(0, kFar, 0, beat.frame == 0 ? -kFar : -0.12);
    on.sign(0, 0.62);
    if (beat.frame == 0) {
        on.dashed_line(-0.58, -0.12, 0.58, -0.12);
        on.pencil(0.56, -0.12 + 0.02 * beat.swing, -38.0 + on.spec().heading_deg - 270.0);
        return;
    }
    on.tape(0.05, -0.42, 0.16, -kFar);
    on.dashed_line(-0.58, -0.12, 0.20, -0.12);
    on.scissors(0.34, -0.14, on.spec().heading_deg - 270.0, 13.0 + 6.0 * beat.swing);
}

void tail(PictureStage& on, const Beat& beat) {
    face(on);
    on.tape(-kFar, -0.30, kFar, -0.30, other(on.spec().side), 1.0f);
    on.sign(-0.70, -0.30, other(on.spec().side));
    on.patch(0, -0.30, 1.0, true);
    on.tape(0, kFar, 0, 0.42);
    on.sign(0, 0.80);
    if (beat.frame == 0) {
        on.dashed_line(-0.60, 0.42, 0.60, 0.42);
        on.straight_arrow(0.66, 0.95, 0.66, 0.50);
        return;
    }
    const double sway = 0.06 * beat.swing;
    on.lifted(on.to(-kHalf, 0.42), on.to(-0.02 + sway, -0.02), on.to(0.60 + sway, 0.10), on.to(kHalf, 0.42));
    on.lifted(on.to(-0.02 + sway, -0.02), on.to(0.34 + sway, -0.62), on.to(0.92 + sway, -0.42),
              on.to(0.60 + sway, 0.10));
}

void patch(PictureStage& on, const Beat& beat) {
    on.tape(-kFar, 0, kFar, 0, Side::negative, 1.0f);
    on.sign(-0.86, 0, Side::negative);
    on.sign(0.86, 0, Side::negative);
    const double size = 1.16;
    if (beat.frame == 0) {
        on.patch(0, 0, size, true);
        on.patch(0.12, -0.30 - 0.06 * beat.swing, size);
        on.straight_arrow(0.86, -0.56, 0.86, -0.20);
        return;
    }
    on.patch(0, 0, size);
    if (beat.frame == 1) {
        on.straight_arrow(0, -0.96, 0, -0.62);
        on.straight_arrow(0, 0.96, 0, 0.62);
        on.dashed_line(0, -0.58, 0, 0.58);
        return;
    }
    on.bone_folder(-0.05 + 0.14 * beat.swing, 0.02, 46.0, 0.0);
    on.straight_arrow(-0.40, -0.80, 0.40, -0.80, true);
}

void carry(PictureStage& on, const Beat& beat) {
    face(on);
    on.tape(-kFar, -0.10, kFar, -0.10, other(on.spec().side), 1.0f);
    on.sign(-0.88, -0.10, other(on.spec().side));
    on.patch(0, -0.10, 1.08);
    if (beat.frame == 0) {
        on.tape(0, kFar, 0, 0.60);
        on.lifted(on.to(-kHalf, 0.60), on.to(-0.02, 0.16), on.to(0.58, 0.26), on.to(kHalf, 0.60));
        on.sign(0, 0.82);
        on.curved_arrow(0.86, 0.56, 1.0, 0.0, 0.66, -0.42);
        return;
    }
    if (beat.frame == 1) {
        on.tape(0, kFar, 0, 0.30);
        const double up = -0.62 - 0.08 * beat.swing;
        on.lifted(on.to(-kHalf, 0.30), on.to(-kHalf + 0.10, up), on.to(kHalf + 0.12, up + 0.06),
                  on.to(kHalf, 0.30));
        on.sign(0, 0.70);
        on.straight_arrow(0.70, 0.76, 0.70, 0.52);
        return;
    }
    on.tape(0, kFar, 0, -kFar);
    on.sign(0, 0.80);
    on.sign(0, -0.80);
    rub(on, 0, -0.06, beat);
}

} // namespace lanternleaf::frames
