#include "controls/slider.h"

#include <algorithm>
#include <cmath>

#include "controls/button.h"

namespace lanternleaf {

namespace {

constexpr float kThumb = 20;      ///< radius
constexpr float kTrack = 10;      ///< height
constexpr double kRepeat_s = 0.5; ///< a held step begins to repeat
constexpr double kEvery_s = 0.12;

float snapped(const SliderLook& look, float value) {
    if (look.step > 0) {
        value = look.low + std::round((value - look.low) / look.step) * look.step;
    }
    return std::clamp(value, look.low, look.high);
}

} // namespace

float slider_height(const Ui& ui, const SliderLook& look) {
    return ui.m.target + (look.marks.empty() ? 0 : 12 + ui.m.type(Type::Small).lead);
}

bool slider(Ui& ui, std::string_view name, const Rect& r, const SliderLook& look, float& value) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    const float y = r.y + ui.m.target / 2;
    const float x0 = r.x + kThumb;
    const float x1 = r.right() - kThumb;
    const float span = std::max(look.high - look.low, 1e-6f);
    const float before = value;

    const Rect hit{r.x, r.y, r.w, ui.m.target};
    ui.add({.name = std::string(name),
            .role = Role::Slider,
            .label = look.label,
            .rect = hit,
            .drag = DragAxis::X,
            .value = look.value_text});
    if (const Drag* drag = ui.drag(name)) {
        value = snapped(look, look.low +
                                  span * std::clamp((drag->at.x - x0) / std::max(x1 - x0, 1.0f), 0.0f, 1.0f));
    }
    if (ui.focused(name)) {
        if (ui.take_key(Key::Left) || ui.take_key(Key::Down)) {
            value = snapped(look, value - look.key_step);
        }
        if (ui.take_key(Key::Right) || ui.take_key(Key::Up)) {
            value = snapped(look, value + look.key_step);
        }
        if (ui.take_key(Key::Home)) {
            value = look.low;
        }
        if (ui.take_key(Key::End)) {
            value = look.high;
        }
    }

    const float x = x0 + (x1 - x0) * std::clamp((value - look.low) / span, 0.0f, 1.0f);
    pen.fill({x0 - kTrack / 2, y - kTrack / 2, x1 - x0 + kTrack, kTrack}, t.edge, kTrack / 2);
    if (x > x0) {
        pen.fill({x0 - kTrack / 2, y - kTrack / 2, x - x0 + kTrack / 2, kTrack}, t.lamp, kTrack / 2,
                 kCornersLeft);
        if (!t.night) {
            pen.outline({x0 - kTrack / 2, y - kTrack / 2, x - x0 + kTrack / 2, kTrack}, t.lamp_dk, 1,
                        kTrack / 2, kCornersLeft);
        }
    }
    const bool held = ui.drag(name) != nullptr;
    pen.disc({x, y}, kThumb + (held ? 9.0f : 7.0f), faded(t.lamp, held ? 0.38f : 0.25f));
    pen.disc({x, y}, kThumb + 2, t.night ? t.ink : t.panel);
    pen.disc({x, y}, kThumb, t.lamp);
    if (!t.night) {
        pen.ring({x, y}, kThumb + 2, t.lamp_dk, 2);
    }
    for (const float dx : {-6.0f, 0.0f, 6.0f}) {
        pen.line({x + dx, y - 7}, {x + dx, y + 7}, t.on_lamp, 2, true);
    }
    const TextStyle small = ui.m.type(Type::Small);
    for (const SliderLook::Mark& mark : look.marks) {
        const float mx = x0 + (x1 - x0) * std::clamp((mark.value - look.low) / span, 0.0f, 1.0f);
        pen.fill({mx - 1, r.y + ui.m.target - 4, 2, 9}, t.ink2);
        const float half = ui.fonts().width(mark.label, small) / 2;
        const float cx = std::clamp(mx, r.x + half, r.right() - half);
        pen.text({cx, r.y + ui.m.target + 10}, mark.label, small, t.ink2, Align::Centre);
    }
    return value != before;
}

bool stepper(Ui& ui, std::string_view name, const Rect& r, const StepperLook& look, double& value) {
    const Theme& t = ui.theme();
    const double before = value;
    const std::string ids[] = {std::string(name) + "/less", std::string(name) + "/more"};
    const float side = std::min(r.h, std::max(ui.m.target, ui.m.button_h));
    const Rect boxes[] = {{r.x, r.centre().y - side / 2, side, side},
                          {r.right() - side, r.centre().y - side / 2, side, side}};
    for (int i = 0; i < 2; ++i) {
        const double way = i == 0 ? -look.step : look.step;
        const bool can = i == 0 ? value > look.low : value < look.high;
        ButtonLook button_look{
            .icon = i == 0 ? Icon::Minus : Icon::Plus, .enabled = can, .spoken = look.label};
        bool step = icon_button(ui, ids[i], boxes[i], button_look);
        const double held = ui.held_s(ids[i]);
        if (held > kRepeat_s && can) {
            const double earlier = held - static_cast<double>(ui.dt());
            step = step || std::floor(held / kEvery_s) > std::floor(earlier / kEvery_s);
            ui.keep_awake("stepper");
        } else if (held > 0 && can) {
            ui.wake_at(ui.now() + kRepeat_s - held + 0.001);
        }
        if (step && can) {
            value = std::clamp(value + way, look.low, look.high);
        }
    }
    const Rect middle{boxes[0].right(), r.y, boxes[1].x - boxes[0].right(), r.h};
    ui.pen().text_in(middle, look.value_text, ui.m.type(Type::Body).bold(), t.ink);
    ui.add({.name = std::string(name),
            .role = Role::Note,
            .label = look.label,
            .rect = middle,
            .value = look.value_text});
    return value != before;
}

} // namespace lanternleaf
