// The proof panel: at the end of a step, what has to be seen or measured before the next one hides it.
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Icon light_icon(const std::string& state) {
    return state == "lit" ? Icon::Bulb : state == "dim" ? Icon::BulbDim : Icon::BulbOff;
}

// One pill per light: tapped through lit, dim and dark, with what the engine expects under it.
float draw_lights(Screen& screen, const MakeView& view, const Rect& r) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const float width = std::max(112.0f, ui.m.with_text(112));
    const int columns = std::max(1, static_cast<int>((r.w + 8) / (width + 8)));
    const float each = (r.w - 8 * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    const float height = std::max(ui.m.target, ui.m.with_text(60));
    float y = r.y;
    for (std::size_t i = 0; i < view.lights.size(); ++i) {
        const LightTap& light = view.lights[i];
        const std::size_t column = i % static_cast<std::size_t>(columns);
        const Rect box{r.x + static_cast<float>(column) * (each + 8), y, each, height};
        const std::string name = "make/light/" + light.led;
        const std::string state = light.state.empty() ? "?" : light.state;
        const std::string said = light.state.empty() ? state : ui.words("make.light_" + light.state);
        const bool lit = light.state == "lit";
        ui.add({.name = name,
                .role = Role::Button,
                .label = ui.words("make.light_is", {{"light", light.led}, {"state", said}}),
                .rect = box,
                .value = state});
        ui.pen().fill(box,
                      lit                ? ui.theme().lamp_tint
                      : ui.pressed(name) ? ui.theme().well
                                         : ui.theme().panel,
                      ui.m.radius_small);
        ui.pen().outline(box, lit ? ui.theme().lamp_dk : ui.theme().edge, 2, ui.m.radius_small);
        if (!light.state.empty()) {
            const Point centre{box.x + 26, box.centre().y};
            ui.pen().disc(centre, 17,
                          lit                    ? ui.theme().lamp
                          : light.state == "dim" ? ui.theme().lamp_tint
                                                 : ui.theme().minus);
            if (light.state == "dim") {
                ui.pen().dashed_ring(centre, 17, ui.theme().lamp_dk, 2, 4, 3);
            }
            draw_icon(ui.pen(), light_icon(light.state), centre, 22,
                      lit                    ? ui.theme().on_lamp
                      : light.state == "dim" ? ui.theme().lamp_dk
                                             : rgb(0xF4ECDD));
        } else {
            ui.pen().dashed_ring({box.x + 26, box.centre().y}, 17, ui.theme().edge, 2, 4, 4);
        }
        ui.pen().text({box.x + 52, box.centre().y - small.lead}, light.led, small.bold(), ui.theme().ink);
        ui.pen().text({box.x + 52, box.centre().y}, light.state.empty() ? ui.words("make.tap") : said, small,
                      ui.theme().ink2);
        if (ui.tapped(name)) {
            screen.say(command::TapLight{light.led});
        }
        if (column + 1 == static_cast<std::size_t>(columns) || i + 1 == view.lights.size()) {
            y += height + 8;
        }
    }
    return y - r.y;
}

// How many checks are still open that an eye can answer.
int by_eye(const MakeView& view) {
    int count = 0;
    for (const CheckView& check : view.proof) {
        count += check.needed && !check.answered && check.kind != CheckKind::lights ? 1 : 0;
    }
    return count;
}

