// Points, sizes and rectangles on the screen, in points (1 pt = 1 px at 100 % display scale).
// Exists so that layout, gestures and painting share one set of plain shapes without knowing any drawing
// library. The card itself is measured in millimetres by the engine; nothing here is a length on paper.
#pragma once

#include <algorithm>
#include <cmath>

namespace lanternleaf {

/// A place or an offset on the screen; y grows downwards.
struct Point {
    float x = 0;
    float y = 0;

    friend Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }

    friend Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }

    friend Point operator*(Point a, float k) { return {a.x * k, a.y * k}; }

    friend bool operator==(const Point&, const Point&) = default;
};

[[nodiscard]] inline float length(Point p) {
    return std::hypot(p.x, p.y);
}

/// One long, the same way; to the right when it is nowhere.
[[nodiscard]] inline Point unit(Point p) {
    const float size = length(p);
    return size > 0 ? p * (1 / size) : Point{1, 0};
}

[[nodiscard]] inline float distance(Point a, Point b) {
    return length(a - b);
}

/// Width and height, both at least 0.
struct Size {
    float w = 0;
    float h = 0;
    friend bool operator==(const Size&, const Size&) = default;
};

/// Space the device keeps for itself along each edge (notch, rounded corners, home bar).
struct Insets {
    float left = 0;
    float top = 0;
    float right = 0;
    float bottom = 0;
    friend bool operator==(const Insets&, const Insets&) = default;
};

/// An upright rectangle: top left corner and size. A rectangle with w or h of 0 holds no point.
struct Rect {
    float x = 0;
    float y = 0;
    float w = 0;
    float h = 0;

    [[nodiscard]] float right() const { return x + w; }

    [[nodiscard]] float bottom() const { return y + h; }

    [[nodiscard]] Point top_left() const { return {x, y}; }

    [[nodiscard]] Point centre() const { return {x + w / 2, y + h / 2}; }

    [[nodiscard]] bool empty() const { return w <= 0 || h <= 0; }

    [[nodiscard]] bool holds(Point p) const {
        return p.x >= x && p.y >= y && p.x < right() && p.y < bottom();
    }

    [[nodiscard]] bool holds(const Rect& r) const {
        return r.x >= x && r.y >= y && r.right() <= right() && r.bottom() <= bottom();
    }

    /// The same rectangle with every edge moved inwards by `by` (outwards when negative).
    [[nodiscard]] Rect shrunk(float by) const { return shrunk(by, by); }

    [[nodiscard]] Rect shrunk(float by_x, float by_y) const {
        return {x + by_x, y + by_y, std::max(0.0f, w - 2 * by_x), std::max(0.0f, h - 2 * by_y)};
    }

    [[nodiscard]] Rect moved(float dx, float dy) const { return {x + dx, y + dy, w, h}; }

    /// Cuts a slice off one edge and hands it back; the rest stays in *this. Never cuts more than there is.
    Rect cut_top(float by) {
        const float k = std::clamp(by, 0.0f, h);
        const Rect slice{x, y, w, k};
        y += k;
        h -= k;
        return slice;
    }

    Rect cut_bottom(float by) {
        const float k = std::clamp(by, 0.0f, h);
        h -= k;
        return {x, y + h, w, k};
    }

    Rect cut_left(float by) {
        const float k = std::clamp(by, 0.0f, w);
        const Rect slice{x, y, k, h};
        x += k;
        w -= k;
        return slice;
    }

    Rect cut_right(float by) {
        const float k = std::clamp(by, 0.0f, w);
        w -= k;
        return {x + w, y, k, h};
    }

    friend bool operator==(const Rect&, const Rect&) = default;
};

/// What two rectangles share; empty when they do not meet.
[[nodiscard]] inline Rect common(const Rect& a, const Rect& b) {
    const float x = std::max(a.x, b.x);
    const float y = std::max(a.y, b.y);
    return {x, y, std::max(0.0f, std::min(a.right(), b.right()) - x),
            std::max(0.0f, std::min(a.bottom(), b.bottom()) - y)};
}

/// A rectangle of the given size round a centre.
[[nodiscard]] inline Rect around(Point centre, float w, float h) {
    return {centre.x - w / 2, centre.y - h / 2, w, h};
}

} // namespace lanternleaf
