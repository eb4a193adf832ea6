#include "controls/check_block.h"

#include <algorithm>

#include "controls/button.h"
#include "controls/panel.h"

namespace lanternleaf {

namespace {

constexpr float kBlockPad = 14;
constexpr float kKey = 64; ///< width of the keypad end of the field

/// Head on one line when title and expectation fit beside each other.
bool one_line(const Ui& ui, float width, const CheckLook& look) {
    const TextStyle body = ui.m.type(Type::Body);
    return ui.fonts().width(look.title, body.bold()) + ui.fonts().width(look.expect, body.bold()) + 38 + 20 <
           width - 2 * kBlockPad;
}

} // namespace

float check_block_height(const Ui& ui, float width, const CheckLook& look) {
    const TextStyle body = ui.m.type(Type::Body);
    return kBlockPad + body.lead * (one_line(ui, width, look) ? 1.0f : 2.0f) + 10 + ui.m.field_h + kBlockPad;
}

CheckHit check_block(Ui& ui, std::string_view name, const Rect& r, const CheckLook& look) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    CheckHit hit = CheckHit::None;
    well(ui, r, t.blue_tint);
    const TextStyle body = ui.m.type(Type::Body);
    float y = r.y + kBlockPad;
    draw_icon(pen, Icon::Meter, {r.x + kBlockPad + 14, y + body.lead / 2}, 27, t.blue);
    pen.text({r.x + kBlockPad + 38, y}, ui.fonts().fitted(look.title, body.bold(), r.w - 2 * kBlockPad - 38),
             body.bold(), t.blue);
    const bool single = one_line(ui, r.w, look);
    y += single ? 0 : body.lead;
    pen.paragraph({r.x + kBlockPad, y}, r.w - 2 * kBlockPad, look.expect, body, t.ink,
                  single ? Align::Right : Align::Left);
    y += body.lead + 10;

    Rect line{r.x + kBlockPad, y, r.w - 2 * kBlockPad, ui.m.field_h};
    const float field_w = look.no_meter.empty() ? line.w : std::max(184.0f, line.w * 0.4f);
    const Rect field = line.cut_left(field_w);
    line.cut_left(10);
    const std::string field_id = std::string(name) + "/field";
    if (offer(ui, {.name = field_id,
                   .role = Role::Field,
                   .label = look.title,
                   .rect = field,
                   .value = look.value})) {
        hit = CheckHit::Keypad;
    }
    const bool down = ui.pressed(field_id);
    pen.fill(field, down ? t.well : t.panel, ui.m.radius_small);
    const Rect key{field.right() - kKey, field.y, kKey, field.h};
    pen.fill(key, t.blue, ui.m.radius_small, kCornersRight);
    pen.outline(field, t.blue, 2, ui.m.radius_small);
    draw_icon(pen, Icon::Keypad, key.moved(0, down ? 1.0f : 0.0f).centre(), 36, t.on_blue);
    const Rect words{field.x + 12, field.y, field.w - kKey - 24, field.h};
    const TextStyle figure = ui.m.type(Type::H2);
    if (look.value.empty()) {
        pen.text_in(words, look.blank, figure.regular(), t.ink2, Align::Right);
    } else {
        pen.text_in(words, ui.fonts().fitted(look.value, figure, words.w), figure, t.ink, Align::Right);
    }
    if (!look.no_meter.empty() &&
        button(ui, std::string(name) + "/no-meter", line, {.label = look.no_meter, .icon = Icon::Eye})) {
        hit = CheckHit::NoMeter;
    }
    return hit;
}

} // namespace lanternleaf
