#include "controls/text_field.h"

namespace lanternleaf {

TextFieldHit text_field(Ui& ui, std::string_view name, const Rect& r, const TextFieldLook& look,
                        std::string& text) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    TextFieldHit hit = TextFieldHit::None;
    const std::string id(name);
    if (offer(ui, {.name = id, .role = Role::Field, .label = look.label, .rect = r, .value = text})) {
        ui.typing_in = id;
        ui.host().show_keyboard(true, r);
    }
    bool typing = ui.typing_in == id;
    if (typing) {
        if (!ui.in.text.empty() && text.size() + ui.in.text.size() <= look.longest) {
            text += ui.in.text;
            hit = TextFieldHit::Changed;
        }
        while (ui.take_key(Key::Backspace)) {
            // One character, not one byte: continuation bytes go along.
            while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) {
                text.pop_back();
            }
            if (!text.empty()) {
                text.pop_back();
            }
            hit = TextFieldHit::Changed;
        }
        const bool left = ui.focus() != id && !ui.focus().empty();
        if (ui.take_key(Key::Enter) || ui.take_key(Key::Escape) || left) {
            ui.typing_in.clear();
            ui.host().show_keyboard(false, r);
            typing = false;
            hit = TextFieldHit::Done;
        }
    }
    pen.fill(r, ui.pressed(id) ? t.well : t.panel, ui.m.radius_small);
    pen.outline(r, typing ? t.blue : t.edge, 2, ui.m.radius_small);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect inner = r.shrunk(16, 0);
    pen.push_clip(inner);
    if (text.empty() && !typing) {
        pen.text_in(inner, look.label, body, t.ink2, Align::Left);
    }
    // The end of a long text is what is being typed, so that is the part in view.
    const float w = ui.fonts().width(text, body);
    const float x = typing && w > inner.w - 4 ? inner.right() - 4 - w : inner.x;
    pen.text_in({x, r.y, w, r.h}, text, body, t.ink, Align::Left);
    if (typing) {
        pen.fill({x + w + 2, r.centre().y - body.size * 0.6f, 2, body.size * 1.2f}, t.blue);
    }
    pen.pop_clip();
    return hit;
}

} // namespace lanternleaf
