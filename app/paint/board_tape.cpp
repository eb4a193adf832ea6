// Tape on the card: metal and weave, edges by polarity, signs, folds, joints, patches, and what is still to
// come.
#include "paint/board_layers.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf::layers {

namespace {

constexpr double kEdge_mm = 0.6;
constexpr float kEdge_px = 1.6f;
constexpr double kSheen_mm = 1.1;
constexpr double kWeave_mm = 1.2;
constexpr double kWeavePpm = 2.5; ///< below it the weave is one plain colour

/// One straight run in points, with how far it reaches past its corners.
struct Run {
    Point from;
    Point to;
    Point way;
    Point side;       ///< to the right of travel
    float before = 0; ///< reach past `from` that fills the corner
    float after = 0;
};

std::vector<Run> runs_of(std::span<const Point> path, float half) {
    std::vector<Run> runs;
    for (std::size_t i = 1; i < path.size(); ++i) {
        const Point way = unit(path[i] - path[i - 1]);
        runs.push_back({path[i - 1], path[i], way, {-way.y, way.x}, 0, 0});
    }
    for (std::size_t i = 1; i < runs.size(); ++i) {
        const float cosine = runs[i - 1].way.x * runs[i].way.x + runs[i - 1].way.y * runs[i].way.y;
        // tan(turn / 2): a right angle needs half the width, a sharper turn no more than that.
        const float reach =
            half * std::min(1.0f, std::sqrt(std::max(0.0f, 1 - cosine) / std::max(0.01f, 1 + cosine)));
        runs[i - 1].after = reach;
        runs[i].before = reach;
    }
    return runs;
}

/// A run's rectangle, `inset` narrower on each side; at corners it stops `inset` short too.
void block(Pen& pen, const Run& run, float half, float inset, Point shift, Colour colour) {
    const float before = run.before > 0 ? run.before - inset : 0;
    const float after = run.after > 0 ? run.after - inset : 0;
    const Point a = run.from - run.way * before + shift;
    const Point b = run.to + run.way * after + shift;
    const Point s = run.side * (half - inset);
    pen.quad(a - s, b - s, b + s, a + s, colour);
}

void weave(const Canvas& on, const Run& run, float half, float inset) {
    const Theme& theme = on.theme;
    const bool upright = std::abs(run.way.x) < 0.001f || std::abs(run.way.y) < 0.001f;
    if (!upright || on.at.ppm < kWeavePpm) {
        return;
    }
    const Point a = run.from - run.way * std::max(0.0f, run.before - inset);
    const Point b = run.to + run.way * std::max(0.0f, run.after - inset);
    const Point s = run.side * (half - inset);
    const float left = std::min({a.x - s.x, a.x + s.x, b.x - s.x, b.x + s.x});
    const float right = std::max({a.x - s.x, a.x + s.x, b.x - s.x, b.x + s.x});
    const float top = std::min({a.y - s.y, a.y + s.y, b.y - s.y, b.y + s.y});
    const float bottom = std::max({a.y - s.y, a.y + s.y, b.y - s.y, b.y + s.y});
    const float cell = on.px(kWeave_mm);
    const Rect box{left, top, right - left, bottom - top};
    if (!on.pen.visible(box)) {
        return;
    }
    // The weave is fixed to the sheet, so that it runs on through a corner and does not swim while panning.
    const Point origin = on.to(Vec2{0, 0});
    const float x0 = origin.x + std::floor((left - origin.x) / cell) * cell;
    const float y0 = origin.y + std::floor((top - origin.y) / cell) * cell;
    on.pen.push_clip(box);
    int row = static_cast<int>(std::lround((y0 - origin.y) / cell));
    for (float y = y0; y < bottom; y += cell, ++row) {
        int column = static_cast<int>(std::lround((x0 - origin.x) / cell));
        for (float x = x0; x < right; x += cell, ++column) {
            if (((row + column) & 1) == 0) {
                on.pen.fill({x, y, cell, cell}, theme.ag_hi);
            }
        }
    }
    const Colour thread = faded(theme.ag_lo, 0.75f);
    for (float x = x0; x < right; x += cell) {
        on.pen.line({x, top}, {x, bottom}, thread, 0.6f);
    }
    for (float y = y0; y < bottom; y += cell) {
        on.pen.line({left, y}, {right, y}, thread, 0.6f);
    }
    on.pen.pop_clip();
}

void fold(const Canvas& on, const FoldMark& mark, float half, float inset, bool fabric) {
    const Theme& theme = on.theme;
    const Point c = on.to(mark.at_mm);
    const Point in = on.at.way(mark.in);
    const Point out = on.at.way(mark.out);
    const float across = in.x * out.x + in.y * out.y;
    const Point outer = c + (in - out) * (half - inset * 0.5f);
    const Point inner = c - (in - out) * half;
    if (std::abs(across) < 0.5f) { // near a right angle: the two halves of the folded square show
        const Point far = c + (in + out) * (half - inset);
        const Point near = c - (in + out) * (half - inset);
        const Point outer_in = c + (in - out) * (half - inset);
        const Point inner_in = c - (in - out) * (half - inset);
        on.pen.triangle(outer_in, inner_in, far, fabric ? theme.ag_hi : theme.cu_hi);
        on.pen.triangle(outer_in, inner_in, near, faded(fabric ? theme.ag_lo : theme.cu_lo, 0.55f));
    }
    const Colour crease = mixed(fabric ? theme.ag_lo : theme.cu_lo, {0, 0, 0, 255}, 0.6f);
    on.pen.line(outer, inner, crease, 1.4f);
}

} // namespace

