// The tool bar and the tray of the Draw place.
#include "controls/button.h"
#include "controls/chip.h"
#include "controls/panel.h"
#include "screens/draw.h"
#include "view/board_shapes.h"
#include "view/part_words.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace lanternleaf {

namespace {

// "10:42": the moment of saving by the device's clock, from the host's local time and how long ago it was.
std::string clock_of(Screen& screen, std::int64_t at_s) {
    const std::string now = screen.ui.host().local_time();
    if (now.size() < 16) {
        return "";
    }
    const int minutes = std::atoi(now.substr(11, 2).c_str()) * 60 + std::atoi(now.substr(14, 2).c_str());
    const auto ago = static_cast<int>((screen.around.now_s - at_s) / 60);
    const int then = ((minutes - ago) % 1440 + 1440) % 1440;
    char text[16];
    std::snprintf(text, sizeof text, "%d:%02d", then / 60, then % 60);
    return text;
}

std::string saved_words(Screen& screen) {
    const DrawState& draw = *screen.state.draw;
    if (!draw.saved) {
        return screen.ui.words("draw.not_saved");
    }
    return draw.saved_at_s == 0
               ? ""
               : screen.ui.words("draw.saved_at", {{"time", clock_of(screen, draw.saved_at_s)}});
}

void zoom_by(Screen& screen, double factor) {
    BoardCamera camera = screen.state.camera;
    const Sheet& sheet = screen.state.draw->card.sheet;
    if (camera.zoom <= kLeastZoom) {
        camera.centre_mm = Vec2{sheet.width_mm, sheet.height_mm} * 0.5;
    }
    camera.zoom = std::clamp(camera.zoom * factor, kLeastZoom, kMostZoom);
    screen.say(command::MoveCamera{camera});
}

/// A short strip as it will look on the card.
void draw_sample(Ui& ui, const Rect& r, Side side, bool fabric) {
    Pen& pen = ui.pen();
    const Theme& t = ui.theme();
    pen.fill(r, side == Side::positive ? t.plus : t.minus);
    const Rect metal = r.shrunk(0, 2.5f);
    pen.fill(metal, fabric ? t.ag : t.cu);
    pen.fill({metal.x, metal.centre().y - 2, metal.w, 4}, fabric ? t.ag_hi : t.cu_hi);
    for (const float share : {0.25f, 0.75f}) {
        const Point at{r.x + r.w * share, r.centre().y};
        const Colour ink = side == Side::positive ? t.plus_dk : t.minus;
        pen.line({at.x - 4.5f, at.y}, {at.x + 4.5f, at.y}, ink, 2);
        if (side == Side::positive) {
            pen.line({at.x, at.y - 4.5f}, {at.x, at.y + 4.5f}, ink, 2);
        }
    }
}

bool fabric_tape(const DrawState& draw, const std::string& tape) {
    const auto found = draw.parts.tapes.find(tape);
    return found != draw.parts.tapes.end() && is_fabric(found->second);
}

/// "Copper 5", "Warm white": few words for a tile.
std::string brief_light(const DrawState& draw, const Words& words) {
    if (draw.ohm > 0.0) {
        return words("draw.resistor");
    }
    const auto found = draw.parts.leds.find(draw.led_type);
    return capital(spoken_part(found == draw.parts.leds.end() ? draw.led_type : found->second.colour, words));
}

bool strip_tile(Screen& screen, const char* name, const Rect& r, const std::string& label, Side side,
                bool selected) {
    const DrawState& draw = *screen.state.draw;
    const bool hit =
        tool_tile(screen.ui, name, r, {.label = label, .icon = Icon::None, .selected = selected});
    const float icon = screen.ui.m.with_text(27);
    const float lead = screen.ui.m.type(Type::Small).lead;
    const float y = r.centre().y - (icon + 4 + lead) / 2;
    const float w = std::min(50.0f, r.w - 24);
    draw_sample(screen.ui, {r.centre().x - w / 2, y + icon / 2 - 9, w, 19}, side,
                fabric_tape(draw, draw.tape));
    return hit;
}

// What the tool in hand is loaded with: a tape, or a kind of light.
void draw_loaded(Screen& screen, const Rect& r) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    const bool light = draw.tool == DrawTool::light;
    const char* const name = light ? "draw/light" : "draw/tape";
    const std::string label = light ? brief_light(draw, ui.words) : capital(spoken_part(draw.tape, ui.words));
    const bool hit = offer(ui, {.name = name, .role = Role::Button, .label = label, .rect = r});
    Pen& pen = ui.pen();
    pen.fill(r, ui.pressed(name) ? ui.theme().well : ui.theme().panel, ui.m.radius_small);
    pen.dashed_outline(r, ui.theme().edge, 1.5f, ui.m.radius_small, 5, 4);
    const TextStyle small = ui.m.type(Type::Small);
    const float icon = ui.m.with_text(27);
    const float y = r.centre().y - (icon + 4 + small.lead) / 2;
    if (light) {
        draw_icon(pen, draw.ohm > 0.0 ? Icon::Ruler : Icon::Bulb, {r.centre().x, y + icon / 2}, icon,
                  ui.theme().ink);
    } else {
        const Rect swatch{r.centre().x - 25, y + icon / 2 - 10, 50, 21};
        const bool fabric = fabric_tape(draw, draw.tape);
        pen.fill(swatch, fabric ? ui.theme().ag : ui.theme().cu);
        pen.fill({swatch.x, swatch.centre().y - 2, swatch.w, 4},
                 fabric ? ui.theme().ag_hi : ui.theme().cu_hi);
    }
    pen.text({r.centre().x, y + icon + 4}, ui.fonts().fitted(label, small, r.w - 6), small, ui.theme().ink,
             Align::Centre);
    if (hit) {
        act(screen, draw::SelectPart{""}); // it is about the next one, not one that lies there
        screen.say(command::OpenSheet{light ? SheetKind::draw_light : SheetKind::draw_tape});
    }
}

} // namespace

