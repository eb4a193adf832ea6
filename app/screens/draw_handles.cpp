// What lies over the plan while it is worked on: handles of the selected thing, the run being laid, and the
// bubble with its length.
#include "drawing/sheet_marks.h"
#include "model/draw_hit.h"
#include "screens/draw.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr float kHandle = 9; ///< radius of a corner's disc
constexpr float kAim = 21;   ///< radius of the disc under the finger

void handle(Ui& ui, Point at, bool chosen) {
    ui.pen().disc(at, kHandle + 2, ui.theme().ink);
    ui.pen().disc(at, kHandle, chosen ? ui.theme().lamp : ui.theme().panel);
}

void bubble(Ui& ui, Point by, const std::string& words, const Rect& area) {
    const TextStyle style = ui.m.type(Type::Body);
    const float w = ui.fonts().width(words, style) + 24;
    const float h = style.lead + 16;
    // Beside the finger, where the hand does not cover it; turned inward at the card's edge.
    float x = by.x + kAim + 8;
    if (x + w > area.right() - 4) {
        x = by.x - kAim - 8 - w;
    }
    const float y = std::clamp(by.y - h / 2 - 6, area.y + 2, area.bottom() - h - 2);
    const Rect r{x, y, w, h};
    ui.pen().fill(r, ui.theme().night ? ui.theme().panel : ui.theme().ink, 8);
    if (ui.theme().night) {
        ui.pen().outline(r, ui.theme().edge, 1.5f, 8);
    }
    ui.pen().text_in(r, words, style, ui.theme().night ? ui.theme().ink : ui.theme().panel);
}

std::string spoken_hold(const Snap& snap, const Words& words) {
    std::string on = snap.on;
    if (on.rfind("holder", 0) == 0) {
        return words("draw.held_holder");
    }
    if (!on.empty() && on.back() == '-') {
        on = on.substr(0, on.size() - 1) + "−";
    }
    switch (snap.kind) {
    case SnapKind::straight:
        return words("draw.held_straight");
    case SnapKind::in_line:
        return words("draw.held_level", {{"place", on}});
    case SnapKind::pad:
    case SnapKind::contact:
    case SnapKind::strip:
        return words("draw.held_on", {{"place", on}});
    case SnapKind::grid:
    case SnapKind::turn:
        break;
    }
    return on;
}

void aim_disc(Ui& ui, Point at) {
    ui.pen().disc(at, kAim, faded(ui.theme().lamp_tint, 0.75f));
    ui.pen().ring(at, kAim, ui.theme().ink, 2.5f);
    ui.pen().disc(at, 6, ui.theme().ink);
}

void draw_laying(Screen& screen, const Viewport& at) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const Laying& laying = draw.laying;
    std::optional<Vec2> tip = laying.start;
    if (const Strip* strip = find_strip(draw.card, laying.strip)) {
        tip = laying.end == 1 ? strip->path_mm.back() : strip->path_mm.front();
    }
    if (laying.aim) {
        const Point p = at.to_px(laying.aim->at_mm);
        if (laying.aim->kind == SnapKind::in_line) { // a thread to what it is level with
            for (const Led& led : draw.card.leds) {
                if (laying.aim->on.rfind(led.id, 0) == 0) {
                    const Point thread[] = {p, at.to_px(led.at_mm)};
                    ui.pen().dashed(thread, ui.theme().ink2, 1.5f, {2, 4});
                }
            }
        }
        aim_disc(ui, p);
        std::string words = ui.words.mm(laying.aim->length_mm);
        const std::string hold = spoken_hold(*laying.aim, ui.words);
        words += hold.empty() ? "" : ", " + hold;
        bubble(ui, p, words, at.area);
    } else if (tip) {
        aim_disc(ui, at.to_px(*tip));
        if (laying.start) {
            bubble(ui, at.to_px(*tip), ui.words("draw.next_corner"), at.area);
        }
    }
}

void ring_round(Ui& ui, const Viewport& at, Vec2 mm, double radius_mm, float least) {
    const float r = std::max(least, at.px(radius_mm));
    ui.pen().ring(at.to_px(mm), r + 2, ui.theme().panel, 5);
    ui.pen().ring(at.to_px(mm), r, ui.theme().ink, 3);
}

