// Page: one printed page as a list of marks in millimetres, before any file format.
// Exists so that the PDF and the tests see the same thing, and so that a drawing made once can be shifted,
// clipped and scaled onto several pages. Origin at the page's top-left corner, x right, y down.
#pragma once

#include "geometry/convex.h"
#include "geometry/vec2.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace lanternleaf {

/// Each part 0..1.
struct Ink {
    double red = 0.0;
    double green = 0.0;
    double blue = 0.0;
    friend bool operator==(const Ink&, const Ink&) = default;
};

[[nodiscard]] constexpr Ink grey(double lightness) {
    return {lightness, lightness, lightness};
}

inline constexpr Ink kBlack = grey(0.0);
inline constexpr Ink kWhite = grey(1.0);

/// A line's look. `dash_mm` alternates drawn and left out; empty is solid.
struct Stroke {
    double width_mm = 0.25;
    Ink ink = kBlack;
    std::vector<double> dash_mm{};
};

/// A chain of straight lines; `closed` joins the last point to the first. At least one of stroke and fill.
struct PathMark {
    std::vector<Vec2> points_mm;
    bool closed = false;
    std::optional<Stroke> stroke;
    std::optional<Ink> fill;
};

struct DiscMark {
    Vec2 at_mm;
    double radius_mm = 0.0;
    std::optional<Stroke> stroke;
    std::optional<Ink> fill;
};

enum class TextAlign { left, centre, right };

/// One line of text. `at_mm` is on the baseline; `size_mm` is the em.
struct TextMark {
    Vec2 at_mm;
    std::string text; ///< UTF-8, clean (see clean_text in lettering.h)
    double size_mm = 4.0;
    bool bold = false;
    TextAlign align = TextAlign::left;
    Ink ink = kBlack;
    double turn_deg = 0.0; ///< clockwise about at_mm
};

/// From here on marks show inside the box only, until the next ClipMark; without a box, everywhere.
struct ClipMark {
    std::optional<Box> box;
};

using PageMark = std::variant<PathMark, DiscMark, TextMark, ClipMark>;

struct Page {
    Vec2 size_mm;
    std::vector<PageMark> marks;
};

/// Appends marks with few words. Holds no state of its own.
class PagePen {
public:
    explicit PagePen(std::vector<PageMark>& marks) : marks_(marks) {}

    void line(Vec2 from_mm, Vec2 to_mm, const Stroke& stroke);
    void path(std::vector<Vec2> points_mm, const Stroke& stroke);
    void shape(std::vector<Vec2> points_mm, std::optional<Stroke> stroke, std::optional<Ink> fill);
    void convex(const Convex& shape, std::optional<Stroke> stroke, std::optional<Ink> fill);
    void box(Vec2 corner_mm, Vec2 size_mm, std::optional<Stroke> stroke, std::optional<Ink> fill);
    /// A rectangle with round corners.
    void round_box(Vec2 corner_mm, Vec2 size_mm, double radius_mm, std::optional<Stroke> stroke,
                   std::optional<Ink> fill);
    void disc(Vec2 at_mm, double radius_mm, std::optional<Stroke> stroke, std::optional<Ink> fill);
    void text(Vec2 at_mm, std::string text, double size_mm, bool bold = false,
              TextAlign align = TextAlign::left, Ink ink = kBlack);
    void clip(const Box& box);
    void clip_end();

private:
    std::vector<PageMark>& marks_;
};

/// From a drawing to a place on a page: mirrored left to right about x = 0 first when asked, then scaled,
/// then shifted. Text is moved and resized, never mirrored: it must stay readable.
struct Placement {
    Vec2 shift_mm;
    double scale = 1.0;
    bool mirrored = false;

    [[nodiscard]] Vec2 operator()(Vec2 p) const {
        return Vec2{(mirrored ? -p.x : p.x) * scale, p.y * scale} + shift_mm;
    }
};

/// Appends `marks` placed; line widths are scaled too.
void place(const std::vector<PageMark>& marks, const Placement& placement, std::vector<PageMark>& out);

/// What a mark covers, at least; text by a generous estimate of its width. Empty for clips.
[[nodiscard]] Box bounds(const PageMark& mark);

/// A chain cut into the pieces a dash pattern leaves visible. Printing libraries differ in what dash lengths
/// they take, so dashes are made here. At most kMostDashes pieces; a longer chain is then left solid.
inline constexpr std::size_t kMostDashes = 20'000;
[[nodiscard]] std::vector<std::vector<Vec2>> dashed(const std::vector<Vec2>& points_mm, bool closed,
                                                    const std::vector<double>& dash_mm);

} // namespace lanternleaf
