// Hands' arrows, tools and parts on the stage of a move picture.
#include "paint/picture_stage.h"

#include "paint/board_layers.h"
#include "paint/curve.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

void head(Pen& pen, Point tip, Point way, Colour colour) {
    const Point d = unit(way);
    const Point s{-d.y, d.x};
    pen.triangle(tip + d * 3, tip - d * 10 + s * 6.5f, tip - d * 10 - s * 6.5f, colour);
}

/// Points given in a prop's own frame, turned by `deg` about `at`, in points of the screen.
struct Local {
    Point at;
    float c;
    float s;
    float k; ///< size of 1

    Local(Point where, double deg, float size)
        : at(where), c(static_cast<float>(std::cos(radians(deg)))),
          s(static_cast<float>(std::sin(radians(deg)))), k(size) {}

    [[nodiscard]] Point operator()(float x, float y) const {
        return {at.x + (x * c - y * s) * k, at.y + (x * s + y * c) * k};
    }
};

} // namespace

void PictureStage::arrow(std::span<const Point> path) {
    if (path.size() < 2) {
        return;
    }
    // The line stops short so that the head's point is the arrow's point.
    std::vector<Point> line(path.begin(), path.end());
    const Point tip = line.back();
    const Point way = tip - line[line.size() - 2];
    line.back() = tip - unit(way) * std::min(6.0f, length(way) * 0.9f);
    pen_.stroke(line, theme_.ink, 2.4f, false, true);
    head(pen_, tip, way, theme_.ink);
}

void PictureStage::straight_arrow(double x1, double y1, double x2, double y2, bool both_ways) {
    const Point a = to(x1, y1);
    const Point b = to(x2, y2);
    const Point path[] = {a, b};
    arrow(path);
    if (both_ways) {
        head(pen_, a, a - b, theme_.ink);
    }
}

void PictureStage::curved_arrow(double x1, double y1, double cx, double cy, double x2, double y2) {
    Polyline path{to(x1, y1)};
    add_quadratic(path, to(cx, cy), to(x2, y2));
    arrow(path);
}

void PictureStage::bone_folder(double x, double y, double deg, double shift) {
    const Vec2 moved = direction(deg + 90) * shift;
    // The tool is held where a hand holds it, whatever way the tape runs: only its place turns with the
    // picture.
    const Local at(to(x + moved.x, y + moved.y), deg, px(1));
    Polyline body;
    const float half = 0.105f;
    constexpr int kSteps = 10;
    for (int i = 0; i <= kSteps; ++i) { // rounded end at the origin, long body along +x
        const float a = kPi / 2 + kPi * static_cast<float>(i) / kSteps;
        body.push_back(at(half + half * std::cos(a), half * std::sin(a)));
    }
    body.push_back(at(2.4f, -half * 1.15f));
    body.push_back(at(2.4f, half * 1.15f));
    const Colour bone = theme_.night ? theme_.ink : theme_.panel;
    pen_.fill_convex(body, bone);
    pen_.stroke(body, theme_.night ? theme_.minus : theme_.ink, 2.6f, true);
    pen_.line(at(0.32f, 0), at(2.2f, 0), faded(theme_.night ? theme_.minus : theme_.ink, 0.35f), 1.4f);
}

void PictureStage::finger(double x, double y, double deg) {
    const Local at(to(x, y), deg, px(1));
    Polyline body;
    const float half = 0.17f;
    constexpr int kSteps = 12;
    for (int i = 0; i <= kSteps; ++i) {
        const float a = kPi / 2 + kPi * static_cast<float>(i) / kSteps;
        body.push_back(at(half + half * std::cos(a), half * std::sin(a)));
    }
    body.push_back(at(1.8f, -half * 1.25f));
    body.push_back(at(1.8f, half * 1.25f));
    const Colour skin =
        theme_.night ? mixed(theme_.sheet_edge, theme_.ink, 0.35f) : mixed(theme_.cu_hi, theme_.panel, 0.45f);
    pen_.fill_convex(body, skin);
    pen_.stroke(body, theme_.night ? theme_.minus : theme_.ink, 2.4f, true);
    Polyline nail;
    for (int i = 0; i <= kSteps; ++i) {
        const float a = kPi / 2 + kPi * static_cast<float>(i) / kSteps;
        nail.push_back(at(0.16f + 0.10f * std::cos(a), 0.10f * std::sin(a)));
    }
    nail.push_back(at(0.30f, -0.10f));
    nail.push_back(at(0.30f, 0.10f));
    pen_.stroke(nail, faded(theme_.night ? theme_.minus : theme_.ink, 0.5f), 1.4f, true);
}

