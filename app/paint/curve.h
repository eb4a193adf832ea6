// Curves as polylines: arcs, circles, rounded rectangles, beziers, and sums over polylines.
// Exists so that dashes, icons and fills all work on one thing, a list of points. Pure; no drawing library.
#pragma once

#include <initializer_list>
#include <span>
#include <vector>

#include "host/point.h"

namespace lanternleaf {

using Polyline = std::vector<Point>;

/// Adds points of an arc, from and to in radians (clockwise on screen when to > from), to within `tolerance`
/// points.
void add_arc(Polyline& out, Point centre, float radius, float from, float to, float tolerance = 0.1f);
/// Adds points of a cubic bezier after its start (the last point of `out`), to within `tolerance` points.
void add_cubic(Polyline& out, Point c1, Point c2, Point end, float tolerance = 0.1f);
/// Adds points of a quadratic bezier after its start.
void add_quadratic(Polyline& out, Point control, Point end, float tolerance = 0.1f);
/// A rectangle with four rounded corners, clockwise from the top left; not closed by a repeated point.
[[nodiscard]] Polyline rounded_rect(const Rect& r, float radius);
[[nodiscard]] float path_length(std::span<const Point> points, bool closed = false);

/// The point `along` points from the start, and the direction there (unit length; {1, 0} for an empty path).
struct PathPlace {
    Point at;
    Point direction{1, 0};
};

[[nodiscard]] PathPlace place_along(std::span<const Point> points, float along);
/// The pieces a dash pattern leaves: on, off, on, off… from `phase` into the pattern.
[[nodiscard]] std::vector<Polyline> dashes_of(std::span<const Point> points, std::span<const float> pattern,
                                              float phase, bool closed);
/// Triangles (three indices each) that fill a simple polygon; empty when there are fewer than three points.
[[nodiscard]] std::vector<int> triangulate(std::span<const Point> polygon);

} // namespace lanternleaf