void draw_plan_tools(Screen& screen, const Rect& row) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    ui.pen().fill(row, ui.theme().well);
    ui.pen().fill({row.x, row.bottom() - 1, row.w, 1}, ui.theme().line);
    const bool wide = ui.m.form == Form::Landscape;
    Rect inside = row.shrunk(16, 0);
    const float side = ui.m.target;
    const auto square = [&](const char* name, Icon icon, const std::string& spoken, bool enabled,
                            const std::string& reason) {
        const Rect slot = inside.cut_left(side);
        inside.cut_left(8);
        return icon_button(ui, name, around(slot.centre(), side, side),
                           {.icon = icon, .enabled = enabled, .reason = reason, .spoken = spoken});
    };
    const auto fold = [&] {
        const Rect slot = inside.cut_left(17);
        divider(ui, {slot.x + 4, row.y + 16}, {slot.x + 4, row.bottom() - 16});
    };
    if (square("draw/undo", Icon::Undo, ui.words("draw.undo"),
               draw.history.can_undo() || draw.laying.start.has_value(), ui.words("draw.no_undo"))) {
        act(screen, draw::Undo{});
    }
    if (square("draw/redo", Icon::Redo, ui.words("draw.redo"), draw.history.can_redo(),
               ui.words("draw.no_redo"))) {
        act(screen, draw::Redo{});
    }
    fold();
    if (square("draw/zoom-out", Icon::ZoomOut, ui.words("board.smaller"), true, "")) {
        zoom_by(screen, 1 / 1.4);
    }
    if (wide) {
        const std::string percent =
            std::to_string(static_cast<int>(std::lround(screen.state.camera.zoom * 100))) + "%";
        const float w = ui.fonts().width("400%", ui.m.type(Type::Body)) + 4;
        ui.pen().text_in(inside.cut_left(w), percent, ui.m.type(Type::Body), ui.theme().ink, Align::Centre);
        inside.cut_left(8);
    }
    if (square("draw/zoom-in", Icon::ZoomIn, ui.words("board.larger"), true, "")) {
        zoom_by(screen, 1.4);
    }
    if (square("draw/fit", Icon::Fit, ui.words("board.whole_card"), true, "")) {
        BoardCamera camera = screen.state.camera;
        camera.zoom = kLeastZoom;
        screen.say(command::MoveCamera{camera});
    }
    fold();

    const bool words = wide;
    const ButtonLook suggest{.label = words ? ui.words("draw.suggest_traces") : ui.words("draw.suggest"),
                             .icon = Icon::Suggest,
                             .enabled = !draw.card.leds.empty(),
                             .reason = ui.words("draw.light_first")};
    const float suggest_w = button_width(ui, suggest);
    const Rect suggest_slot = inside.cut_left(suggest_w);
    if (button(ui, "draw/suggest", around(suggest_slot.centre(), suggest_w, side), suggest)) {
        act(screen, draw::Suggest{});
    }
    inside.cut_left(8);

    // From the right: into Make, what is saved, what the whole card has.
    const int problems = draw.review.count(Level::problem);
    const bool ready = problems == 0 && !draw.card.leds.empty();
    const ButtonLook make{.label = wide ? ui.words("draw.make_this") : ui.words("draw.make"),
                          .icon = ready ? Icon::Make : Icon::Lock,
                          .enabled = ready,
                          .reason = draw.card.leds.empty()
                                        ? ui.words("draw.light_first")
                                        : ui.words("draw.problems_left", {{"n", problems}}),
                          .bold = true};
    const bool laying = draw.laying.under_way();
    const float make_w = ready && !laying ? primary_width(ui, make) : button_width(ui, make) + 8;
    const Rect make_slot = inside.cut_right(std::min(make_w, inside.w));
    const Rect make_r =
        around(make_slot.centre(), make_slot.w, ready && !laying ? std::min(ui.m.primary_h, row.h - 6) : 60);
    const bool go = ready && !laying ? primary_button(ui, "draw/make", make_r, make)
                                     : button(ui, "draw/make", make_r, make);
    if (go) {
        act(screen, draw::MakeThis{});
    }
    inside.cut_right(10);
    const std::string saved = saved_words(screen);
    const TextStyle small = ui.m.type(Type::Small);
    const float saved_w = ui.fonts().width(saved, small);
    if (square("draw/card", Icon::More, ui.words("draw.card_more"), true, "")) {
        screen.say(command::OpenSheet{SheetKind::draw_card});
    }
    if (inside.w > saved_w + 8) {
        ui.pen().text_in(inside.cut_right(saved_w), saved, small,
                         draw.saved ? ui.theme().ink2 : ui.theme().plum, Align::Right);
    }
}

