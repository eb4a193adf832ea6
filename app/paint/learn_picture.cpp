#include "paint/learn_picture.h"

#include "paint/board_layers.h"
#include "paint/picture_stage.h"

#include <algorithm>
#include <array>

namespace lanternleaf {

namespace {

constexpr float kRadius = 9;

LightTint tint_of(const LearnState& learn) {
    const auto led = learn.known.leds.find(learn.answers.touch.type);
    return led != learn.known.leds.end() && led->second.colour == "green" ? LightTint::green
                                                                          : LightTint::warm;
}

/// A light as it comes from the bag, seen from above: two pads, a body, and a mark near one end, no signs.
void bare_light(PictureStage& on, double x, double y, bool upright, float glow, double size = 1.0) {
    Pen& pen = on.pen();
    const Theme& t = on.theme();
    if (glow > 0) {
        on.bulb_glow(x, y, 0.62, glow);
    }
    const float w = on.px(size * (upright ? 0.44 : 0.92));
    const float h = on.px(size * (upright ? 0.92 : 0.44));
    const Rect body = around(on.to(x, y), w, h);
    const float pad = on.px(size * 0.2);
    pen.fill(body, t.panel, on.px(0.06));
    for (const bool first : {true, false}) {
        const Rect end = upright ? Rect{body.x, first ? body.y : body.bottom() - pad, w, pad}
                                 : Rect{first ? body.x : body.right() - pad, body.y, pad, h};
        pen.fill(end, t.ag, on.px(0.05));
        pen.outline(end, t.edge, 1.2f, on.px(0.05));
    }
    pen.outline(body, t.night ? t.minus : t.ink, 2.2f, on.px(0.06));
    // The mark: a line across, beside the first pad.
    const float off = pad + on.px(size * 0.09);
    const Point a = upright ? Point{body.x + 4, body.y + off} : Point{body.x + off, body.y + 4};
    const Point b = upright ? Point{body.right() - 4, body.y + off} : Point{body.x + off, body.bottom() - 4};
    pen.line(a, b, t.leaf, std::max(3.0f, on.px(0.06)));
}

/// A coin cell on its side, wide printed face up.
void cell_side(PictureStage& on, double x, double y) {
    Pen& pen = on.pen();
    const Theme& t = on.theme();
    const Rect slab = around(on.to(x, y), on.px(0.98), on.px(0.34));
    pen.fill(slab, t.ag_hi, 5);
    pen.outline(slab, t.night ? t.minus : t.ink, 2.4f, 5);
    const Rect low = {slab.x + on.px(0.07), slab.bottom(), slab.w - on.px(0.14), on.px(0.06)};
    pen.fill(low, t.ag_lo, 2);
    pen.outline(low, t.night ? t.minus : t.ink, 1.6f, 2);
    on.label(x - 0.72, y - 0.2, "+", t.ink);
    on.label(x - 0.72, y + 0.26, "−", t.ink);
}

void lead(PictureStage& on, std::array<Point, 3> path, Colour colour, float width) {
    on.pen().stroke(path, on.theme().night ? on.theme().minus : on.theme().ink, width + 3, false, true);
    on.pen().stroke(path, colour, width, false, true);
}

void mark(PictureStage& on) {
    bare_light(on, 0, 0.02, false, 0, 1.9);
    on.pen().ring(on.to(-0.42, 0.02), on.px(0.62), on.theme().lamp, 4.0f);
    on.label(-1.25, -0.45, "?", on.theme().ink);
}

void touch(PictureStage& on, bool glows) {
    const Theme& t = on.theme();
    cell_side(on, -0.72, 0.02);
    lead(on, {on.to(-0.62, -0.18), on.to(0.3, -0.62), on.to(0.92, -0.5)}, t.cu, on.px(0.09));
    lead(on, {on.to(-0.62, 0.25), on.to(0.3, 0.66), on.to(0.92, 0.52)}, t.cu, on.px(0.09));
    bare_light(on, 1.0, 0.0, true, glows ? 0.9f : 0.0f);
    on.pen().ring(on.to(1.0, -0.30), on.px(0.30), t.lamp, 3.5f);
}

void two_strips(PictureStage& on, double y, const std::string& overlap) {
    on.tape(-1.45, y, 0.22, y, Side::link, 1.0f);
    on.tape(-0.22, y, 1.45, y, Side::link, 1.0f);
    const Point a = on.to(-0.22, y - PictureStage::kTape / 2);
    const Rect lap{a.x, a.y, on.px(0.44), on.px(PictureStage::kTape)};
    const Point box[] = {
        lap.top_left(), {lap.right(), lap.y}, {lap.right(), lap.bottom()}, {lap.x, lap.bottom()}};
    on.pen().dashed(box, on.theme().ink, 2.0f, {5, 4}, true);
    if (!overlap.empty()) {
        on.straight_arrow(-0.22, y - 0.46, 0.22, y - 0.46, true);
        on.label(0, y - 0.72, overlap, on.theme().ink);
    }
}

void probe(PictureStage& on, double x, double y, double from_x) {
    const Theme& t = on.theme();
    const Point tip = on.to(x, y);
    const Point hand = on.to(from_x, y - 0.78);
    const Point neck = tip + (hand - tip) * 0.35f;
    on.pen().line(tip, neck, t.night ? t.ink : t.ink2, 3.0f, true);
    on.pen().line(neck, hand, t.blue, on.px(0.11), true);
}

void foam(PictureStage& on, const LearnState& learn, bool squeezed) {
    const Theme& t = on.theme();
    Pen& pen = on.pen();
    const int layers = std::clamp(learn.answers.foam.layers, 1, 8);
    const double each = (squeezed ? 0.62 : 1.0) * std::min(0.24, 1.3 / layers);
    pen.line(on.to(-1.5, 0.72), on.to(1.5, 0.72), t.ink, 3.0f);
    double y = 0.70;
    for (int i = 0; i < layers; ++i) {
        const Point a = on.to(-0.45, y - each);
        const Rect layer{a.x, a.y, on.px(1.1), on.px(each) - 1};
        pen.fill(layer, t.patch, 4);
        pen.outline(layer, t.patch_ln, 1.4f, 4);
        y -= each;
    }
    on.ruler(-0.62, -0.85, 1.55, true);
    if (squeezed) {
        const Point a = on.to(-0.5, y - 0.16);
        const Rect book{a.x, a.y, on.px(1.2), on.px(0.14)};
        pen.fill(book, t.leaf, 3);
        on.straight_arrow(0.1, -0.85, 0.1, y - 0.24);
    }
}

void draw_stage(PictureStage& on, const LearnState& learn, const Words& words) {
    switch (learn.stage) {
    case LearnStage::led_mark:
        return mark(on);
    case LearnStage::led_touch:
        return touch(on, !learn.lamp_failed);
    case LearnStage::tape_stick:
        return two_strips(on, 0.22, words.mm(learn.answers.strips.overlap_mm));
    case LearnStage::tape_leads:
        probe(on, 0.0, 0.55, -0.9);
        return probe(on, 0.02, 0.55, 0.92);
    case LearnStage::tape_reading:
        two_strips(on, 0.3, "");
        probe(on, -1.32, 0.3, -0.7);
        return probe(on, 1.32, 0.3, 0.7);
    case LearnStage::tape_light:
        cell_side(on, -1.05, 0.05);
        lead(on, {on.to(-0.95, -0.15), on.to(-0.35, -0.55), on.to(0.25, -0.5)}, on.theme().cu, on.px(0.1));
        lead(on, {on.to(0.05, -0.5), on.to(0.6, -0.55), on.to(1.25, -0.5)}, on.theme().cu, on.px(0.1));
        on.pen().ring(on.to(0.15, -0.5), on.px(0.2), on.theme().lamp, 3.5f);
        lead(on, {on.to(-0.95, 0.28), on.to(0.2, 0.66), on.to(1.25, 0.5)}, on.theme().cu, on.px(0.1));
        return bare_light(on, 1.32, 0.0, true, 0.9f);
    case LearnStage::foam_stack:
        return foam(on, learn, false);
    case LearnStage::foam_squeeze:
        return foam(on, learn, true);
    default:
        return;
    }
}

} // namespace

bool has_picture(LearnStage stage) {
    return stage != LearnStage::list && stage != LearnStage::choose && stage != LearnStage::led_colour &&
           stage != LearnStage::tape_meter && stage != LearnStage::done;
}

void draw_learn_picture(Pen& pen, const Theme& theme, const Rect& r, const LearnState& learn,
                        const Words& words) {
    pen.fill(r, theme.sheet, kRadius);
    pen.push_clip(r);
    MovePictureSpec spec;
    spec.side = Side::link;
    spec.tint = tint_of(learn);
    spec.fabric = learn.answers.strips.type.rfind("fabric", 0) == 0;
    PictureStage stage(pen, theme, r, spec);
    draw_stage(stage, learn, words);
    pen.pop_clip();
    close_frame(pen, r, kRadius, theme.panel, theme.line);
}

} // namespace lanternleaf
