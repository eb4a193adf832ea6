// Pen: everything the app can put on the screen: fills, strokes, dashes, shadows, halos, text, clips.
// Exists because the argument order of the drawing library's strokes differs between its versions, and
// because its thick polylines have uneven corners: only pen*.cpp calls them. All lengths are points, all
// angles radians, clockwise from the right; shapes are antialiased at the device's pixels.
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "host/point.h"
#include "paint/fonts.h"
#include "paint/theme.h"

struct ImDrawList;

namespace lanternleaf {

/// Which corners of a rectangle are rounded; add them up.
enum Corners : unsigned {
    kCornerTopLeft = 1,
    kCornerTopRight = 2,
    kCornerBottomLeft = 4,
    kCornerBottomRight = 8,
    kCornersTop = 3,
    kCornersBottom = 12,
    kCornersLeft = 5,
    kCornersRight = 10,
    kCornersAll = 15,
};

enum class Align { Left, Centre, Right };

/// How high something lies above the table: panels are raised a little, sheets float.
enum class Lift { Panel, Sheet };

/// A piece of text as it went on the screen, for the rules that tests hold every screen to.
struct DrawnText {
    std::string text;
    Rect at;   ///< from its left to its right end, as high as its capitals
    Rect box;  ///< the box it was to stand in, where it was given one; else the same
    Rect clip; ///< what can be seen of the page there
};

inline constexpr float kPi = 3.14159265358979f;

class Pen {
public:
    /// Draws into one list. px_per_pt sets the width of the antialiased edge.
    Pen(ImDrawList& list, const Fonts& fonts, float px_per_pt);

    /// Where all text is noted too, in the order it is drawn; null: nowhere.
    std::vector<DrawnText>* notes = nullptr;

    // Rectangles and circles
    // ------------------------------------------------------------------------------------
    void fill(const Rect& r, Colour colour, float radius = 0, unsigned corners = kCornersAll);
    /// A line of the given width along the inside of the rectangle's edge.
    void outline(const Rect& r, Colour colour, float width, float radius = 0, unsigned corners = kCornersAll);
    void dashed_outline(const Rect& r, Colour colour, float width, float radius, float on, float off);
    void disc(Point centre, float radius, Colour colour);
    /// The line lies inside the radius.
    void ring(Point centre, float radius, Colour colour, float width);
    void dashed_ring(Point centre, float radius, Colour colour, float width, float on, float off);
    void arc(Point centre, float radius, float from, float to, Colour colour, float width,
             bool round = false);

    // Lines
    // -----------------------------------------------------------------------------------------------------
    void line(Point a, Point b, Colour colour, float width, bool round = false);
    /// A polyline with round corners, and round ends if `round`.
    void stroke(std::span<const Point> points, Colour colour, float width, bool closed = false,
                bool round = false);
    /// Dashes along a polyline. `pattern` is on, off, on, off… in points; `phase` moves the pattern forwards.
    void dashed(std::span<const Point> points, Colour colour, float width,
                std::initializer_list<float> pattern, float phase = 0, bool closed = false);

    // Filled shapes
    // ---------------------------------------------------------------------------------------------
    void triangle(Point a, Point b, Point c, Colour colour);
    void quad(Point a, Point b, Point c, Point d, Colour colour);
    /// Corners in either direction; must be convex.
    void fill_convex(std::span<const Point> points, Colour colour);
    /// Any simple polygon. Slower; cut into triangles, edge softened with a hairline.
    void fill_polygon(std::span<const Point> points, Colour colour);
    /// Fills left to right or top to bottom from one colour to the other.
    void gradient(const Rect& r, Colour from, Colour to, bool downwards);
    /// A panel with its top right corner cut by `cut` and the turned corner lying in the cut.
    void turned_corner_panel(const Rect& r, Colour colour, Colour corner, float radius, float cut);

    // Light and shadow
    // ------------------------------------------------------------------------------------------
    void shadow(const Rect& r, float radius, Lift lift);
    /// Light round a centre, opacity `peak` (0..1) in the middle: 100 % at 0, 85 % at .16, 28 % at .45, 0
    /// at 1.
    void halo(Point centre, float radius, Colour colour, float peak);

    // Text
    // ------------------------------------------------------------------------------------------------------
    /// One line. `at` is the top of its line box (style.lead high) at its left, centre or right. Gives its
    /// width.
    float text(Point at, std::string_view text, TextStyle style, Colour colour, Align align = Align::Left);
    /// One line with its capitals in the vertical middle of the box.
    float text_in(const Rect& box, std::string_view text, TextStyle style, Colour colour,
                  Align align = Align::Centre);
    /// One line standing on a baseline.
    float text_on(Point baseline, std::string_view text, TextStyle style, Colour colour,
                  Align align = Align::Left);
    /// Wrapped text with `**bold**` spans, from the top of its first line. Gives its height.
    float paragraph(Point at, float max_width, std::string_view text, TextStyle style, Colour colour,
                    Align align = Align::Left);
    /// Lines wrapped before.
    void lines(Point at, std::span<const TextLine> lines, TextStyle style, Colour colour, Align align,
               float width);

    // Clipping
    // --------------------------------------------------------------------------------------------------
    /// What follows shows only inside the rectangle (and any clip around it), until pop_clip().
    void push_clip(const Rect& r);
    void pop_clip();
    [[nodiscard]] bool visible(const Rect& r) const;

    [[nodiscard]] const Fonts& fonts() const { return *fonts_; }

    [[nodiscard]] ImDrawList& list() { return *list_; }

    /// Moves a coordinate to the middle of a device pixel, for crisp hairlines.
    [[nodiscard]] float crisp(float v) const;

private:
    void smooth_run(std::span<const Point> points, Colour colour, float width, bool closed);

    ImDrawList* list_;
    const Fonts* fonts_;
    float px_per_pt_;
};

} // namespace lanternleaf
