#include "geometry/convex.h"

#include <algorithm>
#include <utility>

namespace lanternleaf {

namespace {

/// Shapes with less area than this (mm2) are what rounding leaves along shared edges, not shapes.
constexpr double kNoArea_mm2 = 1e-9;
/// Corners closer than this (mm) are one corner.
constexpr double kSameCorner_mm = 1e-9;

/// Twice the area, positive for clockwise corners (y down).
double twice_area(std::span<const Vec2> corners) {
    double sum = 0.0;
    // Taken about the first corner: far from the origin the plain shoelace loses digits.
    for (std::size_t i = 2; i < corners.size(); ++i) {
        sum += cross(corners[i - 1] - corners[0], corners[i] - corners[0]);
    }
    return sum;
}

bool same_corner(Vec2 a, Vec2 b) {
    return std::abs(a.x - b.x) < kSameCorner_mm && std::abs(a.y - b.y) < kSameCorner_mm;
}

void add_distinct(Convex& shape, Vec2 corner) {
    if (shape.size() == 0 || !same_corner(shape.corners().back(), corner)) {
        shape.add(corner);
    }
}

/// Nearest point to p on segment a-b.
Vec2 nearest_on_segment(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 along = b - a;
    const double size2 = dot(along, along);
    if (size2 <= 0.0) {
        return a;
    }
    return a + along * std::clamp(dot(p - a, along) / size2, 0.0, 1.0);
}

/// Area (signed) of the triangle centre-a-b inside a disc of radius r about the origin, a and b relative to
/// it. Inside the disc an edge adds its triangle, outside it the circular sector it spans: the usual exact
/// sum.
double edge_in_disc(Vec2 a, Vec2 b, double r) {
    const auto sector = [r](Vec2 u, Vec2 v) { return 0.5 * r * r * std::atan2(cross(u, v), dot(u, v)); };
    const Vec2 along = b - a;
    const double size2 = dot(along, along);
    if (size2 <= 0.0) {
        return 0.0;
    }
    // Where the line meets the circle: |a + t along| = r.
    const double half_b = dot(a, along);
    const double discriminant = half_b * half_b - size2 * (dot(a, a) - r * r);
    if (discriminant <= 0.0) {
        return sector(a, b);
    }
    const double root = std::sqrt(discriminant);
    const double t0 = std::clamp((-half_b - root) / size2, 0.0, 1.0);
    const double t1 = std::clamp((-half_b + root) / size2, 0.0, 1.0);
    if (t0 >= t1) {
        return sector(a, b);
    }
    const Vec2 enters = a + along * t0;
    const Vec2 leaves = a + along * t1;
    double sum = 0.5 * cross(enters, leaves);
    if (t0 > 0.0) {
        sum += sector(a, enters);
    }
    if (t1 < 1.0) {
        sum += sector(leaves, b);
    }
    return sum;
}

} // namespace

Convex::Convex(std::initializer_list<Vec2> corners) {
    for (const Vec2 corner : corners) {
        add(corner);
    }
    if (twice_area(this->corners()) < 0.0) {
        std::reverse(corners_, corners_ + size_);
    }
}

Convex rectangle(Vec2 at_mm, Vec2 size_mm, double turn_deg) {
    const Vec2 x = direction(turn_deg) * (size_mm.x / 2.0);
    const Vec2 y = quarter_turn(direction(turn_deg)) * (size_mm.y / 2.0);
    return Convex::of_quad(at_mm - x - y, at_mm + x - y, at_mm + x + y, at_mm - x + y);
}

Box bounds(const Convex& shape) {
    Box box;
    for (const Vec2 corner : shape.corners()) {
        box.add(corner);
    }
    return box;
}

double area(const Convex& shape) {
    return shape.empty() ? 0.0 : 0.5 * twice_area(shape.corners());
}

Vec2 centroid(const Convex& shape) {
    const auto corners = shape.corners();
    if (corners.empty()) {
        return {};
    }
    Vec2 weighted;
    double total = 0.0;
    Vec2 mean;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        mean = mean + corners[i] * (1.0 / static_cast<double>(corners.size()));
        if (i >= 2) {
            const Vec2 u = corners[i - 1] - corners[0];
            const Vec2 v = corners[i] - corners[0];
            weighted = weighted + (u + v) * (cross(u, v) / 3.0);
            total += cross(u, v);
        }
    }
    return total > kNoArea_mm2 ? corners[0] + weighted * (1.0 / total) : mean;
}