void PictureStage::scissors(double x, double y, double deg, double open) {
    const Colour steel = theme_.night ? theme_.ag_hi : theme_.ag;
    const Colour ink = theme_.night ? theme_.minus : theme_.ink;
    for (const double way : {1.0, -1.0}) {
        const Local at(to(x, y), deg + way * open, px(1));
        const float w = static_cast<float>(way);
        const Point blade[] = {at(-0.62f, 0), at(0.06f, -0.075f * w), at(0.10f, 0.05f * w)};
        pen_.fill_convex(blade, steel);
        pen_.stroke(blade, ink, 1.8f, true);
        const Local ring(to(x, y), deg - way * open * 0.9, px(1));
        pen_.line(ring(0.0f, 0), ring(0.42f, 0.04f * w), ink, 5.0f, true);
        const Point eye = ring(0.60f, 0.10f * w);
        pen_.ring(eye, px(0.19), theme_.leaf, px(0.075));
    }
    pen_.disc(to(x, y), 3, ink);
}

void PictureStage::pencil(double x, double y, double deg) {
    const Local at(to(x, y), deg, px(1));
    const Colour ink = theme_.night ? theme_.minus : theme_.ink;
    const Point wood[] = {at(0, 0), at(0.22f, -0.085f), at(0.22f, 0.085f)};
    const Point body[] = {at(0.22f, -0.085f), at(1.8f, -0.085f), at(1.8f, 0.085f), at(0.22f, 0.085f)};
    pen_.fill_convex(body, theme_.leaf);
    pen_.fill_convex(wood, mixed(theme_.cu_hi, theme_.panel, 0.4f));
    pen_.triangle(at(0, 0), at(0.075f, -0.03f), at(0.075f, 0.03f), ink);
    pen_.stroke(body, ink, 1.8f, true);
    pen_.stroke(wood, ink, 1.8f, true);
    pen_.line(at(0.24f, 0), at(1.8f, 0), faded(ink, 0.35f), 1.4f);
}

void PictureStage::dashed_line(double x1, double y1, double x2, double y2) {
    const Point path[] = {to(x1, y1), to(x2, y2)};
    pen_.dashed(path, theme_.ink, 2.0f, {6, 4});
}

void PictureStage::label(double x, double y, std::string_view text, Colour colour, bool bold) {
    const float em = std::clamp(px(0.25), 12.0f, 20.0f);
    const TextStyle style{em, em * 1.3f, bold ? Weight::Bold : Weight::Regular};
    const float wide = pen_.fonts().width(text, style);
    const Rect box = around(to(x, y), wide + 8, em * 1.3f);
    pen_.fill(box, theme_.sheet, 4);
    pen_.text_in(box, text, style, colour);
}

void PictureStage::sheet_corner() {
    const Point a = to(-0.62, -0.62);
    const Rect paper{a.x, a.y, frame_.right() - a.x + 20, frame_.bottom() - a.y + 20};
    pen_.fill(frame_, theme_.table);
    pen_.shadow(paper, 2, Lift::Panel);
    pen_.fill(paper, theme_.sheet, 2);
    pen_.outline(paper, theme_.sheet_edge, 1.5f, 2);
}

void PictureStage::ruler(double x, double y, double length, bool upright) {
    const Point a = to(x, y);
    const float deep = px(0.28);
    const float far = px(length);
    const Rect body = upright ? Rect{a.x - deep, a.y, deep, far} : Rect{a.x, a.y - deep, far, deep};
    const Colour wood = theme_.night ? theme_.patch : mixed(theme_.patch, theme_.lamp_tint, 0.4f);
    pen_.fill(body, wood, 3);
    pen_.outline(body, theme_.patch_ln, 1.6f, 3);
    const float pitch = px(0.1);
    int i = 1;
    for (float t = pitch; t < far - 2; t += pitch, ++i) {
        const float tick = i % 5 == 0 ? deep * 0.5f : deep * 0.28f;
        if (upright) {
            pen_.line({body.right() - tick, a.y + t}, {body.right(), a.y + t}, theme_.ink, 1.1f);
        } else {
            pen_.line({a.x + t, body.bottom() - tick}, {a.x + t, body.bottom()}, theme_.ink, 1.1f);
        }
    }
}

void PictureStage::led(double x, double y, double deg, double scale, bool marks_only, float glow) {
    // The card view's own drawing, so that the part looks here as it does on the card.
    BoardView view;
    const Viewport at{frame_, static_cast<double>(px(scale)), to(x, y), {0, 0}, false};
    PartView part;
    part.turn_deg = deg;
    part.length_mm = 11.6;
    part.tint = spec_.tint;
    part.state = marks_only ? ItemState::later : ItemState::done;
    part.glow = static_cast<double>(glow);
    const BoardLook look;
    const layers::Canvas on{pen_, theme_, view, at, look};
    if (glow > 0) {
        layers::halo(on, part);
    }
    layers::part(on, part);
}

void PictureStage::resistor(double x, double y, double deg, double scale) {
    BoardView view;
    const Viewport at{frame_, static_cast<double>(px(scale)), to(x, y), {0, 0}, false};
    PartView part;
    part.turn_deg = deg;
    part.length_mm = 11.6;
    part.width_mm = 4.4;
    part.resistor = true;
    part.state = ItemState::done;
    const BoardLook look;
    layers::part({pen_, theme_, view, at, look}, part);
}

} // namespace lanternleaf
