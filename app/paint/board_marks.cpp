// What stands over the card: the run under way, where it starts, the fold to make, suspects and findings.
#include "paint/board_layers.h"

#include "paint/curve.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace lanternleaf::layers {

namespace {

TextStyle bold(float em) {
    return {em, em * 1.3f, Weight::Bold};
}

TextStyle regular(float em) {
    return {em, em * 1.3f, Weight::Regular};
}

void badge(const Canvas& on, Point at, float radius, Colour fill, Colour ring, Colour ink,
           const std::string& text, float em) {
    on.pen.disc(at, radius, fill);
    on.pen.ring(at, radius, ring, 2.0f);
    on.pen.text_in(around(at, 2 * radius, 2 * radius), text, bold(em), ink);
}

/// Keeps a box inside the area the card may use.
Rect kept(const Canvas& on, Rect box) {
    const Rect area = on.at.area.shrunk(4);
    box.x = std::clamp(box.x, area.x, std::max(area.x, area.right() - box.w));
    box.y = std::clamp(box.y, area.y, std::max(area.y, area.bottom() - box.h));
    return box;
}

struct MarkColours {
    Colour front;
    Colour tint;
    Colour on_front;
};

MarkColours colours_of(const Theme& theme, MarkKind kind) {
    switch (kind) {
    case MarkKind::caution:
        return {theme.ochre, theme.ochre_tint, theme.panel};
    case MarkKind::note:
        return {theme.blue, theme.blue_tint, theme.on_blue};
    case MarkKind::problem:
    case MarkKind::suspect:
        break;
    }
    return {theme.plum, theme.plum_tint, theme.on_plum};
}

void callout(const Canvas& on, const BoardMark& mark, Point at, float radius) {
    const Fonts& fonts = on.pen.fonts();
    const TextStyle title = bold(on.look.label_em);
    const TextStyle caption = regular(on.look.label_em);
    const float wide = std::max(fonts.width(mark.title, title), fonts.width(mark.caption, caption)) + 12;
    const float high = mark.caption.empty() ? title.lead + 8 : title.lead + caption.lead + 8;
    // On the side with more room, so that the box hides nothing of the edge it points at.
    const Rect area = on.at.area;
    const float dx = at.x < area.centre().x + area.w * 0.3f ? 1.0f : -1.0f;
    const float dy = at.y < area.centre().y ? 1.0f : -1.0f;
    Rect box{at.x + dx * (radius + 10) - (dx < 0 ? wide : 0),
             at.y + dy * (radius * 0.9f) - (dy < 0 ? high : 0), wide, high};
    box = kept(on, box);
    const Point way{dx * 0.71f, dy * 0.71f};
    on.pen.line(at + way * radius,
                {dx > 0 ? box.x + 4 : box.right() - 4, dy > 0 ? box.y + 4 : box.bottom() - 4}, on.theme.plum,
                2.5f, true);
    on.pen.fill(box, on.theme.panel, 7);
    on.pen.outline(box, on.theme.plum, 2.0f, 7);
    Rect rows = box.shrunk(6, 4);
    on.pen.text_in(rows.cut_top(title.lead), mark.title, title, on.theme.plum);
    if (!mark.caption.empty()) {
        on.pen.text_in(rows, mark.caption, caption, on.theme.ink);
    }
}

void mark(const Canvas& on, const BoardMark& mark) {
    const MarkColours colours = colours_of(on.theme, mark.kind);
    const Point at = on.to(mark.at_mm);
    const float radius = on.px(5.1, 18.0f);
    if (mark.text.empty() && mark.title.empty()) { // a place without a number of its own: a pad not reached
        on.pen.dashed_ring(at, on.px(4.6, 16.0f), colours.front, 3.0f, 6, 4);
        return;
    }
    const float sweep = std::clamp(on.look.ring, 0.0f, 1.0f);
    if (sweep >= 1) {
        on.pen.ring(at, radius + 1.5f, on.theme.sheet, 7.0f);
        on.pen.ring(at, radius, colours.front, 3.5f);
    } else {
        on.pen.arc(at, radius - 1.75f, -kPi / 2, -kPi / 2 + 2 * kPi * sweep, colours.front, 3.5f, true);
    }
    const Point corner{at.x + radius * 0.78f, at.y - radius * 0.78f};
    if (mark.kind == MarkKind::suspect && !mark.text.empty()) {
        const Rect tile = around(corner + Point{6, -6}, 26, 26);
        on.pen.fill(tile, mark.first ? colours.front : on.theme.panel, 7);
        on.pen.outline(tile, colours.front, 2.0f, 7);
        on.pen.text_in(tile, mark.text, bold(on.look.label_em),
                       mark.first ? colours.on_front : colours.front);
    } else if (!mark.text.empty()) {
        badge(on, corner + Point{4, -4}, 13, colours.front, on.theme.panel, colours.on_front, mark.text,
              on.look.label_em);
    }
    if (!mark.title.empty()) {
        callout(on, mark, at, radius);
    }
}

} // namespace

