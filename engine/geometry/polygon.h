// Polygon: simple polygons that need not be convex. Exists for keep-outs, which a maker draws freely.
#pragma once

#include "geometry/convex.h"

namespace lanternleaf {

[[nodiscard]] bool contains(std::span<const Vec2> polygon, Vec2 p);
/// Whether a convex piece and a simple polygon share any area (shared edges alone do not count).
[[nodiscard]] bool overlaps(std::span<const Vec2> polygon, const Convex& piece);
[[nodiscard]] double signed_area(std::span<const Vec2> polygon);
/// Whether segments a-b and c-d cross or touch; when they do and `at` is given, where.
[[nodiscard]] bool segments_meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d, Vec2* at = nullptr);

} // namespace lanternleaf
