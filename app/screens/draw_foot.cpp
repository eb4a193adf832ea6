// Under the plan: the layers, and how bright each light will be.
#include "circuit/seen.h"
#include "controls/bars.h"
#include "controls/chip.h"
#include "controls/panel.h"
#include "screens/draw.h"

#include <algorithm>
#include <array>

namespace lanternleaf {

void draw_layer_chips(Screen& screen, const Rect& row) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    BoardCamera camera = screen.state.camera;
    constexpr float kGap = 6;
    const std::array<std::string, 5> labels{ui.words("board.picture"), ui.words("board.negative"),
                                            ui.words("board.positive"), ui.words("draw.lights"),
                                            ui.words("draw.notes")};
    float wanted = kGap * 4;
    for (const std::string& label : labels) {
        wanted += chip_width(ui, label);
    }
    const float spare = (row.w - wanted) / 5.0f;
    float x = row.x;
    const auto one = [&](const char* name, const std::string& label, bool on) {
        const float w = chip_width(ui, label) + std::min(spare, 16.0f);
        const Rect r{x, row.y, w, row.h};
        x += w + kGap;
        return chip(ui, name, r, label, on);
    };
    bool changed = false;
    const auto flip = [&](bool& value, bool hit) {
        value = hit ? !value : value;
        changed = changed || hit;
    };
    flip(camera.picture, one("draw/layer/picture", labels[0], camera.picture));
    flip(camera.negative, one("draw/layer/negative", labels[1], camera.negative));
    flip(camera.positive, one("draw/layer/positive", labels[2], camera.positive));
    if (changed) {
        screen.say(command::MoveCamera{camera});
    }
    bool lights = draw.lights;
    bool notes = draw.notes;
    changed = false;
    flip(lights, one("draw/layer/lights", labels[3], lights));
    flip(notes, one("draw/layer/notes", labels[4], notes));
    if (changed) {
        act(screen, draw::ShowLayers{lights, notes});
    }
}

void draw_brightness(Screen& screen, const Rect& area) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    panel(ui, area);
    Rect inside = area.shrunk(16, 12);
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const std::vector<Light>& lights = draw.review.lighting.lights;
    if (lights.empty()) {
        const float text_h = 2 * body.lead;
        ui.pen().text({inside.x, inside.centre().y - text_h / 2}, ui.words("draw.no_lights"), body.bold(),
                      ui.theme().ink);
        ui.pen().text({inside.x, inside.centre().y},
                      ui.fonts().fitted(ui.words("draw.no_lights_words"), body, inside.w), body,
                      ui.theme().ink);
        return;
    }
    const float head_w = std::max(ui.fonts().width(ui.words("draw.brightness"), body.bold()),
                                  std::max(ui.fonts().width(ui.words("draw.predicted"), body),
                                           ui.fonts().width(ui.words("draw.fresh_cell"), small))) +
                         12;
    Rect head = inside.cut_left(head_w);
    const float y = head.centre().y - (body.lead + 2 * small.lead) / 2;
    ui.pen().text({head.x, y}, ui.words("draw.brightness"), body.bold(), ui.theme().ink);
    ui.pen().text({head.x, y + body.lead}, ui.words("draw.predicted"), small, ui.theme().ink);
    ui.pen().text({head.x, y + body.lead + small.lead}, ui.words("draw.fresh_cell"), small, ui.theme().ink);

    int on = 0;
    for (const Light& light : lights) {
        on += light.state != LightState::dark ? 1 : 0;
    }
    const std::string count = ui.words("draw.lights_on", {{"n", on}});
    const TextStyle figure = ui.m.type(Type::Figure);
    const std::string current = ui.words.mA(draw.review.lighting.cell_mA);
    const float figure_w = std::max(ui.fonts().width(current, figure), ui.fonts().width(count, small)) + 24;
    const Rect right = inside.cut_right(std::min(figure_w, inside.w * 0.4f));
    divider(ui, {right.x, right.y + 4}, {right.x, right.bottom() - 4});
    const float top = right.centre().y - (figure.lead + 2 * small.lead) / 2;
    const float middle = right.x + 12 + (right.w - 12) / 2;
    ui.pen().text({middle, top}, current, figure, ui.theme().ink, Align::Centre);
    ui.pen().text({middle, top + figure.lead}, ui.words("draw.when_pressed"), small, ui.theme().ink,
                  Align::Centre);
    ui.pen().text({middle, top + figure.lead + small.lead}, count, small, ui.theme().ink, Align::Centre);

    inside.cut_right(10);
    const float pitch = std::min(40.0f, inside.w / static_cast<float>(lights.size()));
    const bool named = pitch >= 30;
    const float bar_w = std::min(26.0f, pitch - 3);
    float x = inside.x + std::max(0.0f, (inside.w - pitch * static_cast<float>(lights.size())) / 2);
    for (const Light& light : lights) {
        const Led& led = draw.card.leds[static_cast<std::size_t>(light.led)];
        const bool green = draw.parts.leds.at(led.type).colour == "green";
        const Rect bar{x + (pitch - bar_w) / 2, inside.y, bar_w, inside.h - (named ? small.lead : 0)};
        brightness_bar(ui, bar, static_cast<float>(std::clamp(seen_brightness(light.brightness), 0.0, 1.0)),
                       green);
        if (named) {
            ui.pen().text({x + pitch / 2, inside.bottom() - small.lead}, led.id, small.bold(), ui.theme().ink,
                          Align::Centre);
        }
        x += pitch;
    }
}

} // namespace lanternleaf
