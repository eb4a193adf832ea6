// Symbols: the small signs of the printed sheets, drawn from our own lines: plus and minus, hatch, tick box,
// warning triangle, registration cross, arrow. Exists so that every sheet draws them alike. Internal to
// sheets/.
#pragma once

#include "card/card.h"
#include "sheets/page.h"

namespace lanternleaf {

/// What the two sides are drawn with. Told apart by four cues: sign, label, line style, grey.
struct SideLook {
    Stroke edge;
    Ink fill;
    char sign; ///< '+', '-', or ' ' for links
};

[[nodiscard]] SideLook look_of(Side side);

/// Always upright.
void draw_sign(PagePen& pen, Vec2 at_mm, char sign, double arm_mm, double width_mm);
/// Parallel lines at 45 degrees within a simple polygon.
void draw_hatch(PagePen& pen, const std::vector<Vec2>& outline_mm, double pitch_mm, const Stroke& stroke);
void draw_tick_box(PagePen& pen, Vec2 corner_mm, double size_mm);
/// An equilateral triangle with round corners and an exclamation mark, standing on `foot_mm` (its middle).
void draw_warning_triangle(PagePen& pen, Vec2 foot_mm, double height_mm);
/// Centre exactly at `at_mm`.
void draw_registration(PagePen& pen, Vec2 at_mm);
/// A filled head whose tip is at `to_mm`, on a shaft from `from_mm`.
void draw_arrow(PagePen& pen, Vec2 from_mm, Vec2 to_mm, double width_mm, Ink ink);
/// A bar of alternating filled and open tenths with ticks at both ends; its length is `length_mm`, exactly
/// from the middle of one end tick to the middle of the other.
void draw_check_bar(PagePen& pen, Vec2 from_mm, double length_mm);

} // namespace lanternleaf
