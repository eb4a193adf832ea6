#include "paint/pen.h"

#include "paint/packed.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <imgui.h>
#include <imgui_internal.h> // the white pixel of the atlas

#include "paint/curve.h"

namespace lanternleaf {

namespace {

ImVec2 vec(Point p) {
    return {p.x, p.y};
}

ImDrawFlags corner_flags(unsigned corners) {
    if (corners == 0) {
        return ImDrawFlags_RoundCornersNone;
    }
    ImDrawFlags flags = 0;
    flags |= (corners & kCornerTopLeft) ? ImDrawFlags_RoundCornersTopLeft : 0;
    flags |= (corners & kCornerTopRight) ? ImDrawFlags_RoundCornersTopRight : 0;
    flags |= (corners & kCornerBottomLeft) ? ImDrawFlags_RoundCornersBottomLeft : 0;
    flags |= (corners & kCornerBottomRight) ? ImDrawFlags_RoundCornersBottomRight : 0;
    return flags;
}

/// The library antialiases fills only for one winding; this is the sign of a polygon's.
float winding(std::span<const Point> points) {
    float area = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Point a = points[i];
        const Point b = points[(i + 1) % points.size()];
        area += a.x * b.y - b.x * a.y;
    }
    return area;
}

/// True where a polyline turns so sharply at b that its corner needs a disc of its own (over about 25
/// degrees).
bool sharp(Point a, Point b, Point c) {
    const float ab = distance(a, b);
    const float bc = distance(b, c);
    if (ab <= 0 || bc <= 0) {
        return false;
    }
    const Point u = b - a;
    const Point v = c - b;
    return u.x * v.x + u.y * v.y < 0.9f * ab * bc;
}

} // namespace

Pen::Pen(ImDrawList& list, const Fonts& fonts, float px_per_pt)
    : list_(&list), fonts_(&fonts), px_per_pt_(px_per_pt) {
    // The soft edge of a shape is one device pixel wide, not one point.
    list_->_FringeScale = 1 / px_per_pt;
    list_->Flags = (list_->Flags | ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedFill) &
                   ~ImDrawListFlags_AntiAliasedLinesUseTex;
}

float Pen::crisp(float v) const {
    return (std::floor(v * px_per_pt_) + 0.5f) / px_per_pt_;
}

void Pen::fill(const Rect& r, Colour colour, float radius, unsigned corners) {
    if (r.empty() || colour.a == 0) {
        return;
    }
    const float k = std::min(radius, std::min(r.w, r.h) / 2);
    list_->AddRectFilled({r.x, r.y}, {r.right(), r.bottom()}, packed(colour), k, corner_flags(corners));
}

void Pen::outline(const Rect& r, Colour colour, float width, float radius, unsigned corners) {
    if (r.empty() || colour.a == 0) {
        return;
    }
    // The path runs along the middle of the line, so that the line's outer edge is the rectangle's.
    const float in = width / 2;
    const float k = std::max(0.0f, std::min(radius, std::min(r.w, r.h) / 2) - in);
    list_->PathRect({r.x + in, r.y + in}, {r.right() - in, r.bottom() - in}, k, corner_flags(corners));
    list_->PathStroke(packed(colour), ImDrawFlags_Closed, width);
}

void Pen::dashed_outline(const Rect& r, Colour colour, float width, float radius, float on, float off) {
    const Polyline path = rounded_rect(r.shrunk(width / 2), radius - width / 2);
    // Stretch the pattern a little so that it closes without a half dash.
    const float whole = path_length(path, true);
    const float count = std::max(1.0f, std::round(whole / (on + off)));
    const float k = whole / (count * (on + off));
    dashed(path, colour, width, {on * k, off * k}, on * k / 2, true);
}

void Pen::disc(Point centre, float radius, Colour colour) {
    list_->AddCircleFilled(vec(centre), radius, packed(colour));
}

void Pen::ring(Point centre, float radius, Colour colour, float width) {
    Polyline path;
    add_arc(path, centre, radius - width / 2, 0, 2 * kPi, 0.05f);
    path.pop_back();
    smooth_run(path, colour, width, true);
}

void Pen::dashed_ring(Point centre, float radius, Colour colour, float width, float on, float off) {
    dashed_outline(around(centre, 2 * radius, 2 * radius), colour, width, radius, on, off);
}