float draw_check_row(Screen& screen, const CheckView& check, const Rect& at) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const bool lights = check.kind == CheckKind::lights;
    const bool meter = !lights && check.kind != CheckKind::look;
    Rect r = at;
    const float buttons_w = lights ? 0 : meter ? 2 * ui.m.target + 8 : ui.m.target;
    const float text_w = r.w - 40 - buttons_w - (buttons_w > 0 ? 12 : 0);
    const std::string line = check.answered ? check.answer : check.expect;
    const float title_h = ui.fonts().wrapped_height(check.title, body.bold(), text_w);
    const float line_h = ui.fonts().wrapped_height(line, small, text_w);
    const float height = std::max(ui.m.target + 12, title_h + line_h + 14);
    r.h = height;
    const Icon icon = !check.answered     ? (meter ? Icon::Meter : Icon::Eye)
                      : check.as_expected ? Icon::Fine
                                          : Icon::Problem;
    const Colour colour = !check.answered     ? ui.theme().blue
                          : check.as_expected ? ui.theme().leaf_text
                                              : ui.theme().plum;
    draw_icon(ui.pen(), icon, {r.x + 15, r.centre().y}, 30, colour);
    const float y = r.centre().y - (title_h + line_h) / 2;
    ui.pen().paragraph({r.x + 40, y}, text_w, check.title, body.bold(), ui.theme().ink);
    ui.pen().paragraph({r.x + 40, y + title_h}, text_w, line, small,
                       check.answered && !check.as_expected ? ui.theme().plum : ui.theme().ink2);
    float x = r.right() - buttons_w;
    if (meter) {
        if (icon_button(
                ui, "proof/measure/" + check.id,
                {x, r.centre().y - ui.m.target / 2, ui.m.target, ui.m.target},
                {.icon = Icon::Keypad, .spoken = ui.words("make.enter_reading", {{"check", check.title}})})) {
            screen.say(command::OpenKeypad{check.id});
        }
        x += ui.m.target + 8;
    }
    if (!lights &&
        icon_button(
            ui, "proof/look/" + check.id, {x, r.centre().y - ui.m.target / 2, ui.m.target, ui.m.target},
            {.icon = Icon::Eye, .spoken = ui.words("make.without_meter", {{"check", check.title}})})) {
        screen.say(command::OpenNoMeter{check.id});
    }
    return height;
}

} // namespace

void draw_proof_panel(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    Scroll scroll(ui, "make/proof", inside_panel(panel_rect));
    Rect r{panel_rect.x + ui.m.panel_pad_x, scroll.top() + 12, panel_rect.w - 2 * ui.m.panel_pad_x, 9000};
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.step_text + "  ·  " + view.move_text, body,
                                 ui.theme().ink2));
    r.cut_top(6);
    r.cut_top(draw_heading(ui, r, r.y, view.heading, Type::H1));
    r.cut_top(4);
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, body, ui.theme().ink));
    r.cut_top(8);
    if (!view.lights.empty()) {
        r.cut_top(
            ui.pen().paragraph({r.x, r.y}, r.w, ui.words("make.press_and_tap"), body.bold(), ui.theme().ink));
        r.cut_top(8);
        r.cut_top(draw_lights(screen, view, r));
        const ButtonLook look{.label = ui.words("make.what_i_see"), .icon = Icon::Eye};
        if (leaf_button(ui, "make/save-seen",
                        {r.x, r.y, std::min(r.w, button_width(ui, look) + 30), ui.m.button_h}, look)) {
            screen.say(command::SaveSeen{});
        }
        r.cut_top(ui.m.button_h + 12);
    }
    if (by_eye(view) > 1) {
        const ButtonLook look{.label = ui.words("make.all_look_right"), .icon = Icon::Eye};
        r.cut_top(4);
        if (leaf_button(ui, "proof/all-look-right", {r.x, r.y, r.w, ui.m.button_h}, look)) {
            screen.say(command::LookedAtAll{});
        }
        r.cut_top(ui.m.button_h + 10);
    }
    for (const CheckView& check : view.proof) {
        divider(ui, {r.x, r.y}, {r.right(), r.y});
        r.cut_top(4);
        r.cut_top(draw_check_row(screen, check, r));
    }
    if (view.proof.empty()) {
        ui.pen().paragraph({r.x, r.y}, r.w, ui.words("make.checked_itself"), body, ui.theme().ink2);
        r.cut_top(body.lead);
    }
    scroll.done(r.y + 8 - scroll.top());
}

} // namespace lanternleaf