bool contains(const Convex& shape, Vec2 p) {
    if (shape.empty()) {
        return false;
    }
    const auto corners = shape.corners();
    Vec2 last = corners.back();
    for (const Vec2 corner : corners) {
        if (cross(corner - last, p - last) < 0.0) {
            return false;
        }
        last = corner;
    }
    return true;
}

Convex grown(const Convex& shape, double by_mm) {
    Convex distinct;
    for (const Vec2 corner : shape.corners()) {
        add_distinct(distinct, corner);
    }
    const auto corners = distinct.corners();
    Convex result;
    if (corners.size() < 3) {
        return result;
    }
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec2 here = corners[i];
        const Vec2 before = corners[(i + corners.size() - 1) % corners.size()];
        const Vec2 after = corners[(i + 1) % corners.size()];
        if (same_corner(here, before)) {
            continue;
        }
        // Outward is a quarter turn against the clockwise travel; the moved edges meet along the mitre.
        const Vec2 out_in = -quarter_turn(unit(here - before));
        const Vec2 out_out = -quarter_turn(unit(after - here));
        const double scale = by_mm / std::max(1e-6, 1.0 + dot(out_in, out_out));
        result.add(here + (out_in + out_out) * scale);
    }
    return result;
}

Nearest nearest(const Convex& a, const Convex& b) {
    Nearest best;
    const auto a_corners = a.corners();
    const auto b_corners = b.corners();
    if (a_corners.empty() || b_corners.empty()) {
        return best;
    }
    if (bounds(a).touches(bounds(b))) {
        const Convex both = clip(a, b);
        if (!both.empty()) {
            const Vec2 middle = centroid(both);
            return {0.0, middle, middle};
        }
    }
    // Apart, the least distance is met at a corner of one of them.
    double best2 = 1e300;
    const auto corner_to_edges = [&](std::span<const Vec2> from, std::span<const Vec2> to, bool from_is_a) {
        for (const Vec2 corner : from) {
            Vec2 last = to.back();
            for (const Vec2 next : to) {
                const Vec2 on_edge = nearest_on_segment(corner, last, next);
                const double distance2 = dot(corner - on_edge, corner - on_edge);
                if (distance2 < best2) {
                    best2 = distance2;
                    best.on_a = from_is_a ? corner : on_edge;
                    best.on_b = from_is_a ? on_edge : corner;
                }
                last = next;
            }
        }
    };
    corner_to_edges(a_corners, b_corners, true);
    corner_to_edges(b_corners, a_corners, false);
    best.mm = std::sqrt(best2);
    return best;
}

double area_in_disc(const Convex& shape, Vec2 centre_mm, double radius_mm) {
    if (shape.empty() || radius_mm <= 0.0) {
        return 0.0;
    }
    const auto corners = shape.corners();
    Vec2 last = corners.back() - centre_mm;
    double sum = 0.0;
    for (const Vec2 corner : corners) {
        const Vec2 here = corner - centre_mm;
        sum += edge_in_disc(last, here, radius_mm);
        last = here;
    }
    return std::max(0.0, sum);
}

double spare_inside(const Convex& shape, const Convex& window) {
    double least = 1e300;
    const auto edges = window.corners();
    if (edges.size() < 3) {
        return -1e300;
    }
    Vec2 last = edges.back();
    for (const Vec2 corner : edges) {
        const Vec2 along = unit(corner - last);
        for (const Vec2 p : shape.corners()) {
            least = std::min(least, cross(along, p - last));
        }
        last = corner;
    }
    return least;
}

double distance_to_segment(Vec2 p, Vec2 a, Vec2 b) {
    return distance(p, nearest_on_segment(p, a, b));
}

} // namespace lanternleaf
