#include "screens/board_panel.h"

#include "controls/button.h"
#include "paint/board.h"

#include <cmath>

namespace lanternleaf {

namespace {

constexpr float kChevronTravel_s = 1.2f; ///< one pitch
constexpr double kChevronLast_s = 6.0;   ///< then they stand still

Vec2 sheet_size(const Card& card) {
    return {card.sheet.width_mm, card.sheet.height_mm};
}

// Drag, pinch, wheel and double tap on the card, as a new camera.
void take_gestures(Screen& screen, const Viewport& viewport, Vec2 sheet_mm) {
    Ui& ui = screen.ui;
    BoardCamera camera = screen.state.camera;
    bool moved = false;
    const auto zoom_by = [&](Point at, double factor) {
        camera.centre_mm = centre_for_zoom(viewport, at, factor);
        camera.zoom = std::clamp(camera.zoom * factor, kLeastZoom, kMostZoom);
        moved = true;
    };
    if (const Pinch* pinch = ui.pinch("board")) {
        zoom_by(pinch->at, static_cast<double>(pinch->scale));
    } else if (const Drag* drag = ui.drag("board"); drag != nullptr && camera.zoom > kLeastZoom) {
        camera.centre_mm = centre_for_pan(viewport, drag->move);
        moved = true;
    }
    const Point wheel = ui.wheel("board");
    if (wheel.y != 0.0f) {
        zoom_by(ui.in.hovering ? ui.in.hover : viewport.area.centre(),
                std::pow(1.15, static_cast<double>(wheel.y)));
    }
    if (ui.double_tapped("board")) {
        camera.zoom = kLeastZoom;
        camera.centre_mm = sheet_mm * 0.5;
        moved = true;
    }
    if (moved) {
        screen.say(command::MoveCamera{camera});
    }
}

// Chevrons travel for a few seconds after the move changed, then rest.
float chevron_phase(Screen& screen, const BoardWish& wish) {
    Ui& ui = screen.ui;
    if (!wish.progress.moving || ui.reduced_motion || wish.progress.strip < 0) {
        return 0.0f;
    }
    // Every other move glides the other way, so that each new move starts the travel afresh.
    const float goal = static_cast<float>(wish.progress.number & 1);
    const float ran =
        std::abs(ui.glide("board/chevrons", goal, static_cast<float>(kChevronLast_s)) - (1.0f - goal));
    if (ran >= 1.0f) {
        return 0.0f;
    }
    const float seconds = ran * static_cast<float>(kChevronLast_s);
    return std::fmod(seconds / kChevronTravel_s, 1.0f);
}

} // namespace

void draw_board_panel(Screen& screen, const Rect& area, const BoardWish& wish) {
    Ui& ui = screen.ui;
    const BoardCamera& camera = screen.state.camera;
    const Vec2 sheet_mm = sheet_size(*wish.card);
    const Vec2 centre = camera.zoom > kLeastZoom ? camera.centre_mm : sheet_mm * 0.5;
    const Viewport viewport = looking_at(area, sheet_mm, camera.zoom, centre, camera.mirrored);
    BoardOptions options;
    options.words = ui.words;
    options.ppm = viewport.ppm;
    options.label_em = static_cast<double>(ui.m.type(Type::CardLabel).size);
    options.note_em = static_cast<double>(ui.m.type(Type::CardNote).size);
    options.positive = camera.positive;
    options.negative = camera.negative;
    options.picture = camera.picture;
    options.glow = wish.glow;
    options.marks = wish.marks;
    const BoardView view = make_board_view(*wish.card, *wish.parts, *wish.conductors, wish.progress, options);

    BoardLook look;
    look.label_em = static_cast<float>(options.label_em);
    look.note_em = static_cast<float>(options.note_em);
    look.chevrons = chevron_phase(screen, wish);
    if (view.art && camera.picture) {
        const Picture art = screen.pictures.pencil(wish.card_folder + "/" + view.art->file);
        look.art = art.texture;
        look.art_ratio = art.w > 0 ? art.h / art.w : 1.0f;
    }
    ui.add({.name = "board",
            .role = Role::Canvas,
            .label = ui.words("board.card"),
            .rect = area,
            .drag = camera.zoom > kLeastZoom ? DragAxis::Both : DragAxis::None});
    draw_board(ui.pen(), ui.theme(), view, viewport, look);
    for (const PartView& part : view.parts) {
        const Point at = viewport.to_px(part.at_mm);
        if (area.holds(at)) {
            ui.add({.name = part.target, .role = Role::Spot, .label = part.id, .rect = around(at, 40, 40)});
        }
    }
    take_gestures(screen, viewport, sheet_mm);
}

float draw_board_tools(Screen& screen, const Rect& row, bool brief) {
    brief = brief || screen.state.settings.kids; // large buttons: fewer of them, and pictures say enough
    Ui& ui = screen.ui;
    BoardCamera camera = screen.state.camera;
    const float side = ui.m.target;
    const float gap = 10;
    float x = row.x;
    const auto square = [&](const char* name, Icon icon, const std::string& spoken) {
        const Rect r{x, row.centre().y - side / 2, side, side};
        x += side + gap;
        return icon_button(ui, name, r, {.icon = icon, .spoken = spoken});
    };
    const auto worded = [&](const char* name, Icon icon, const std::string& label, bool selected) {
        const ButtonLook look{.label = label, .icon = icon, .selected = selected};
        const float width = button_width(ui, look);
        const Rect r{x, row.centre().y - side / 2, width, side};
        x += width + gap;
        return button(ui, name, r, look);
    };
    bool changed = false;
    if (!brief) {
        if (square("board/zoom-out", Icon::ZoomOut, ui.words("board.smaller"))) {
            camera.zoom = std::max(kLeastZoom, camera.zoom / 1.4);
            changed = true;
        }
        if (square("board/zoom-in", Icon::ZoomIn, ui.words("board.larger"))) {
            camera.centre_mm = camera.zoom > kLeastZoom
                                   ? camera.centre_mm
                                   : Vec2{screen.state.build->record.card.sheet.width_mm / 2,
                                          screen.state.build->record.card.sheet.height_mm / 2};
            camera.zoom = std::min(kMostZoom, camera.zoom * 1.4);
            changed = true;
        }
    }
    if (square("board/fit", Icon::Fit, ui.words("board.whole_card"))) {
        camera.zoom = kLeastZoom;
        changed = true;
    }
    const bool front = brief ? square("board/front", Icon::Flip, ui.words("board.from_front"))
                             : worded("board/front", Icon::Flip, ui.words("board.front"), camera.mirrored);
    if (front) {
        camera.mirrored = !camera.mirrored;
        changed = true;
    }
    const bool picture =
        brief ? square("board/picture", Icon::Layers, ui.words("board.picture"))
              : worded("board/picture", Icon::Layers, ui.words("board.picture"), camera.picture);
    if (picture) {
        camera.picture = !camera.picture;
        changed = true;
    }
    if (square("board/light", Icon::Bulb, ui.words("board.light"))) {
        screen.say(command::OpenLight{});
    }
    if (changed) {
        screen.say(command::MoveCamera{camera});
    }
    return x - gap - row.x;
}

void draw_legend(Screen& screen, const Rect& row, bool moving, bool fabric) {
    Ui& ui = screen.ui;
    Pen& pen = ui.pen();
    const Theme& theme = ui.theme();
    const TextStyle style = ui.m.type(Type::Small);
    float x = row.x;
    const float y = row.centre().y;
    enum class Sample { plus, minus, now, later };
    const auto entry = [&](Sample kind, const std::string& label) {
        const float width = 42 + 9 + ui.fonts().width(label, style);
        if (x + width > row.right()) {
            return;
        }
        const Rect sample{x, y - 9, 42, 18};
        const Colour tape = fabric ? theme.ag : theme.cu;
        switch (kind) {
        case Sample::plus:
        case Sample::minus: {
            const bool plus = kind == Sample::plus;
            pen.fill(sample, plus ? theme.plus : theme.minus, 0);
            pen.fill(sample.shrunk(0, 2.5f), tape, 0);
            for (const float at : {12.0f, 30.0f}) {
                const Colour ink = plus ? theme.plus_dk : theme.minus;
                pen.line({x + at - 4, y}, {x + at + 4, y}, ink, 2);
                if (plus) {
                    pen.line({x + at, y - 4}, {x + at, y + 4}, ink, 2);
                }
            }
            break;
        }
        case Sample::now:
            pen.fill({x, y - 11, 44, 22}, theme.lamp, 11);
            for (const float at : {12.0f, 21.0f, 30.0f}) {
                const Point points[] = {{x + at, y - 5}, {x + at + 5, y}, {x + at, y + 5}};
                pen.stroke(points, theme.on_lamp, 2.4f, false, true);
            }
            break;
        case Sample::later: {
            const Point upper[] = {{x, y - 7}, {x + 42, y - 7}};
            const Point lower[] = {{x, y + 7}, {x + 42, y + 7}};
            pen.dashed(upper, theme.plus, 1.4f, {5, 4});
            pen.dashed(lower, theme.plus, 1.4f, {5, 4});
            break;
        }
        }
        pen.text_in({x + 51, row.y, width, row.h}, label, style, theme.ink, Align::Left);
        x += width + 20;
    };
    entry(Sample::plus, ui.words("board.positive"));
    entry(Sample::minus, ui.words("board.negative"));
    if (moving) {
        entry(Sample::now, ui.words("board.now"));
        entry(Sample::later, ui.words("board.later"));
    }
}

} // namespace lanternleaf
