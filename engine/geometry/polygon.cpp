#include "geometry/polygon.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Shared area below this (mm2) is rounding along a shared edge.
constexpr double kNoPolygon_mm2 = 1e-9;
constexpr double kOnEdge_mm = 1e-9;

bool on_segment(Vec2 p, Vec2 a, Vec2 b) {
    return distance_to_segment(p, a, b) <= kOnEdge_mm;
}

} // namespace

double signed_area(std::span<const Vec2> polygon) {
    double sum = 0.0;
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        sum += cross(polygon[i - 1] - polygon[0], polygon[i] - polygon[0]);
    }
    return sum / 2.0;
}

bool contains(std::span<const Vec2> polygon, Vec2 p) {
    if (polygon.size() < 3) {
        return false;
    }
    bool inside = false;
    Vec2 last = polygon.back();
    for (const Vec2 corner : polygon) {
        if (on_segment(p, last, corner)) {
            return true;
        }
        // Count the edges that a ray towards +x crosses; half-open in y, so that a corner counts once.
        if ((last.y > p.y) != (corner.y > p.y)) {
            const double x = last.x + (corner.x - last.x) * (p.y - last.y) / (corner.y - last.y);
            if (x > p.x) {
                inside = !inside;
            }
        }
        last = corner;
    }
    return inside;
}

bool overlaps(std::span<const Vec2> polygon, const Convex& piece) {
    if (polygon.size() < 3 || piece.empty()) {
        return false;
    }
    // Cutting a polygon with hollows edge by edge may leave bridges of no width between its parts; they
    // cancel in the signed area, so the area of what is left is exact.
    std::vector<Vec2> kept(polygon.begin(), polygon.end());
    std::vector<Vec2> next;
    const auto edges = piece.corners();
    Vec2 a = edges.back();
    for (const Vec2 b : edges) {
        next.clear();
        Vec2 last = kept.back();
        double last_side = cross(b - a, last - a);
        for (const Vec2 corner : kept) {
            const double side = cross(b - a, corner - a);
            if ((side > 0.0 && last_side < 0.0) || (side < 0.0 && last_side > 0.0)) {
                next.push_back(last + (corner - last) * (last_side / (last_side - side)));
            }
            if (side >= 0.0) {
                next.push_back(corner);
            }
            last = corner;
            last_side = side;
        }
        kept.swap(next);
        if (kept.size() < 3) {
            return false;
        }
        a = b;
    }
    return std::abs(signed_area(kept)) > kNoPolygon_mm2;
}

bool segments_meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d, Vec2* at) {
    const Vec2 u = b - a;
    const Vec2 v = d - c;
    const double turn = cross(u, v);
    const double scale = length(u) * length(v);
    if (std::abs(turn) > 1e-12 * scale && scale > 0.0) {
        const double t = cross(c - a, v) / turn;
        const double s = cross(c - a, u) / turn;
        const double t_slack = kOnEdge_mm / length(u);
        const double s_slack = kOnEdge_mm / length(v);
        if (t < -t_slack || t > 1.0 + t_slack || s < -s_slack || s > 1.0 + s_slack) {
            return false;
        }
        if (at != nullptr) {
            *at = a + u * std::clamp(t, 0.0, 1.0);
        }
        return true;
    }
    // Parallel, or a point: they meet where an end of one lies on the other; `at` is the middle of those
    // ends.
    Vec2 sum;
    double count = 0.0;
    const auto take = [&](bool meets, Vec2 p) {
        if (meets) {
            sum = sum + p;
            count += 1.0;
        }
    };
    take(on_segment(a, c, d), a);
    take(on_segment(b, c, d), b);
    take(on_segment(c, a, b), c);
    take(on_segment(d, a, b), d);
    if (count > 0.0 && at != nullptr) {
        *at = sum * (1.0 / count);
    }
    return count > 0.0;
}

} // namespace lanternleaf