void strip(const Canvas& on, const StripView& strip) {
    if (strip.done_mm.size() < 2) {
        return;
    }
    const Theme& theme = on.theme;
    Pen& pen = on.pen;
    const std::vector<Point> path = on.to(strip.done_mm);
    const float half = on.px(strip.width_mm) / 2;
    const float edge = std::min(on.px(kEdge_mm, kEdge_px), half * 0.45f);
    const std::vector<Run> runs = runs_of(path, half);
    for (const Run& run : runs) {
        block(pen, run, half, 0, {0, 1.5f}, faded({0, 0, 0, 255}, 0.20f));
    }
    for (const Run& run : runs) {
        block(pen, run, half, 0, {0, 0}, side_edge(theme, strip.side));
    }
    float inset = edge;
    if (strip.side == Side::positive) {
        for (const Run& run : runs) {
            block(pen, run, half, edge, {0, 0}, theme.plus_dk);
        }
        inset += 0.8f;
    }
    for (const Run& run : runs) {
        block(pen, run, half, inset, {0, 0}, strip.fabric ? theme.ag : theme.cu);
    }
    const float sheen = on.px(kSheen_mm);
    for (const Run& run : runs) {
        if (strip.fabric) {
            weave(on, run, half, inset);
        } else {
            const Point s = run.side * (sheen / 2);
            const Point a = run.from - run.way * std::max(0.0f, run.before - inset);
            const Point b = run.to + run.way * std::max(0.0f, run.after - inset);
            pen.quad(a - s, b - s, b + s, a + s, faded(theme.cu_hi, 0.7f));
        }
    }
    for (const FoldMark& mark : strip.folds) {
        fold(on, mark, half, inset, strip.fabric);
    }
    const float arm = on.px(0.95, 2.6f);
    const float width = on.px(0.5, 1.5f);
    for (const Vec2 tick : strip.ticks_mm) {
        if (strip.side == Side::positive) {
            plus_sign(pen, on.to(tick), arm, side_sign(theme, strip.side), width);
        } else if (strip.side == Side::negative) {
            minus_sign(pen, on.to(tick), arm, side_sign(theme, strip.side), width);
        }
    }
}

void strip_later(const Canvas& on, const StripView& strip) {
    if (strip.later_mm.size() < 2) {
        return;
    }
    const std::vector<Point> path = on.to(strip.later_mm);
    const float half = on.px(strip.width_mm) / 2 - 0.5f;
    const Colour colour = faded(side_edge(on.theme, strip.side), 0.55f);
    for (const float by : {-half, half}) {
        on.pen.dashed(beside(path, by), colour, 1.4f, {5, 6});
    }
}

void patch(const Canvas& on, const PatchView& patch) {
    const Theme& theme = on.theme;
    const Convex shape = rectangle(patch.at_mm, patch.size_mm, patch.turn_deg);
    const std::vector<Point> outline = on.to(shape.corners());
    const bool lies = patch.state == ItemState::done;
    const float opacity = lies ? 1.0f : 0.35f;
    on.pen.fill_convex(outline, faded(theme.patch, lies ? 1.0f : 0.45f));
    hatch(on.pen, outline, on.px(1.5, 4.0f), faded(theme.patch_ln, 0.8f * opacity), on.px(0.35, 1.0f));
    if (lies) {
        on.pen.stroke(outline, theme.patch_ln, 1.4f, true);
    } else {
        const float line = patch.state == ItemState::now ? 2.2f : 1.4f;
        const Colour colour = patch.state == ItemState::now ? theme.ink : faded(theme.patch_ln, 0.8f);
        on.pen.dashed(outline, colour, line, {4, 4}, 0, true);
    }
}

void joint(const Canvas& on, const JointView& joint) {
    const Point c = on.to(joint.at_mm);
    const float side = on.px(joint.size_mm);
    const Colour colour = side_sign(on.theme, joint.side);
    on.pen.dashed_outline(around(c, side, side), colour, 1.2f, 0, 3, 2.5f);
    const float off = on.px(1.0, 2.6f);
    on.pen.disc({c.x - off, c.y}, 1.7f, colour);
    on.pen.disc({c.x + off, c.y}, 1.7f, colour);
}

} // namespace lanternleaf::layers
