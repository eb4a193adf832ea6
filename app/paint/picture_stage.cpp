// Tape, its folds and signs, and the frame of a move picture.
#include "paint/picture_stage.h"

#include "paint/board_layers.h"
#include "paint/curve.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

void close_frame(Pen& pen, const Rect& frame, float radius, Colour around, Colour line) {
    const Point corners[] = {frame.top_left(),
                             {frame.right(), frame.y},
                             {frame.right(), frame.bottom()},
                             {frame.x, frame.bottom()}};
    for (int i = 0; i < 4; ++i) {
        const Point corner = corners[i];
        const Point centre{corner.x + (corner.x > frame.centre().x ? -radius : radius),
                           corner.y + (corner.y > frame.centre().y ? -radius : radius)};
        const float from = kPi + kPi / 2 * static_cast<float>(i);
        constexpr int kSteps = 6;
        Point last{centre.x + radius * std::cos(from), centre.y + radius * std::sin(from)};
        for (int k = 1; k <= kSteps; ++k) {
            const float a = from + kPi / 2 * static_cast<float>(k) / kSteps;
            const Point next{centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)};
            pen.triangle(corner, last, next, around);
            last = next;
        }
    }
    pen.outline(frame, line, 1.2f, radius);
}

PictureStage::PictureStage(Pen& pen, const Theme& theme, const Rect& frame, const MovePictureSpec& spec)
    : pen_(pen), theme_(theme), frame_(frame), spec_(spec), scale_(frame.h / 2) {}

void PictureStage::turn(double deg, bool mirror) {
    turn_deg_ = deg;
    mirror_ = mirror;
}

Point PictureStage::to(double x, double y) const {
    const Vec2 p = turned({mirror_ ? -x : x, y}, turn_deg_);
    const Point middle = frame_.centre();
    return {middle.x + px(p.x), middle.y + px(p.y)};
}

void PictureStage::tape(double x1, double y1, double x2, double y2, Side side, float opacity) {
    const Point a = to(x1, y1);
    const Point b = to(x2, y2);
    const float far = distance(a, b);
    if (far <= 0) {
        return;
    }
    const Point way = (b - a) * (1 / far);
    const Point across{-way.y, way.x};
    const float half = px(kTape / 2);
    const auto strip = [&](float h, Colour colour) {
        const Point s = across * h;
        pen_.quad(a - s, b - s, b + s, a + s, faded(colour, opacity));
    };
    strip(half, layers::side_edge(theme_, side));
    float inset = 2.6f;
    if (side == Side::positive) {
        strip(half - inset, theme_.plus_dk);
        inset += 0.8f;
    }
    strip(half - inset, spec_.fabric ? theme_.ag : theme_.cu);
    strip(half * 0.22f, faded(spec_.fabric ? theme_.ag_hi : theme_.cu_hi, 0.7f));
    if (spec_.fabric) {
        for (float s = -half + inset + 3; s < half - inset; s += 5) {
            pen_.line(a + across * s, b + across * s, faded(theme_.ag_lo, 0.6f * opacity), 0.6f);
        }
        for (float t = 3; t < far; t += 5) {
            const Point p = a + way * t;
            const Point s = across * (half - inset);
            pen_.line(p - s, p + s, faded(theme_.ag_lo, 0.6f * opacity), 0.6f);
        }
    }
}

void PictureStage::sticky(Point a, Point b, Point c, Point d) {
    const Colour paper = theme_.night ? mixed(theme_.ink, theme_.sheet, 0.1f) : theme_.panel;
    pen_.quad(a, b, c, d, paper);
    // Dots in rows along the quad, as printed on backing paper.
    const float far = std::max(distance(a, b), distance(d, c));
    const float deep = std::max(distance(a, d), distance(b, c));
    const int columns = std::max(2, static_cast<int>(far / 5));
    const int rows = std::max(2, static_cast<int>(deep / 5));
    const Colour dot = theme_.night ? theme_.sheet_edge : theme_.edge;
    for (int r = 0; r < rows; ++r) {
        for (int k = 0; k < columns; ++k) {
            const float u =
                (static_cast<float>(k) + (r % 2 == 0 ? 0.3f : 0.75f)) / static_cast<float>(columns);
            const float v = (static_cast<float>(r) + 0.5f) / static_cast<float>(rows);
            const Point top = a + (b - a) * u;
            const Point bottom = d + (c - d) * u;
            pen_.fill(around(top + (bottom - top) * v, 1.6f, 1.6f), dot);
        }
    }
    const Point outline[] = {a, b, c, d};
    pen_.stroke(outline, theme_.night ? theme_.line : theme_.edge, 1.5f, true);
}