void Pen::arc(Point centre, float radius, float from, float to, Colour colour, float width, bool round) {
    Polyline path;
    add_arc(path, centre, radius, from, to, 0.05f);
    stroke(path, colour, width, false, round);
}

void Pen::line(Point a, Point b, Colour colour, float width, bool round) {
    const Point both[] = {a, b};
    stroke(both, colour, width, false, round);
}

void Pen::smooth_run(std::span<const Point> points, Colour colour, float width, bool closed) {
    if (points.size() < 2) {
        return;
    }
    list_->PathClear();
    for (const Point p : points) {
        list_->PathLineTo(vec(p));
    }
    list_->PathStroke(packed(colour), closed ? ImDrawFlags_Closed : ImDrawFlags_None, width);
}

void Pen::stroke(std::span<const Point> points, Colour colour, float width, bool closed, bool round) {
    if (points.size() < 2 || colour.a == 0) {
        return;
    }
    const std::size_t n = points.size();
    std::vector<std::size_t> corners;
    for (std::size_t i = closed ? 0 : 1; i < (closed ? n : n - 1); ++i) {
        if (sharp(points[(i + n - 1) % n], points[i], points[(i + 1) % n])) {
            corners.push_back(i);
        }
    }
    const float dot = width / 2;
    for (const std::size_t i : corners) {
        disc(points[i], dot, colour);
    }
    if (round && !closed) {
        disc(points.front(), dot, colour);
        disc(points.back(), dot, colour);
    }
    if (closed && corners.empty()) {
        smooth_run(points, colour, width, true);
        return;
    }
    // Between sharp corners the library's own joins are even, so each stretch is one polyline.
    std::vector<Point> run;
    const std::size_t first = closed ? corners.front() : 0;
    const std::size_t steps = closed ? n : n - 1;
    std::size_t next = closed ? 1 : 0;
    run.push_back(points[first]);
    for (std::size_t k = 1; k <= steps; ++k) {
        const std::size_t i = (first + k) % n;
        run.push_back(points[i]);
        if (next < corners.size() && corners[next] == i) {
            smooth_run(run, colour, width, false);
            run.assign(1, points[i]);
            ++next;
        }
    }
    smooth_run(run, colour, width, false);
}

void Pen::dashed(std::span<const Point> points, Colour colour, float width,
                 std::initializer_list<float> pattern, float phase, bool closed) {
    for (const Polyline& dash :
         dashes_of(points, std::span(pattern.begin(), pattern.size()), phase, closed)) {
        stroke(dash, colour, width);
    }
}

void Pen::triangle(Point a, Point b, Point c, Colour colour) {
    const Point corners[] = {a, b, c};
    fill_convex(corners, colour);
}

void Pen::quad(Point a, Point b, Point c, Point d, Colour colour) {
    const Point corners[] = {a, b, c, d};
    fill_convex(corners, colour);
}

void Pen::fill_convex(std::span<const Point> points, Colour colour) {
    if (points.size() < 3 || colour.a == 0) {
        return;
    }
    list_->PathClear();
    if (winding(points) >= 0) {
        for (const Point p : points) {
            list_->PathLineTo(vec(p));
        }
    } else {
        for (auto p = points.rbegin(); p != points.rend(); ++p) {
            list_->PathLineTo(vec(*p));
        }
    }
    list_->PathFillConvex(packed(colour));
}

void Pen::fill_polygon(std::span<const Point> points, Colour colour) {
    const std::vector<int> corners = triangulate(points);
    if (corners.empty() || colour.a == 0) {
        return;
    }
    const ImVec2 white = list_->_Data->TexUvWhitePixel;
    list_->PrimReserve(static_cast<int>(corners.size()), static_cast<int>(points.size()));
    const unsigned base = list_->_VtxCurrentIdx;
    for (const int i : corners) {
        list_->PrimWriteIdx(static_cast<ImDrawIdx>(base + static_cast<unsigned>(i)));
    }
    for (const Point p : points) {
        list_->PrimWriteVtx(vec(p), white, packed(colour));
    }
    if (colour.a == 255) {
        smooth_run(points, colour, 1 / px_per_pt_, true);
    }
}

} // namespace lanternleaf
