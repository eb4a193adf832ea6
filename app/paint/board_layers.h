// The layers of the card view, lowest first. For paint/board*.cpp and the close-up only: everyone else calls
// draw_board() or draw_lens().
#pragma once

#include "paint/board.h"

#include <span>
#include <vector>

namespace lanternleaf::layers {

/// All that a layer needs, so that each is one call.
struct Canvas {
    Pen& pen;
    const Theme& theme;
    const BoardView& view;
    const Viewport& at;
    const BoardLook& look;

    [[nodiscard]] float px(double mm, float least = 0.0f) const { return at.px(mm, least); }

    [[nodiscard]] Point to(Vec2 mm) const { return at.to_px(mm); }

    [[nodiscard]] std::vector<Point> to(std::span<const Vec2> mm) const;
};

// board.cpp
void paper(const Canvas& on);
void ruler(const Canvas& on);
void foam(const Canvas& on);
// board_tape.cpp
void strip(const Canvas& on, const StripView& strip);
void strip_later(const Canvas& on, const StripView& strip);
void patch(const Canvas& on, const PatchView& patch);
void joint(const Canvas& on, const JointView& joint);
// board_parts.cpp
void holder(const Canvas& on);
void halo(const Canvas& on, const PartView& part);
void part(const Canvas& on, const PartView& part);
void pill(const Canvas& on, const PartView& part);
// board_marks.cpp
void now_halo(const Canvas& on);
void now_run(const Canvas& on);
void now_points(const Canvas& on);
void marks(const Canvas& on);

// board_shapes.cpp
/// A centre line moved sideways by `by` points (to the right of travel when positive), corners mitred.
[[nodiscard]] std::vector<Point> beside(std::span<const Point> path, float by);
/// The outline of a thick line with round ends and corners, as one polygon: so that see-through colour has no
/// seams.
[[nodiscard]] std::vector<Point> band(std::span<const Point> path, float half);
/// Parallel lines at 45 degrees inside a convex outline.
void hatch(Pen& pen, std::span<const Point> outline, float pitch, Colour colour, float width);
void plus_sign(Pen& pen, Point at, float arm, Colour colour, float width);
void minus_sign(Pen& pen, Point at, float arm, Colour colour, float width);
[[nodiscard]] Colour side_edge(const Theme& theme, Side side);
[[nodiscard]] Colour side_sign(const Theme& theme, Side side);

} // namespace lanternleaf::layers