void PictureStage::lifted(Point a, Point b, Point c, Point d) {
    pen_.quad(a + Point{2, 5}, b + Point{2, 5}, c + Point{2, 5}, d + Point{2, 5},
              faded({0, 0, 0, 255}, 0.14f));
    const Colour face = spec_.fabric   ? theme_.ag_hi
                        : theme_.night ? theme_.cu_hi
                                       : mixed(theme_.cu_hi, theme_.cu, 0.15f);
    pen_.quad(a, b, c, d, face);
    const Colour edge = layers::side_edge(theme_, spec_.side);
    pen_.line(a, b, edge, 3.0f, true);
    pen_.line(d, c, edge, 3.0f, true);
    pen_.line(b, c, edge, 2.0f, true);
}

void PictureStage::crease(double x1, double y1, double x2, double y2) {
    const Colour dark = mixed(spec_.fabric ? theme_.ag_lo : theme_.cu_lo, {0, 0, 0, 255}, 0.6f);
    pen_.line(to(x1, y1), to(x2, y2), dark, 2.2f, true);
}

void PictureStage::sign(double x, double y) {
    sign(x, y, spec_.side);
}

void PictureStage::sign(double x, double y, Side side) {
    const float arm = px(0.075);
    const Colour colour = layers::side_sign(theme_, side);
    if (side == Side::positive) {
        layers::plus_sign(pen_, to(x, y), arm, colour, 2.6f);
    } else if (side == Side::negative) {
        layers::minus_sign(pen_, to(x, y), arm, colour, 2.6f);
    }
}

void PictureStage::later(double x1, double y1, double x2, double y2) {
    const Point path[] = {to(x1, y1), to(x2, y2)};
    const float half = px(kTape / 2) - 1;
    const Colour colour =
        spec_.side == Side::negative && theme_.night ? theme_.ink2 : layers::side_edge(theme_, spec_.side);
    pen_.dashed(layers::beside(path, -half), colour, 1.8f, {6, 5});
    pen_.dashed(layers::beside(path, half), colour, 1.8f, {6, 5});
}

void PictureStage::patch(double x, double y, double size, bool ghost) {
    const double h = size / 2;
    const Point outline[] = {to(x - h, y - h), to(x + h, y - h), to(x + h, y + h), to(x - h, y + h)};
    if (ghost) {
        pen_.dashed(outline, theme_.patch_ln, 1.8f, {5, 4}, 0, true);
        return;
    }
    pen_.fill_convex(outline, theme_.patch);
    layers::hatch(pen_, outline, 9, faded(theme_.patch_ln, 0.75f), 1.6f);
    pen_.stroke(outline, theme_.patch_ln, 2.0f, true);
}

void PictureStage::disc(double x, double y, double radius, bool dashed) {
    if (dashed) {
        pen_.dashed_ring(to(x, y), px(radius), theme_.ink, 2.0f, 6, 5);
    } else {
        pen_.ring(to(x, y), px(radius), theme_.ink, 2.0f);
    }
}

void PictureStage::cell(double x, double y, double radius, bool plus) {
    const Point at = to(x, y);
    const float r = px(radius);
    pen_.disc(at + Point{1, 3}, r, faded({0, 0, 0, 255}, 0.16f));
    pen_.disc(at, r, theme_.night ? theme_.ag : theme_.ag);
    pen_.disc(at, r * 0.86f, theme_.ag_hi);
    pen_.ring(at, r, theme_.night ? theme_.minus : theme_.ink, 2.0f);
    const Colour ink = theme_.on_lamp;
    const float arm = r * 0.28f;
    plus ? layers::plus_sign(pen_, at, arm, ink, 3.0f) : layers::minus_sign(pen_, at, arm, ink, 3.0f);
}

void PictureStage::bulb_glow(double x, double y, double radius, float strength) {
    pen_.halo(to(x, y), px(radius), theme_.glow, strength);
}

} // namespace lanternleaf
