// Shapes that the layers of the card view share.
#include "paint/board_layers.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf::layers {

namespace {

Point right_of(Point way) {
    return {-way.y, way.x};
}

float dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}

void arc_to(std::vector<Point>& out, Point centre, float radius, float from, float to) {
    const int steps = std::max(2, static_cast<int>(std::ceil(std::abs(to - from) / 0.26f)));
    for (int i = 0; i <= steps; ++i) {
        const float a = from + (to - from) * static_cast<float>(i) / static_cast<float>(steps);
        out.push_back({centre.x + std::cos(a) * radius, centre.y + std::sin(a) * radius});
    }
}

} // namespace

std::vector<Point> Canvas::to(std::span<const Vec2> mm) const {
    std::vector<Point> out;
    out.reserve(mm.size());
    for (const Vec2 p : mm) {
        out.push_back(to(p));
    }
    return out;
}

std::vector<Point> beside(std::span<const Point> path, float by) {
    std::vector<Point> out;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const bool first = i == 0;
        const bool last = i + 1 == path.size();
        const Point in = unit(first ? path[1] - path[0] : path[i] - path[i - 1]);
        const Point way = unit(last ? path[i] - path[i - 1] : path[i + 1] - path[i]);
        const Point mitre = right_of(in) + right_of(way);
        const float stretch = dot(mitre, right_of(in));
        // Beyond a right angle the mitre would run away; a square corner is what the tape has there anyway.
        out.push_back(path[i] + mitre * (by / std::max(stretch, 0.6f)));
    }
    return out;
}

std::vector<Point> band(std::span<const Point> path, float half) {
    std::vector<Point> out;
    if (path.size() < 2) {
        return out;
    }
    const auto side = [&](bool back) {
        const std::size_t n = path.size();
        for (std::size_t k = 0; k < n; ++k) {
            const std::size_t i = back ? n - 1 - k : k;
            const Point before = k == 0 ? path[i] : path[back ? i + 1 : i - 1];
            const Point after = k + 1 == n ? path[i] : path[back ? i - 1 : i + 1];
            const Point in = k == 0 ? unit(after - path[i]) : unit(path[i] - before);
            const Point way = k + 1 == n ? in : unit(after - path[i]);
            const Point left_in = right_of(in) * -1;
            const Point left_way = right_of(way) * -1;
            const float turn = in.x * way.y - in.y * way.x; // positive: clockwise, the left side is outside
            if (turn > 0.01f) {
                const float a = std::atan2(left_in.y, left_in.x);
                float b = std::atan2(left_way.y, left_way.x);
                b += b < a ? 2 * kPi : 0;
                arc_to(out, path[i], half, a, b);
            } else {
                const Point mitre = left_in + left_way;
                out.push_back(path[i] + mitre * (half / std::max(dot(mitre, left_in), 0.6f)));
            }
            if (k + 1 == n) { // round end
                const float a = std::atan2(left_in.y, left_in.x);
                arc_to(out, path[i], half, a, a + kPi);
            }
        }
    };
    side(false);
    side(true);
    // Round ends begin where a side stopped: the same point twice would trip the cutting into triangles.
    std::vector<Point> clean;
    for (const Point p : out) {
        if (clean.empty() || distance(clean.back(), p) > 0.05f) {
            clean.push_back(p);
        }
    }
    while (clean.size() > 2 && distance(clean.front(), clean.back()) <= 0.05f) {
        clean.pop_back();
    }
    return clean;
}

void hatch(Pen& pen, std::span<const Point> outline, float pitch, Colour colour, float width) {
    if (outline.size() < 3 || pitch < 1) {
        return;
    }
    // Lines x + y = c; the outline is convex, so each meets it in at most two places.
    float low = 1e9f;
    float high = -1e9f;
    for (const Point p : outline) {
        low = std::min(low, p.x + p.y);
        high = std::max(high, p.x + p.y);
    }
    const float step = pitch * 1.41421356f;
    for (float c = low + step / 2; c < high; c += step) {
        Point ends[2];
        int found = 0;
        for (std::size_t i = 0; i < outline.size() && found < 2; ++i) {
            const Point a = outline[i];
            const Point b = outline[(i + 1) % outline.size()];
            const float at_a = a.x + a.y - c;
            const float at_b = b.x + b.y - c;
            if ((at_a <= 0) != (at_b <= 0)) {
                ends[found++] = a + (b - a) * (at_a / (at_a - at_b));
            }
        }
        if (found == 2) {
            pen.line(ends[0], ends[1], colour, width);
        }
    }
}

void plus_sign(Pen& pen, Point at, float arm, Colour colour, float width) {
    pen.line({at.x - arm, at.y}, {at.x + arm, at.y}, colour, width);
    pen.line({at.x, at.y - arm}, {at.x, at.y + arm}, colour, width);
}

void minus_sign(Pen& pen, Point at, float arm, Colour colour, float width) {
    pen.line({at.x - arm, at.y}, {at.x + arm, at.y}, colour, width);
}

Colour side_edge(const Theme& theme, Side side) {
    return side == Side::positive ? theme.plus : side == Side::negative ? theme.minus : theme.edge;
}

Colour side_sign(const Theme& theme, Side side) {
    return side == Side::positive ? theme.plus_dk : side == Side::negative ? theme.minus : theme.ink2;
}

} // namespace lanternleaf::layers