/// A crease or a place to keep clear: its line, and where its corners can be held.
void draw_mark(Screen& screen, const Viewport& at, const SheetMark& mark) {
    Ui& ui = screen.ui;
    const Sheet& sheet = screen.state.draw->card.sheet;
    const bool clear = mark.kind == SheetMark::Kind::clear;
    std::vector<Point> line;
    if (clear) {
        for (const Vec2 corner : sheet.keepouts[mark.index].outline_mm) {
            line.push_back(at.to_px(corner));
        }
    } else {
        line = {at.to_px(sheet.folds[mark.index].from_mm), at.to_px(sheet.folds[mark.index].to_mm)};
    }
    ui.pen().stroke(line, faded(ui.theme().lamp, 0.55f), 6, clear, true);
    for (std::size_t i = 0; clear && i < line.size(); ++i) {
        handle(ui, line[i], screen.state.draw->corner == static_cast<int>(i));
    }
    if (screen.state.draw->drag && screen.state.draw->drag->edit) {
        bubble(ui, at.to_px(place_of_mark(sheet, mark)), words_of_mark(sheet, mark, ui.words), at.area);
    }
}

void draw_selected(Screen& screen, const Viewport& at) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const Strip* strip = find_strip(draw.card, draw.selected);
    if (strip != nullptr) {
        std::vector<Point> path;
        for (const Vec2 corner : strip->path_mm) {
            path.push_back(at.to_px(corner));
        }
        ui.pen().stroke(path, faded(ui.theme().lamp, 0.55f), 4, false, true);
        for (std::size_t i = 0; i < path.size(); ++i) {
            handle(ui, path[i], draw.corner == static_cast<int>(i));
        }
        return;
    }
    if (const std::optional<SheetMark> mark = find_mark(draw.card.sheet, draw.selected)) {
        draw_mark(screen, at, *mark);
        return;
    }
    const std::optional<Vec2> place = place_of(draw.card, draw.selected);
    if (!place) {
        return;
    }
    double radius = 8.0;
    if (draw.selected == kHolderId) {
        radius = 11.0;
    }
    for (const Laid& laid : draw.card.laid) {
        const Patch* patch = std::get_if<Patch>(&laid);
        if (patch != nullptr && patch->id == draw.selected) {
            radius = length(patch->size_mm) / 2.0 + 1.0;
        }
    }
    ring_round(ui, at, *place, radius, 26);
    if (draw.drag && draw.drag->edit && draw.drag->hit.id == draw.selected) {
        const std::string words = screen.ui.words.mm(place->x) + " × " + screen.ui.words.mm(place->y);
        bubble(ui, at.to_px(*place), words, at.area);
    }
}

// The drag of a corner or a run: how long the runs beside it are now.
void draw_lengths(Screen& screen, const Viewport& at) {
    const DrawState& draw = *screen.state.draw;
    const Strip* strip = draw.drag ? find_strip(draw.card, draw.drag->hit.id) : nullptr;
    if (strip == nullptr || !draw.drag->edit) {
        return;
    }
    if (draw.drag->hit.corner >= 0) {
        const auto place = static_cast<std::size_t>(draw.drag->hit.corner);
        const Vec2 corner = strip->path_mm[place];
        const Vec2 other = place > 0 ? strip->path_mm[place - 1] : strip->path_mm[1];
        bubble(screen.ui, at.to_px(corner), screen.ui.words.mm(distance(corner, other)), at.area);
    }
}

void draw_looked_at(Screen& screen, const Viewport& at) {
    const DrawState& draw = *screen.state.draw;
    if (draw.shown_finding >= 0 && draw.shown_finding < static_cast<int>(draw.review.findings.size())) {
        const Vec2 place = draw.review.findings[static_cast<std::size_t>(draw.shown_finding)].at_mm;
        screen.ui.pen().ring(at.to_px(place), 34, screen.ui.theme().plum, 4);
    }
}

} // namespace

void draw_handles(Screen& screen, const Viewport& at) {
    draw_looked_at(screen, at);
    draw_selected(screen, at);
    draw_laying(screen, at);
    draw_lengths(screen, at);
}

} // namespace lanternleaf