void now_halo(const Canvas& on) {
    if (on.view.halo_mm.size() < 2) {
        return;
    }
    const std::vector<Point> path = on.to(on.view.halo_mm);
    on.pen.fill_polygon(band(path, on.px(on.view.halo_width_mm) / 2), faded(on.theme.lamp, 0.55f));
}

void now_run(const Canvas& on) {
    if (!on.view.run) {
        return;
    }
    const RunMark& run = *on.view.run;
    const std::vector<Point> path = on.to(run.path_mm);
    const float half = on.px(run.width_mm) / 2 - 1.1f;
    const std::vector<Point> left = beside(path, -half);
    const std::vector<Point> right = beside(path, half);
    for (std::size_t i = 1; i < path.size(); ++i) {
        on.pen.quad(left[i - 1], left[i], right[i], right[i - 1], faded(on.theme.sheet, 0.6f));
    }
    const Colour edge =
        run.side == Side::negative && on.theme.night ? on.theme.ink : side_edge(on.theme, run.side);
    on.pen.dashed(left, edge, 2.2f, {7, 4});
    on.pen.dashed(right, edge, 2.2f, {7, 4});
    const float pitch = on.px(6.2, 15.0f);
    const float arm = on.px(1.5, 4.2f);
    const float total = path_length(path);
    const float shift = std::fmod(std::max(0.0f, on.look.chevrons), 1.0f) * pitch;
    for (float far = pitch * 0.75f + shift; far < total - arm * 0.6f; far += pitch) {
        const PathPlace place = place_along(path, far);
        const Point d = place.direction;
        const Point s{-d.y, d.x};
        const Point tip = place.at + d * (arm * 0.5f);
        const Point tail = place.at - d * (arm * 0.5f);
        const Point chevron[] = {tail - s * arm, tip, tail + s * arm};
        on.pen.stroke(chevron, on.theme.ink, 2.6f, false, true);
    }
}

void now_points(const Canvas& on) {
    const Theme& theme = on.theme;
    if (on.view.start) {
        const Point at = on.to(on.view.start->at_mm);
        const float radius = on.px(2.5, 8.0f);
        if (on.look.labels) {
            const TextStyle style = bold(on.look.label_em);
            const float wide = on.pen.fonts().width(on.view.start->label, style) + 14;
            const float high = on.px(on.view.start->pill_size_mm.y);
            const Rect box = kept(on, around(on.to(on.view.start->pill_mm), wide, high));
            on.pen.line(at, box.centre(), theme.on_lamp, 2.0f);
            on.pen.fill(box, theme.lamp, high / 2);
            on.pen.outline(box, theme.on_lamp, 2.0f, high / 2);
            on.pen.text_in(box, on.view.start->label, style, theme.on_lamp);
        }
        on.pen.disc(at, radius, theme.lamp);
        on.pen.ring(at, radius, theme.on_lamp, 2.6f);
        on.pen.disc(at, radius * 0.36f, theme.on_lamp);
    }
    if (on.view.fold) {
        const FoldToMake& fold = *on.view.fold;
        const Point at = on.to(fold.at_mm);
        const float radius = on.px(6.4);
        on.pen.ring(at, radius + 3.0f, theme.lamp, 3.0f);
        on.pen.ring(at, radius, theme.ink, 3.0f);
        const Point outside = on.at.way(fold.outside);
        on.pen.line(at + outside * (radius * 0.55f), at - outside * (radius * 0.55f), theme.ink, 3.0f, true);
        if (fold.number > 0) {
            badge(on, on.to(fold.badge_mm), 17, theme.lamp, theme.night ? theme.on_lamp : theme.ink,
                  theme.on_lamp, std::to_string(fold.number), on.look.label_em + 4);
        }
    }
    if (on.view.place) {
        const Point at = on.to(*on.view.place);
        const float radius = on.px(6.4);
        on.pen.ring(at, radius + 3.0f, theme.lamp, 3.0f);
        on.pen.ring(at, radius, theme.ink, 2.6f);
    }
}

void marks(const Canvas& on) {
    for (const BoardMark& each : on.view.marks) {
        mark(on, each);
    }
}

} // namespace lanternleaf::layers
