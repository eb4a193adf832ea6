// The card view's order of drawing, and its lowest layers: sheet, picture, ruler, foam.
#include "paint/board.h"

#include "paint/board_layers.h"

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <string>

#include <imgui.h>

namespace lanternleaf {

namespace layers {

namespace {

constexpr double kCover_mm = 3.4;
constexpr int kFibres = 46;

/// A fixed sequence of fractions, so that the paper's fibres are the same in every frame and on every
/// machine.
double fraction(std::uint32_t& state) {
    state = state * 1664525u + 1013904223u;
    return static_cast<double>(state >> 8) / 16777216.0;
}

Rect sheet_rect(const Canvas& on) {
    const Point a = on.to(Vec2{0, 0});
    const Point b = on.to(on.view.sheet_mm);
    const float left = std::min(a.x, b.x);
    return {left, a.y, std::abs(b.x - a.x), b.y - a.y};
}

void picture(const Canvas& on) {
    if (!on.view.art || on.look.art == nullptr) {
        return;
    }
    const Point a = on.to(on.view.art->at_mm);
    const double high = on.view.art->width_mm * static_cast<double>(on.look.art_ratio);
    const Point b = on.to(on.view.art->at_mm + Vec2{on.view.art->width_mm, high});
    const Colour c = on.theme.pencil;
    // Corners follow the viewport: when the card is seen from the front the picture turns with it.
    on.pen.list().AddImage(static_cast<ImTextureID>(on.look.art), {a.x, a.y}, {b.x, b.y}, {0, 0}, {1, 1},
                           IM_COL32(c.r, c.g, c.b, c.a));
}

void creases(const Canvas& on) {
    for (const FoldLine& crease : on.view.creases) {
        const Point line[] = {on.to(crease.from_mm), on.to(crease.to_mm)};
        on.pen.dashed(line, on.theme.edge, 1.5f, {7, 3, 1.5f, 3});
    }
    for (const Keepout& keepout : on.view.keepouts) {
        const std::vector<Point> outline = on.to(keepout.outline_mm);
        on.pen.fill_polygon(outline, faded(on.theme.table, 0.8f));
        on.pen.dashed(outline, on.theme.edge, 1.5f, {4, 4}, 0, true);
    }
}

} // namespace

void paper(const Canvas& on) {
    const Theme& theme = on.theme;
    const Rect sheet = sheet_rect(on);
    const float cover = on.px(kCover_mm);
    on.pen.shadow(sheet, 2, Lift::Sheet);
    if (on.look.cover) {
        const bool right = on.at.mirrored;
        const float spine = right ? sheet.right() : sheet.x;
        const float outer = right ? spine + cover : spine - cover;
        const Point sliver[] = {
            {outer, sheet.y + 4}, {spine, sheet.y}, {spine, sheet.bottom()}, {outer, sheet.bottom() + 4}};
        on.pen.fill_convex(sliver, mixed(theme.sheet, theme.sheet_edge, 0.22f));
        on.pen.stroke(sliver, theme.sheet_edge, 1.0f, true);
    }
    on.pen.fill(sheet, theme.sheet, 2);
    std::uint32_t seed = 20261125u;
    const Colour fibre = faded(theme.sheet_edge, theme.night ? 0.30f : 0.42f);
    for (int i = 0; i < kFibres; ++i) {
        const Vec2 at{fraction(seed) * on.view.sheet_mm.x, fraction(seed) * on.view.sheet_mm.y};
        const Vec2 way = direction(fraction(seed) * 180.0) * (0.6 + 1.1 * fraction(seed));
        on.pen.line(on.to(at), on.to(at + way), fibre, 1.0f);
    }
    picture(on);
    creases(on);
    on.pen.outline(sheet, theme.sheet_edge, 1.0f, 2);
    if (on.look.cover) {
        const float spine = on.at.mirrored ? sheet.right() : sheet.x;
        const Point line[] = {{spine, sheet.y}, {spine, sheet.bottom()}};
        on.pen.dashed(line, theme.edge, 1.5f, {7, 3, 1.5f, 3});
    }
}

void ruler(const Canvas& on) {
    if (!on.look.ruler) {
        return;
    }
    const Rect sheet = sheet_rect(on);
    const TextStyle style{on.look.note_em, on.look.note_em * 1.3f, Weight::Regular};
    const int ticks = static_cast<int>(std::floor(on.view.sheet_mm.x / 5.0));
    // Numbers stand every 20 mm, or farther apart where they would touch.
    const float number = on.pen.fonts().width("000", style) + 10;
    const int every = on.px(20.0) >= number ? 20 : 40;
    for (int i = 0; i <= ticks; ++i) {
        const int mm = i * 5;
        const float x = on.pen.crisp(on.to(Vec2{static_cast<double>(mm), 0}).x);
        const float high = mm % 20 == 0 ? 8.0f : mm % 10 == 0 ? 6.0f : 3.0f;
        on.pen.line({x, sheet.y - 5 - high}, {x, sheet.y - 5}, on.theme.ink2, 1.0f);
        if (mm % every == 0) {
            char text[16];
            const bool last = mm + every > static_cast<int>(on.view.sheet_mm.x);
            std::snprintf(text, sizeof text, "%d", mm);
            const float wide = on.pen.fonts().width(text, style);
            const float y = sheet.y - 15 - style.lead;
            on.pen.text({x - wide / 2, y}, text, style, on.theme.ink2);
            if (last) {
                on.pen.text({x + wide / 2 + 4, y}, "mm", style, on.theme.ink2);
            }
        }
    }
}

void foam(const Canvas& on) {
    if (!on.view.foam || on.view.foam_state == ItemState::later || on.view.foam_state == ItemState::hidden) {
        return;
    }
    constexpr double kBorder_mm = 5.0;
    const Theme& theme = on.theme;
    const Vec2 sheet = on.view.sheet_mm;
    const bool now = on.view.foam_state == ItemState::now;
    const Colour fill = mixed(theme.sheet, theme.patch, theme.night ? 0.7f : 0.6f);
    for (const Edge edge : on.view.foam->edges) {
        Vec2 from{0, 0};
        Vec2 to = sheet;
        // Top and bottom run through; the sides stand between them.
        switch (edge) {
        case Edge::top:
            to.y = kBorder_mm;
            break;
        case Edge::bottom:
            from.y = sheet.y - kBorder_mm;
            break;
        case Edge::left:
            from.y = kBorder_mm;
            to = {kBorder_mm, sheet.y - kBorder_mm};
            break;
        case Edge::right:
            from = {sheet.x - kBorder_mm, kBorder_mm};
            to.y = sheet.y - kBorder_mm;
            break;
        }
        const Point a = on.to(from);
        const Point b = on.to(to);
        const Rect box{std::min(a.x, b.x), a.y, std::abs(b.x - a.x), b.y - a.y};
        on.pen.fill(box, faded(fill, now ? 0.7f : 1.0f));
        int row = 0;
        for (double y = from.y + 1.0; y < to.y; y += 1.0, ++row) {
            for (double x = from.x + (row % 2 == 0 ? 1.0 : 2.0); x < to.x; x += 2.0) {
                const Point dot = on.to(Vec2{x, y});
                on.pen.fill(around(dot, 1.5f, 1.5f), faded(theme.patch_ln, 0.55f));
            }
        }
        if (now) {
            on.pen.outline(box, theme.lamp_dk, 2.0f);
        } else {
            on.pen.outline(box, faded(theme.patch_ln, 0.8f), 1.0f);
        }
    }
}

} // namespace layers

void draw_board(Pen& pen, const Theme& theme, const BoardView& view, const Viewport& viewport,
                const BoardLook& look) {
    const layers::Canvas on{pen, theme, view, viewport, look};
    pen.push_clip(viewport.area);
    layers::paper(on);
    layers::ruler(on);
    layers::foam(on);
    // What lies, in the order it was laid, except the strip the hands are at: the halo goes under that one.
    std::size_t next_patch = 0;
    const auto patches_below = [&](int laid_index) {
        while (next_patch < view.patches.size() && view.patches[next_patch].laid_index < laid_index) {
            layers::patch(on, view.patches[next_patch++]);
        }
    };
    const StripView* active = nullptr;
    for (const StripView& strip : view.strips) {
        patches_below(strip.laid_index);
        if (strip.active) {
            active = &strip;
        } else {
            layers::strip(on, strip);
        }
    }
    patches_below(1 << 30);
    for (const StripView& strip : view.strips) {
        layers::strip_later(on, strip);
    }
    layers::now_halo(on);
    if (active != nullptr) {
        layers::strip(on, *active);
    }
    for (const JointView& joint : view.joints) {
        layers::joint(on, joint);
    }
    layers::holder(on);
    layers::now_run(on);
    if (look.halos) {
        for (const PartView& part : view.parts) {
            layers::halo(on, part);
        }
    }
    for (const PartView& part : view.parts) {
        layers::part(on, part);
    }
    if (look.labels) {
        for (const PartView& part : view.parts) {
            layers::pill(on, part);
        }
    }
    layers::now_points(on);
    layers::marks(on);
    pen.pop_clip();
}

} // namespace lanternleaf
