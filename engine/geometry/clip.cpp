// Cutting convex polygons by each other's edges (Sutherland and Hodgman, Reentrant polygon clipping,
// Communications of the ACM 17, 1974), without allocating.
#include "geometry/convex.h"

#include <utility>

namespace lanternleaf {

namespace {

/// Shapes with less area than this (mm2) are what rounding leaves along shared edges, not shapes.
constexpr double kNoClip_mm2 = 1e-9;
/// Corners closer than this (mm) are one corner.
constexpr double kSameClip_mm = 1e-9;

/// A polygon being cut. Unlike Convex it does not clear its room first, which would cost more than the cut
/// itself.
struct Draft {
    double x[Convex::kMost];
    double y[Convex::kMost];
    std::size_t size;

    void set(const Convex& shape) {
        size = 0;
        for (const Vec2 corner : shape.corners()) {
            x[size] = corner.x;
            y[size++] = corner.y;
        }
    }

    void add(Vec2 p) {
        if (size > 0 && std::abs(x[size - 1] - p.x) < kSameClip_mm &&
            std::abs(y[size - 1] - p.y) < kSameClip_mm) {
            return;
        }
        size -= size == Convex::kMost ? 1 : 0; // as Convex::add does
        x[size] = p.x;
        y[size++] = p.y;
    }

    [[nodiscard]] Vec2 corner(std::size_t i) const { return {x[i], y[i]}; }

    [[nodiscard]] bool has_area() const {
        double sum = 0.0;
        for (std::size_t i = 2; i < size; ++i) {
            sum += cross(corner(i - 1) - corner(0), corner(i) - corner(0));
        }
        return sum > 2.0 * kNoClip_mm2;
    }

    [[nodiscard]] Convex convex() const {
        Convex made;
        for (std::size_t i = 0; i < size; ++i) {
            made.add(corner(i));
        }
        return made;
    }
};

/// How a line cuts a shape.
enum class Cut { keeps_all, keeps_none, cuts };

/// For each corner of `from`, how far (times the line's length) it lies to the inner side of a -> b.
Cut sides_of(const Draft& from, Vec2 a, Vec2 b, double (&side)[Convex::kMost]) {
    const Vec2 along = b - a;
    bool any_in = false;
    bool any_out = false;
    for (std::size_t i = 0; i < from.size; ++i) {
        side[i] = cross(along, from.corner(i) - a);
        any_in = any_in || side[i] > 0.0;
        any_out = any_out || side[i] < 0.0;
    }
    return !any_in ? Cut::keeps_none : any_out ? Cut::cuts : Cut::keeps_all;
}

/// The part of `from` where side x sign is not negative, into `kept`.
void half(const Draft& from, const double (&side)[Convex::kMost], double sign, Draft& kept) {
    kept.size = 0;
    std::size_t last = from.size - 1;
    for (std::size_t i = 0; i < from.size; ++i) {
        const double here = side[i] * sign;
        const double before = side[last] * sign;
        if ((here > 0.0 && before < 0.0) || (here < 0.0 && before > 0.0)) {
            kept.add(from.corner(last) + (from.corner(i) - from.corner(last)) * (before / (before - here)));
        }
        if (here >= 0.0) {
            kept.add(from.corner(i));
        }
        last = i;
    }
}

} // namespace

Convex clip(const Convex& shape, const Convex& window) {
    if (shape.empty() || window.empty()) {
        return {};
    }
    // Two drafts take turns; an edge that cuts nothing off costs only its sides.
    Draft drafts[2];
    double side[Convex::kMost];
    Draft* now = &drafts[0];
    Draft* next = &drafts[1];
    now->set(shape);
    const auto edges = window.corners();
    Vec2 last = edges.back();
    for (const Vec2 corner : edges) {
        switch (sides_of(*now, last, corner, side)) {
        case Cut::keeps_all:
            break;
        case Cut::keeps_none:
            return {};
        case Cut::cuts:
            half(*now, side, 1.0, *next);
            std::swap(now, next);
            if (now->size < 3) {
                return {};
            }
            break;
        }
        last = corner;
    }
    return now->has_area() ? now->convex() : Convex{};
}

void subtract(const Convex& shape, const Convex& hole, std::vector<Convex>& out) {
    if (area(shape) <= kNoClip_mm2) {
        return;
    }
    if (clip(shape, hole).empty()) {
        out.push_back(shape); // whole, not cut along the hole's lines
        return;
    }
    // Cut along one edge of the hole after another: what lies outside the edge is a piece, the rest goes on.
    Draft drafts[2];
    Draft outside;
    double side[Convex::kMost];
    Draft* rest = &drafts[0];
    Draft* next = &drafts[1];
    rest->set(shape);
    const auto edges = hole.corners();
    Vec2 last = edges.back();
    for (const Vec2 corner : edges) {
        if (sides_of(*rest, last, corner, side) == Cut::cuts) {
            half(*rest, side, -1.0, outside);
            if (outside.has_area()) {
                out.push_back(outside.convex());
                half(*rest, side, 1.0, *next);
                std::swap(rest, next);
            }
        }
        last = corner;
    }
}

} // namespace lanternleaf
