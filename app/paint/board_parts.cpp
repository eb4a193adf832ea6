// Parts on the card: the holder and its cell, LEDs and resistors, their light, their ids.
#include "paint/board_layers.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf::layers {

namespace {

TextStyle note_style(const Canvas& on) {
    return {on.look.note_em, on.look.note_em * 1.3f, Weight::Regular};
}

/// A part's own frame: x from its first pad (- or 1) to its second, y to the right of that.
struct Frame {
    const Canvas& on;
    const PartView& part;

    [[nodiscard]] Point at(double x, double y) const {
        return on.to(part.at_mm + turned({x, y}, part.turn_deg));
    }
};

std::vector<Point> rounded_part(const Frame& frame, double half_long, double half_wide, double radius) {
    std::vector<Point> out;
    constexpr int kSteps = 5;
    const double corner[4][3] = {{half_long, half_wide, 0},
                                 {-half_long, half_wide, 90},
                                 {-half_long, -half_wide, 180},
                                 {half_long, -half_wide, 270}};
    for (const auto& c : corner) {
        const double x = c[0] - std::copysign(radius, c[0]);
        const double y = c[1] - std::copysign(radius, c[1]);
        for (int i = 0; i <= kSteps; ++i) {
            const double a = radians(c[2] + 90.0 * i / kSteps);
            out.push_back(frame.at(x + radius * std::cos(a), y + radius * std::sin(a)));
        }
    }
    return out;
}

/// The diode's sign: from + to -, its bar on the - side.
void diode(const Frame& frame, double high, Colour colour, bool hollow, float line) {
    const Canvas& on = frame.on;
    const double half = high / 2;
    const double deep = high * 0.8;
    const Point tip = frame.at(-deep / 2, 0);
    const Point a = frame.at(deep / 2, -half);
    const Point b = frame.at(deep / 2, half);
    if (hollow) {
        const Point corners[] = {tip, a, b};
        on.pen.stroke(corners, colour, line, true);
    } else {
        on.pen.triangle(tip, a, b, colour);
    }
    on.pen.line(frame.at(-deep / 2, -half), frame.at(-deep / 2, half), colour, std::max(line, on.px(0.42)));
}

Colour glow_of(const Theme& theme, LightTint tint) {
    switch (tint) {
    case LightTint::green:
        return theme.glow_green;
    case LightTint::blue:
        return mixed(theme.glow, theme.blue, 0.75f);
    case LightTint::red:
        return mixed(theme.glow, theme.plum, 0.45f);
    case LightTint::white:
        return mixed(theme.glow, {255, 255, 255, 255}, 0.25f);
    case LightTint::warm:
        return theme.glow;
    }
    return theme.glow;
}

Colour part_paper(const Theme& theme) {
    return theme.night ? mixed(theme.ink, {255, 255, 255, 255}, 0.5f) : theme.panel;
}

void led(const Canvas& on, const PartView& part) {
    const Theme& theme = on.theme;
    const Frame frame{on, part};
    const bool lies = part.state == ItemState::done;
    const bool now = part.state == ItemState::now;
    const double half = part.length_mm / 2;
    const double end = 2.5; // depth of each end
    const std::vector<Point> body = rounded_part(frame, half, part.width_mm / 2, 1.3);
    const float arm = on.px(0.85, 2.2f);
    // A placed part is paper-white by day and by night; dark ink stands on it.
    const Colour paper = part_paper(theme);
    const Colour ink = lies ? theme.on_lamp : theme.ink;
    if (lies) {
        const Colour lit = mixed(paper, glow_of(theme, part.tint), 0.3f * static_cast<float>(part.glow));
        on.pen.fill_convex(body, part.glow > 0.02 ? lit : paper);
        on.pen.stroke(body, theme.night ? theme.minus : theme.ink, 1.6f, true);
    } else {
        if (part.marked || now) {
            on.pen.fill_convex(body, faded(theme.sheet, now ? 0.85f : 0.30f));
        }
        const Colour mark = now ? theme.ink : faded(theme.ink, 0.72f);
        on.pen.dashed(body, mark, now ? 2.2f : 1.5f, {3.2f, 2.6f}, 0, true);
    }
    const float line = lies ? 1.6f : 1.4f;
    const Colour sign = lies || now ? ink : faded(theme.ink, 0.72f);
    if (lies) {
        for (const double x : {-half + end, half - end}) {
            on.pen.line(frame.at(x, -part.width_mm / 2 + 0.2), frame.at(x, part.width_mm / 2 - 0.2), ink,
                        1.2f);
        }
    }
    minus_sign(on.pen, frame.at(-half + end / 2, 0), arm, sign, line);
    plus_sign(on.pen, frame.at(half - end / 2, 0), arm, sign, line);
    const double room = part.length_mm - 2 * end - 1.4;
    diode(frame, std::min(3.1, room / 0.8), sign, !lies, 1.4f);
}

void resistor(const Canvas& on, const PartView& part) {
    const Theme& theme = on.theme;
    const Frame frame{on, part};
    const bool lies = part.state == ItemState::done;
    const double half = part.length_mm / 2;
    const std::vector<Point> body = rounded_part(frame, half, part.width_mm / 2, 1.0);
    const Colour paper = part_paper(theme);
    const Colour ink = lies                           ? theme.on_lamp
                       : part.state == ItemState::now ? theme.ink
                                                      : faded(theme.ink, 0.72f);
    if (lies) {
        on.pen.fill_convex(body, paper);
        on.pen.stroke(body, theme.night ? theme.minus : theme.ink, 1.6f, true);
    } else {
        on.pen.dashed(body, ink, part.state == ItemState::now ? 2.2f : 1.5f, {3.2f, 2.6f}, 0, true);
    }
    // The resistor's sign: a plain box in a line.
    const double box_long = 5.0;
    const double box_wide = 1.9;
    const Point box[] = {frame.at(-box_long / 2, -box_wide / 2), frame.at(box_long / 2, -box_wide / 2),
                         frame.at(box_long / 2, box_wide / 2), frame.at(-box_long / 2, box_wide / 2)};
    if (lies) {
        on.pen.fill_convex(box, faded(ink, 0.25f));
    }
    on.pen.stroke(box, ink, 1.5f, true);
    on.pen.line(frame.at(-half + 0.9, 0), frame.at(-box_long / 2, 0), ink, 1.5f);
    on.pen.line(frame.at(box_long / 2, 0), frame.at(half - 0.9, 0), ink, 1.5f);
}

void flap_holder(const Canvas& on) {
    const HolderView& holder = on.view.holder;
    const Theme& theme = on.theme;
    Pen& pen = on.pen;
    const bool lies = holder.state == ItemState::done;
    const std::vector<Point> base = on.to(holder.base_outline_mm);
    const std::vector<Point> flap = on.to(holder.flap_outline_mm);
    const Colour paper = faded(theme.sheet, 0.42f);
    const Colour edge = theme.night ? theme.edge : mixed(theme.edge, theme.ink, 0.35f);
    if (!lies) {
        pen.dashed(base, edge, 1.5f, {5, 4}, 0, true);
        pen.dashed(flap, edge, 1.5f, {5, 4}, 0, true);
    } else {
        pen.fill_convex(base, paper);
        pen.stroke(base, edge, 1.5f, true);
        const float cut = on.px(3.6);
        // The flap's foot has one corner turned over: the one at the lower right as the sheet lies.
        const Vec2 third = holder.flap_outline_mm[2];
        const Vec2 fourth = holder.flap_outline_mm[3];
        const std::size_t at = third.x + third.y > fourth.x + fourth.y ? 2 : 3;
        const Point corner = flap[at];
        const auto toward = [&](Point to) {
            const float far = distance(corner, to);
            return corner + (to - corner) * (far > 0 ? cut / far : 0);
        };
        const Point a = toward(flap[at - 1]);
        const Point b = toward(flap[(at + 1) % 4]);
        std::vector<Point> outline;
        for (std::size_t i = 0; i < 4; ++i) {
            if (i == at) {
                outline.push_back(a);
                outline.push_back(b);
            } else {
                outline.push_back(flap[i]);
            }
        }
        pen.fill_convex(outline, paper);
        pen.stroke(outline, edge, 1.5f, true);
        const Point inside = a + b - corner;
        pen.triangle(a, inside, b, theme.night ? theme.sheet_edge : mixed(theme.patch, theme.sheet, 0.3f));
        const Point turned_over[] = {a, inside, b};
        pen.stroke(turned_over, edge, 1.2f);
    }
    const Point hinge[] = {flap[0], flap[1]};
    pen.dashed(hinge, theme.ink, 2.0f, {8, 3, 2, 3});
    const Point bed = on.to(holder.bed_mm);
    const Point disc = on.to(holder.flap_mm);
    const float radius = on.px(holder.cell_radius_mm);
    pen.ring(disc, radius, faded(theme.ink, 0.35f), 1.0f);
    if (holder.cell_in) {
        pen.disc(bed, radius, theme.night ? mixed(theme.ag, theme.sheet, 0.35f) : theme.ag_hi);
        pen.ring(bed, radius, theme.ink, 1.8f);
    } else {
        pen.dashed_ring(bed, radius, theme.ink, 1.8f, 5, 4);
    }
    pen.ring(bed, on.px(holder.cell_radius_mm - 1.3), faded(theme.ink, 0.5f), 1.0f);
    if (holder.cell_in) {
        plus_sign(pen, bed, on.px(2.2), theme.night ? theme.on_lamp : theme.ink2, on.px(0.5, 1.8f));
    }
    if (on.look.labels) {
        const TextStyle style = note_style(on);
        const float wide = pen.fonts().width(holder.label, style);
        const Rect box = around(on.to(holder.label_mm), wide + 6, on.look.note_em * 1.25f);
        pen.fill(box, faded(theme.sheet, 0.82f), 3);
        pen.text_in(box, holder.label, style, theme.ink);
    }
}

void pad_holder(const Canvas& on) {
    const HolderView& holder = on.view.holder;
    const Theme& theme = on.theme;
    const std::vector<Point> base = on.to(holder.base_outline_mm);
    const bool lies = holder.state == ItemState::done;
    if (base.size() >= 3) {
        if (lies) {
            on.pen.fill_convex(base, faded(theme.panel, 0.85f));
            on.pen.stroke(base, theme.ink, 1.6f, true);
        } else {
            on.pen.dashed(base, theme.edge, 1.5f, {5, 4}, 0, true);
        }
    }
    for (int pad = 0; pad < 2; ++pad) {
        const std::vector<Point> outline = on.to(holder.pad_mm[pad].corners());
        if (outline.size() < 3) {
            continue;
        }
        on.pen.fill_convex(outline, theme.ag);
        on.pen.stroke(outline, theme.ink, 1.4f, true);
        const Point middle = on.to(centroid(holder.pad_mm[pad]));
        const float arm = on.px(1.2, 3.0f);
        pad == 0 ? minus_sign(on.pen, middle, arm, theme.minus, 1.8f)
                 : plus_sign(on.pen, middle, arm, theme.plus_dk, 1.8f);
    }
    const Point bed = on.to(holder.bed_mm);
    const float radius = on.px(holder.cell_radius_mm);
    if (holder.cell_in) {
        on.pen.ring(bed, radius, theme.ink, 1.8f);
    } else {
        on.pen.dashed_ring(bed, radius, theme.ink, 1.8f, 5, 4);
    }
}

} // namespace

