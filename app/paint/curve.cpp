#include "paint/curve.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace lanternleaf {

namespace {

constexpr float kHalfTurn = 3.14159265358979f;

float cross(Point a, Point b, Point c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool in_triangle(Point p, Point a, Point b, Point c) {
    return cross(a, b, p) >= 0 && cross(b, c, p) >= 0 && cross(c, a, p) >= 0;
}

/// Steps for a bezier whose control polygon bends by `bend` points: the chord error of n steps is bend / (8
/// n^2) times the second difference, so n = sqrt(bend / (8 tolerance)) is enough.
int steps_for(float bend, float tolerance) {
    return std::clamp(static_cast<int>(std::ceil(std::sqrt(bend / (8 * tolerance)))), 2, 64);
}

} // namespace

void add_arc(Polyline& out, Point centre, float radius, float from, float to, float tolerance) {
    // The sagitta of one step of angle a is r (1 - cos(a / 2)).
    const float ratio = std::clamp(1 - tolerance / std::max(radius, tolerance), -1.0f, 1.0f);
    const float step = std::max(2 * std::acos(ratio), 0.05f);
    const int count = std::max(1, static_cast<int>(std::ceil(std::abs(to - from) / step)));
    for (int i = 0; i <= count; ++i) {
        const float a = from + (to - from) * static_cast<float>(i) / static_cast<float>(count);
        out.push_back({centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)});
    }
}

void add_cubic(Polyline& out, Point c1, Point c2, Point end, float tolerance) {
    const Point start = out.empty() ? c1 : out.back();
    const float bend = 6 * std::max(length(start - c1 * 2 + c2), length(c1 - c2 * 2 + end));
    const int count = steps_for(bend, tolerance);
    for (int i = 1; i <= count; ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(count);
        const float u = 1 - t;
        out.push_back(start * (u * u * u) + c1 * (3 * u * u * t) + c2 * (3 * u * t * t) + end * (t * t * t));
    }
}

void add_quadratic(Polyline& out, Point control, Point end, float tolerance) {
    const Point start = out.empty() ? control : out.back();
    const int count = steps_for(2 * length(start - control * 2 + end), tolerance);
    for (int i = 1; i <= count; ++i) {
        const float t = static_cast<float>(i) / static_cast<float>(count);
        const float u = 1 - t;
        out.push_back(start * (u * u) + control * (2 * u * t) + end * (t * t));
    }
}

Polyline rounded_rect(const Rect& r, float radius) {
    const float k = std::clamp(radius, 0.0f, std::min(r.w, r.h) / 2);
    if (k <= 0) {
        return {{r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}, {r.x, r.bottom()}};
    }
    Polyline out;
    add_arc(out, {r.x + k, r.y + k}, k, kHalfTurn, 1.5f * kHalfTurn);
    add_arc(out, {r.right() - k, r.y + k}, k, 1.5f * kHalfTurn, 2 * kHalfTurn);
    add_arc(out, {r.right() - k, r.bottom() - k}, k, 0, 0.5f * kHalfTurn);
    add_arc(out, {r.x + k, r.bottom() - k}, k, 0.5f * kHalfTurn, kHalfTurn);
    return out;
}

float path_length(std::span<const Point> points, bool closed) {
    float sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        sum += distance(points[i - 1], points[i]);
    }
    if (closed && points.size() > 1) {
        sum += distance(points.back(), points.front());
    }
    return sum;
}

PathPlace place_along(std::span<const Point> points, float along) {
    if (points.empty()) {
        return {};
    }
    PathPlace place{points.front(), {1, 0}};
    for (std::size_t i = 1; i < points.size(); ++i) {
        const float step = distance(points[i - 1], points[i]);
        if (step <= 0) {
            continue;
        }
        place.direction = (points[i] - points[i - 1]) * (1 / step);
        const float t = std::clamp(along / step, 0.0f, 1.0f);
        place.at = points[i - 1] + (points[i] - points[i - 1]) * t;
        if (along <= step) {
            return place;
        }
        along -= step;
    }
    return place;
}

std::vector<Polyline> dashes_of(std::span<const Point> points, std::span<const float> pattern, float phase,
                                bool closed) {
    std::vector<Polyline> out;
    const float period = std::accumulate(pattern.begin(), pattern.end(), 0.0f);
    if (points.size() < 2 || period <= 0.01f) {
        return out;
    }
    float place = std::fmod(phase, period);
    if (place < 0) {
        place += period;
    }
    std::size_t slot = 0;
    while (place >= pattern[slot]) {
        place -= pattern[slot];
        slot = (slot + 1) % pattern.size();
    }
    float left = pattern[slot] - place;
    bool on = slot % 2 == 0;
    if (on) {
        out.push_back({points.front()});
    }
    const std::size_t sides = closed ? points.size() : points.size() - 1;
    for (std::size_t i = 0; i < sides; ++i) {
        const Point a = points[i];
        const Point b = points[(i + 1) % points.size()];
        const float side = distance(a, b);
        float at = 0;
        while (side - at > left) {
            at += left;
            const Point p = a + (b - a) * (at / side);
            if (on) {
                out.back().push_back(p);
            }
            slot = (slot + 1) % pattern.size();
            left = std::max(pattern[slot], 0.01f);
            on = slot % 2 == 0;
            if (on) {
                out.push_back({p});
            }
        }
        left -= side - at;
        if (on) {
            out.back().push_back(b);
        }
    }
    std::erase_if(out, [](const Polyline& dash) { return dash.size() < 2; });
    return out;
}

std::vector<int> triangulate(std::span<const Point> polygon) {
    std::vector<int> out;
    std::vector<int> ring(polygon.size());
    std::iota(ring.begin(), ring.end(), 0);
    if (polygon.size() < 3) {
        return out;
    }
    float area = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Point b = polygon[(i + 1) % polygon.size()];
        area += a.x * b.y - b.x * a.y;
    }
    if (area < 0) {
        std::reverse(ring.begin(), ring.end());
    }
    const auto at = [&](std::size_t i) { return polygon[static_cast<std::size_t>(ring[i % ring.size()])]; };
    // Ear clipping: cut off any corner that bends the right way and holds no other corner, until a triangle
    // is left.
    while (ring.size() > 3) {
        std::size_t ear = ring.size();
        for (std::size_t i = 0; i < ring.size() && ear == ring.size(); ++i) {
            const Point a = at(i + ring.size() - 1);
            const Point b = at(i);
            const Point c = at(i + 1);
            bool good = cross(a, b, c) > 0;
            for (std::size_t k = 0; good && k < ring.size(); ++k) {
                const Point p = at(k);
                good = p == a || p == b || p == c || !in_triangle(p, a, b, c);
            }
            ear = good ? i : ear;
        }
        if (ear == ring.size()) {
            ear = 0; // degenerate: cut any corner rather than loop for ever
        }
        const std::size_t n = ring.size();
        out.insert(out.end(), {ring[(ear + n - 1) % n], ring[ear], ring[(ear + 1) % n]});
        ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    out.insert(out.end(), {ring[0], ring[1], ring[2]});
    return out;
}

} // namespace lanternleaf