void draw_tray(Screen& screen, const Rect& area, bool column) {
    const DrawState& draw = *screen.state.draw;
    constexpr int kTiles = 8;
    constexpr float kGap = 8;
    const float least = screen.ui.m.target;
    int across = column ? 1 : kTiles;
    int down = column ? kTiles : 1;
    if (column && (area.h - kGap * (kTiles - 1)) / kTiles < least) {
        across = 2; // a low window: two columns of narrower tiles
        down = kTiles / 2;
    }
    const float w = (area.w - kGap * static_cast<float>(across - 1)) / static_cast<float>(across);
    const float h = std::min(70.0f * std::max(1.0f, screen.ui.m.text_scale),
                             (area.h - kGap * static_cast<float>(down - 1)) / static_cast<float>(down));
    int place = 0;
    const auto next = [&] {
        const int at_x = place % across;
        const int at_y = place / across;
        ++place;
        return Rect{area.x + static_cast<float>(at_x) * (w + kGap),
                    area.y + static_cast<float>(at_y) * (h + kGap), w, h};
    };
    const Words& words = screen.ui.words;
    const auto tile = [&](const char* name, const std::string& label, Icon icon, DrawTool tool) {
        if (tool_tile(screen.ui, name, next(),
                      {.label = label, .icon = icon, .selected = draw.tool == tool})) {
            act(screen, draw::PickTool{tool});
        }
    };
    tile("draw/tool/select", words("draw.select"), Icon::Select, DrawTool::select);
    if (strip_tile(screen, "draw/tool/plus", next(), words("draw.strip_plus"), Side::positive,
                   draw.tool == DrawTool::strip_plus)) {
        act(screen, draw::PickTool{DrawTool::strip_plus});
    }
    if (strip_tile(screen, "draw/tool/minus", next(), words("draw.strip_minus"), Side::negative,
                   draw.tool == DrawTool::strip_minus)) {
        act(screen, draw::PickTool{DrawTool::strip_minus});
    }
    tile("draw/tool/light", words("draw.light"), Icon::Led, DrawTool::light);
    tile("draw/tool/patch", words("draw.patch"), Icon::Patch, DrawTool::patch);
    tile("draw/tool/holder", words("draw.holder"), Icon::Holder, DrawTool::holder);
    tile("draw/tool/foam", column ? words("draw.foam_edge") : words("draw.foam"), Icon::Foam, DrawTool::foam);
    draw_loaded(screen, next());
}

} // namespace lanternleaf