void holder(const Canvas& on) {
    if (on.view.holder.state == ItemState::hidden) {
        return;
    }
    on.view.holder.flap ? flap_holder(on) : pad_holder(on);
}

void halo(const Canvas& on, const PartView& part) {
    if (part.glow < 0.02) {
        return;
    }
    const double radius = 5.0 + 11.0 * std::sqrt(part.glow);
    const float peak = static_cast<float>(0.35 + 0.65 * part.glow);
    on.pen.halo(on.to(part.at_mm), on.px(radius), glow_of(on.theme, part.tint), peak);
}

void part(const Canvas& on, const PartView& part) {
    part.resistor ? resistor(on, part) : led(on, part);
}

void pill(const Canvas& on, const PartView& part) {
    const Theme& theme = on.theme;
    const float high = on.px(part.pill_size_mm.y);
    const Rect box = around(on.to(part.pill_mm), on.px(part.pill_size_mm.x), high);
    const bool now = part.state == ItemState::now;
    on.pen.fill(box, now ? theme.lamp : theme.panel, high / 2);
    on.pen.outline(box, now ? theme.lamp_dk : theme.edge, 1.0f, high / 2);
    const TextStyle style{on.look.label_em, on.look.label_em * 1.3f, Weight::Bold};
    on.pen.text_in(box, part.id, style, now ? theme.on_lamp : theme.ink);
}

} // namespace lanternleaf::layers
