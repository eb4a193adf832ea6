// PictureStage: one small frame of a move picture, with the things that stand in it: tape, tools, hands'
// arrows. Exists so that each picture is a dozen lines of "what is where". Frame coordinates: (0,0) in the
// middle, x to the right, y down, 1 = half the frame's height; turned and mirrored with the tape's way on the
// card.
#pragma once

#include "paint/pen.h"
#include "paint/theme.h"
#include "view/move_picture_spec.h"

#include <span>
#include <string_view>
#include <vector>

namespace lanternleaf {

/// Masks what sticks out of a frame's rounded corners and draws its line.
void close_frame(Pen& pen, const Rect& frame, float radius, Colour around, Colour line);

class PictureStage {
public:
    PictureStage(Pen& pen, const Theme& theme, const Rect& frame, const MovePictureSpec& spec);

    /// Turns all that follows: by `deg` clockwise, mirrored first when asked.
    void turn(double deg, bool mirror);
    [[nodiscard]] Point to(double x, double y) const;

    [[nodiscard]] float px(double size) const { return static_cast<float>(size) * scale_; }

    // Tape: a piece from (x1,y1) to (x2,y2), `kTape` wide, in the colours of the move's tape and side.
    void tape(double x1, double y1, double x2, double y2) { tape(x1, y1, x2, y2, spec_.side, 1.0f); }

    void tape(double x1, double y1, double x2, double y2, Side side, float opacity);
    /// Its sticky side: dotted backing, as any quad.
    void sticky(Point a, Point b, Point c, Point d);
    /// A lifted piece: any quad, in tape colours, edges along a-b and d-c.
    void lifted(Point a, Point b, Point c, Point d);
    void crease(double x1, double y1, double x2, double y2);
    void sign(double x, double y); ///< + or -, upright
    void sign(double x, double y, Side side);
    void later(double x1, double y1, double x2, double y2); ///< dashed outline of tape to come

    // What hands do.
    void arrow(std::span<const Point> path);
    void straight_arrow(double x1, double y1, double x2, double y2, bool both_ways = false);
    void curved_arrow(double x1, double y1, double cx, double cy, double x2, double y2);
    void bone_folder(double x, double y, double deg, double shift = 0.0);
    void finger(double x, double y, double deg);
    void scissors(double x, double y, double deg, double open);
    void pencil(double x, double y, double deg);
    void dashed_line(double x1, double y1, double x2, double y2);
    void label(double x, double y, std::string_view text, Colour colour, bool bold = true);

    // Things.
    void sheet_corner();
    void ruler(double x, double y, double length, bool upright);
    void patch(double x, double y, double size, bool ghost = false);
    void disc(double x, double y, double radius, bool dashed);
    void cell(double x, double y, double radius, bool plus);
    void led(double x, double y, double deg, double scale, bool marks_only, float glow = 0);
    void resistor(double x, double y, double deg, double scale);
    void bulb_glow(double x, double y, double radius, float strength);

    Pen& pen() { return pen_; }

    [[nodiscard]] const Theme& theme() const { return theme_; }

    [[nodiscard]] const MovePictureSpec& spec() const { return spec_; }

    [[nodiscard]] const Rect& frame() const { return frame_; }

    static constexpr double kTape = 0.62; ///< width of tape: 31 % of the frame's height

private:
    Pen& pen_;
    const Theme& theme_;
    const Rect frame_;
    const MovePictureSpec& spec_;
    float scale_ = 1;
    double turn_deg_ = 0;
    bool mirror_ = false;
};

} // namespace lanternleaf
