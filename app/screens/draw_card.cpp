// The plan under the hand: the card view, and what taps, drags, pinches, wheel and keys on it mean.
#include "circuit/seen.h"
#include "paint/board.h"
#include "screens/draw.h"
#include "view/board_view.h"
#include "view/finding_rows.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kNudge_mm = 0.5;
constexpr const char* kBoard = "board";

void take_camera(Screen& screen, const Viewport& viewport) {
    Ui& ui = screen.ui;
    BoardCamera camera = screen.state.camera;
    bool moved = false;
    const auto zoom_by = [&](Point at, double factor) {
        camera.centre_mm = centre_for_zoom(viewport, at, factor);
        camera.zoom = std::clamp(camera.zoom * factor, kLeastZoom, kMostZoom);
        moved = true;
    };
    if (const Pinch* pinch = ui.pinch(kBoard)) {
        zoom_by(pinch->at, static_cast<double>(pinch->scale));
        camera.centre_mm =
            camera.centre_mm - (viewport.to_mm(pinch->at + pinch->move) - viewport.to_mm(pinch->at));
    } else if (const Drag* drag = ui.drag(kBoard);
               drag != nullptr && !screen.state.draw->drag && camera.zoom > kLeastZoom) {
        camera.centre_mm = centre_for_pan(viewport, drag->move);
        moved = true;
    }
    const Point wheel = ui.wheel(kBoard);
    if (wheel.y != 0.0f) {
        zoom_by(ui.in.hovering ? ui.in.hover : viewport.area.centre(),
                std::pow(1.15, static_cast<double>(wheel.y)));
    }
    if (moved) {
        screen.say(command::MoveCamera{camera});
    }
}

void take_touches(Screen& screen, const Viewport& viewport, const std::vector<std::string>& spots) {
    Ui& ui = screen.ui;
    const double reach_mm = static_cast<double>(ui.m.target) / 2.0 / viewport.ppm;
    const bool tapped =
        ui.tapped(kBoard) ||
        std::any_of(spots.begin(), spots.end(), [&](const std::string& spot) { return ui.tapped(spot); });
    const Drag* drag = ui.drag(kBoard);
    // A slow press that drifted a little is a tap for a finger; a mouse is steady and means the drag.
    const bool drifted = tapped && drag != nullptr && !ui.in.hovering;
    if (drag != nullptr) {
        if (drag->started) {
            act(screen, draw::DragStart{viewport.to_mm(drag->start), reach_mm});
        }
        if (drag->started || screen.state.draw->drag) {
            if (!drifted) {
                act(screen, draw::DragTo{viewport.to_mm(drag->at), reach_mm});
            }
            if (drag->ended) {
                act(screen, draw::DragEnd{!drifted});
            }
        }
    } else if (screen.state.draw->drag) {
        act(screen, draw::DragEnd{false}); // the finger was lost
    }
    if (tapped && (drag == nullptr || drifted)) {
        act(screen, draw::Tap{viewport.to_mm(ui.tap_at()), reach_mm});
    }
}

void take_keys(Screen& screen) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    if (screen.state.sheet != SheetKind::none || !ui.typing_in.empty()) {
        return;
    }
    const bool movable = !draw.selected.empty() && draw.selected != "foam";
    ui.arrows_in = movable ? kBoard : "";
    const std::pair<Key, Vec2> arrows[] = {{Key::Left, {-kNudge_mm, 0}},
                                           {Key::Right, {kNudge_mm, 0}},
                                           {Key::Up, {0, -kNudge_mm}},
                                           {Key::Down, {0, kNudge_mm}}};
    for (const auto& [key, by] : arrows) {
        if (movable && ui.take_key(key)) {
            act(screen, draw::Nudge{by});
        }
    }
    if (ui.take_key(Key::Undo)) {
        act(screen, draw::Undo{});
    }
    if (ui.take_key(Key::Redo)) {
        act(screen, draw::Redo{});
    }
    if (!draw.selected.empty() && (ui.take_key(Key::Delete) || ui.take_key(Key::Backspace))) {
        act(screen, draw::RemoveSelected{});
    }
    if (ui.take_key(Key::Escape)) {
        act(screen, draw::FinishStrip{});
        act(screen, draw::SelectPart{""});
    }
}

std::vector<BoardMark> marks_of(const DrawState& draw) {
    std::vector<BoardMark> marks;
    for (const FindingRow& row : finding_rows(draw.review.findings, draw.words)) {
        if (row.number == 0) {
            continue;
        }
        BoardMark mark;
        mark.kind = row.level == Level::problem ? MarkKind::problem : MarkKind::caution;
        mark.at_mm = draw.review.findings[static_cast<std::size_t>(row.findings.front())].at_mm;
        mark.text = std::to_string(row.number);
        marks.push_back(std::move(mark));
    }
    return marks;
}

} // namespace

void draw_plan_card(Screen& screen, const Rect& area, bool editing) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const BoardCamera& camera = screen.state.camera;
    const Vec2 sheet_mm{draw.card.sheet.width_mm, draw.card.sheet.height_mm};
    const Vec2 centre = camera.zoom > kLeastZoom ? camera.centre_mm : sheet_mm * 0.5;
    const Viewport viewport = looking_at(area, sheet_mm, camera.zoom, centre, false);

    BoardOptions options;
    options.words = ui.words;
    options.ppm = viewport.ppm;
    options.label_em = static_cast<double>(ui.m.type(Type::CardLabel).size);
    options.note_em = static_cast<double>(ui.m.type(Type::CardNote).size);
    options.positive = camera.positive;
    options.negative = camera.negative;
    options.picture = camera.picture;
    if (draw.lights) {
        for (const Light& light : draw.review.lighting.lights) {
            options.glow.push_back(seen_brightness(light.brightness));
        }
    }
    if (draw.notes) {
        options.marks = marks_of(draw);
    }
    const BoardView view = make_board_view(draw.card, draw.parts, draw.review.conductors,
                                           finished_board(draw.card, draw.review.conductors), options);
    BoardLook look;
    look.label_em = static_cast<float>(options.label_em);
    look.note_em = static_cast<float>(options.note_em);
    look.halos = draw.lights;
    if (view.art && camera.picture) {
        const Picture art = screen.pictures.pencil(draw.card_folder + "/" + view.art->file);
        look.art = art.texture;
        look.art_ratio = art.w > 0 ? art.h / art.w : 1.0f;
    }
    const bool pans = camera.zoom > kLeastZoom;
    ui.add({.name = kBoard,
            .role = Role::Canvas,
            .label = ui.words("draw.plan"),
            .rect = area,
            .drag = editing || pans ? DragAxis::Both : DragAxis::None});
    draw_board(ui.pen(), ui.theme(), view, viewport, look);
    std::vector<std::string> spots;
    for (const PartView& part : view.parts) {
        const Point at = viewport.to_px(part.at_mm);
        if (area.holds(at)) {
            ui.add({.name = part.target, .role = Role::Spot, .label = part.id, .rect = around(at, 40, 40)});
            spots.push_back(part.target);
        }
    }
    if (editing && !draw.suggested) {
        ui.pen().push_clip(area);
        draw_handles(screen, viewport);
        ui.pen().pop_clip();
        take_touches(screen, viewport, spots);
        take_keys(screen);
    }
    take_camera(screen, viewport);
}

} // namespace lanternleaf
