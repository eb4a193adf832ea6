// Convex: small convex polygons and what can be done with them exactly: clip, subtract, area, distance.
// Exists because everything on a card is made of convex pieces (a strip is a chain of quads, a pad and a
// patch are rectangles), which makes overlaps exact and some thirty times faster than a general polygon
// library.
#pragma once

#include "geometry/vec2.h"

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <memory>
#include <span>
#include <vector>

namespace lanternleaf {

/// A convex polygon of at most kMost corners, held in place (no allocation). Corners run clockwise on the
/// table (y down); size 0 is the empty polygon. Clipping two quads gives at most 8 corners; repeated clips
/// may add more.
class Convex {
public:
    static constexpr std::size_t kMost = 24;

    // The room for corners is left as it is until they come, and a copy takes only those that are there:
    // clipping makes many of these, and clearing or copying all the room would cost more than the cutting.
    Convex() {} // NOLINT: not defaulted, since that would clear the room

    Convex(const Convex& other) { take(other); }

    Convex& operator=(const Convex& other) {
        if (this != &other) {
            take(other);
        }
        return *this;
    }

    ~Convex() = default;
    /// Corners in either direction; they are put in clockwise order.
    Convex(std::initializer_list<Vec2> corners);

    /// Four corners already in clockwise order.
    [[nodiscard]] static Convex of_quad(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
        Convex quad;
        quad.add(a);
        quad.add(b);
        quad.add(c);
        quad.add(d);
        return quad;
    }

    [[nodiscard]] std::span<const Vec2> corners() const { return {corners_, size_}; }

    [[nodiscard]] std::size_t size() const { return size_; }

    [[nodiscard]] bool empty() const { return size_ < 3; }

    /// Adds a corner, clockwise of the last; further corners than kMost are merged into the last one (never
    /// happens with our shapes).
    void add(Vec2 corner) {
        size_ -= size_ == kMost ? 1 : 0;
        std::construct_at(&corners_[size_++], corner);
    }

private:
    void take(const Convex& other) {
        size_ = other.size_;
        for (std::size_t i = 0; i < size_; ++i) {
            std::construct_at(&corners_[i], other.corners_[i]);
        }
    }

    std::size_t size_ = 0;

    union { // a union's members are not made by themselves
        Vec2 corners_[kMost];
    };
};

/// Bounds with edges included. Default is empty (min above max).
struct Box {
    Vec2 min{1e300, 1e300};
    Vec2 max{-1e300, -1e300};

    void add(Vec2 p) {
        min = {std::min(min.x, p.x), std::min(min.y, p.y)};
        max = {std::max(max.x, p.x), std::max(max.y, p.y)};
    }

    void add(const Box& other) {
        min = {std::min(min.x, other.min.x), std::min(min.y, other.min.y)};
        max = {std::max(max.x, other.max.x), std::max(max.y, other.max.y)};
    }

    /// Every edge moved out; the empty box stays empty.
    [[nodiscard]] Box grown(double by_mm) const {
        return min.x > max.x ? *this : Box{min - Vec2{by_mm, by_mm}, max + Vec2{by_mm, by_mm}};
    }

    [[nodiscard]] bool touches(const Box& other) const {
        return min.x <= other.max.x && other.min.x <= max.x && min.y <= other.max.y && other.min.y <= max.y;
    }

    [[nodiscard]] bool contains(Vec2 p) const {
        return p.x >= min.x && p.x <= max.x && p.y >= min.y && p.y <= max.y;
    }
};

/// A rectangle of `size_mm` centred on `at_mm`, turned clockwise.
[[nodiscard]] Convex rectangle(Vec2 at_mm, Vec2 size_mm, double turn_deg);
[[nodiscard]] Box bounds(const Convex& shape);
[[nodiscard]] double area(const Convex& shape);
[[nodiscard]] Vec2 centroid(const Convex& shape);
[[nodiscard]] bool contains(const Convex& shape, Vec2 p);
/// The part of `shape` inside `window`; empty when they do not overlap.
[[nodiscard]] Convex clip(const Convex& shape, const Convex& window);
/// The part of `shape` outside `hole`, as disjoint convex pieces, appended to `out`.
void subtract(const Convex& shape, const Convex& hole, std::vector<Convex>& out);
/// `shape` with every edge moved outward by `by_mm`, corners kept sharp.
[[nodiscard]] Convex grown(const Convex& shape, double by_mm);

/// Least distance between the two; 0 when they overlap. Also gives the nearest point on `a` and on `b`.
struct Nearest {
    double mm = 1e300;
    Vec2 on_a;
    Vec2 on_b;
};

[[nodiscard]] Nearest nearest(const Convex& a, const Convex& b);
/// Area of the part of `shape` inside a disc; exact (circular segments, not a polygon of the disc).
[[nodiscard]] double area_in_disc(const Convex& shape, Vec2 centre_mm, double radius_mm);
/// How far (mm) inside `window` the whole of `shape` lies: the least distance from it to window's edges;
/// negative when part of it sticks out.
[[nodiscard]] double spare_inside(const Convex& shape, const Convex& window);
[[nodiscard]] double distance_to_segment(Vec2 p, Vec2 a, Vec2 b);

} // namespace lanternleaf
