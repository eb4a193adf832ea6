#include "controls/keypad.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "controls/bars.h"
#include "controls/button.h"
#include "controls/panel.h"

namespace lanternleaf {

namespace {

constexpr std::size_t kLongest = 6;
constexpr float kGap = 8;

struct KeyCap {
    const char* name;
    char types; ///< 0 for the delete key
};

constexpr KeyCap kCaps[] = {{"7", '7'}, {"8", '8'}, {"9", '9'}, {"4", '4'},     {"5", '5'}, {"6", '6'},
                            {"1", '1'}, {"2", '2'}, {"3", '3'}, {"point", '.'}, {"0", '0'}, {"del", 0}};

float sheet_height(const Metrics& m) {
    const float head = std::max(m.target, m.type(Type::H2).lead + 12) + 10;
    return head + 76 + 24 + m.type(Type::Small).lead + 22 + 4 * m.key_h + 3 * kGap + 12 + m.primary_h + 26;
}

/// What is typed, with this language's decimal mark; inside it is always a point.
std::string shown(const Words& words, std::string entry) {
    if (const auto point = entry.find('.'); point != std::string::npos) {
        const std::string half = words.number(0.5, 1); // "0.5" or "0,5": the mark is between its digits
        entry.replace(point, 1, half, 1, half.size() - 2);
    }
    return entry;
}

void draw_value(Ui& ui, const Rect& r, const KeypadLook& look, const KeypadEntry& state) {
    const Theme& t = ui.theme();
    Pen& pen = ui.pen();
    pen.fill(r, t.panel, ui.m.radius_small);
    pen.outline(r, t.blue, 2, ui.m.radius_small);
    const TextStyle big = ui.m.type(Type::Reading);
    const TextStyle body = ui.m.type(Type::Body);
    float right = r.right() - 20;
    const float unit_w = ui.fonts().width(look.unit, big);
    pen.text_in({right - unit_w, r.y, unit_w, r.h}, look.unit, big, t.ink, Align::Left);
    right -= unit_w + 14;
    // A still caret: nothing here blinks.
    pen.fill({right, r.centre().y - 18, 2.5f, 36}, t.blue);
    right -= 5;
    const std::string entry = shown(ui.words, state.entry);
    pen.text_in({r.x, r.y, right - r.x, r.h}, entry, big, t.ink, Align::Right);
    const float room = right - ui.fonts().width(entry, big) - r.x - 34;
    if (room > 60) {
        pen.text_in({r.x + 20, r.y, room, r.h}, ui.fonts().fitted(look.expect, body, room), body, t.ink2,
                    Align::Left);
    }
}

void draw_range(Ui& ui, std::string_view name, const Rect& r, const KeypadLook& look,
                const KeypadEntry& state) {
    const Theme& t = ui.theme();
    const double full = look.full > 0 ? look.full : 1;
    RangeLook range{.spoken = look.expect,
                    .low = static_cast<float>(look.low / full),
                    .high = static_cast<float>(look.high / full)};
    if (const auto value = state.value()) {
        range.value = static_cast<float>(*value / full);
    }
    const Rect bar{r.x, r.y, r.w, 26};
    range_bar(ui, std::string(name) + "/range", bar, range);
    const TextStyle small = ui.m.type(Type::Small).sized(ui.m.type(Type::Small).size * 0.92f);
    const float y = bar.bottom() + 1;
    const float low_x = r.x + r.w * std::clamp(range.low, 0.03f, 1.0f);
    const float high_x = r.x + r.w * std::clamp(range.high, 0.05f, 0.97f);
    ui.pen().text({low_x, y}, look.low_text, small, t.ink2, Align::Centre);
    const float half =
        (ui.fonts().width(look.low_text, small) + ui.fonts().width(look.high_text, small)) / 2 + 6;
    if (high_x - low_x > half) {
        ui.pen().text({high_x, y}, look.high_text, small, t.ink2, Align::Centre);
    }
    const float note_w = ui.fonts().width(look.note, small);
    if (r.right() - note_w - 10 > high_x + half / 2) {
        ui.pen().text({r.right() - 10, y}, look.note, small, t.ink2, Align::Right);
    }
}

/// Keys in a grid of three by four; typing goes into the state.
void draw_keys(Ui& ui, std::string_view name, const Rect& r, KeypadEntry& state) {
    const Theme& t = ui.theme();
    const float w = (r.w - 2 * kGap) / 3;
    const float h = (r.h - 3 * kGap) / 4;
    for (std::size_t i = 0; i < std::size(kCaps); ++i) {
        const KeyCap& cap = kCaps[i];
        const Rect key{r.x + static_cast<float>(i % 3) * (w + kGap),
                       r.y + static_cast<float>(i / 3) * (h + kGap), w, h};
        const std::string id = std::string(name) + "/" + cap.name;
        const std::string face = cap.types == 0 ? std::string() : shown(ui.words, std::string(1, cap.types));
        if (offer(ui, {.name = id,
                       .role = Role::Key,
                       .label = cap.types == 0 ? ui.words("keypad.delete") : face,
                       .rect = key})) {
            if (cap.types == 0) {
                state.erase();
            } else {
                state.type(cap.types);
            }
        }
        const bool down = ui.pressed(id);
        ui.pen().fill(key, down ? t.well : t.panel, ui.m.radius_small);
        ui.pen().outline(key, t.edge, 1.25f, ui.m.radius_small);
        const Rect box = down ? key.moved(0, 1) : key;
        if (cap.types == 0) {
            draw_icon(ui.pen(), Icon::Del, box.centre(), ui.m.with_text(30), t.ink);
        } else {
            ui.pen().text_in(box, face, ui.m.type(Type::H1).sized(ui.m.with_text(28)), t.ink);
        }
    }
}

} // namespace

std::optional<double> KeypadEntry::value() const {
    double out = 0;
    const auto [end, code] = std::from_chars(entry.data(), entry.data() + entry.size(), out);
    if (code != std::errc{} || end != entry.data() + entry.size()) {
        return std::nullopt;
    }
    return out;
}

void KeypadEntry::type(char c) {
    if (entry.size() >= kLongest || (c == '.' && entry.find('.') != std::string::npos)) {
        return;
    }
    if (c == '.' && entry.empty()) {
        entry.push_back('0');
    }
    if (entry == "0" && c != '.') {
        entry.clear();
    }
    entry += c;
}

void KeypadEntry::erase() {
    if (!entry.empty()) {
        entry.pop_back();
    }
}

KeypadResult keypad(Ui& ui, std::string_view name, const KeypadLook& look, KeypadEntry& state) {
    const Metrics& m = ui.m;
    const SheetSide side = m.form == Form::Landscape ? SheetSide::Side : SheetSide::Bottom;
    SheetPaper sheet(ui, name, side, state.open, sheet_height(m), look.title, Icon::Meter, look.over_panel);
    if (!sheet.shown()) {
        return KeypadResult::None;
    }
    if (state.open) {
        for (const char c : ui.in.text) {
            if ((c >= '0' && c <= '9') || c == '.' || c == ',') {
                state.type(c == ',' ? '.' : c);
            }
        }
        if (ui.take_key(Key::Backspace)) {
            state.erase();
        }
    }
    KeypadResult result = KeypadResult::None;
    Rect body = sheet.body();
    const Rect value_box = body.cut_top(76);
    body.cut_top(20);
    const Rect range_box = body.cut_top(26 + m.type(Type::Small).lead);
    Rect foot = body.cut_bottom(m.primary_h);
    body.cut_bottom(12);
    body.cut_top(10);
    draw_keys(ui, name, body, state);
    draw_value(ui, value_box, look, state);
    draw_range(ui, name, range_box, look, state);

    const std::string id(name);
    if (!look.over.empty()) {
        const Rect over = foot.cut_left(std::min(226.0f, foot.w * 0.46f))
                              .shrunk(0, (foot.h - std::max(64.0f, m.button_h)) / 2);
        foot.cut_left(12);
        if (button(ui, id + "/over", over, {.label = look.over})) {
            result = KeypadResult::Over;
        }
    }
    std::string save = look.save;
    const bool ready = state.value().has_value();
    if (const auto at = save.find("{value}"); at != std::string::npos) {
        save.replace(at, 7, ready ? shown(ui.words, state.entry) + " " + look.unit : "");
    }
    while (!save.empty() && save.back() == ' ') {
        save.pop_back();
    }
    if (primary_button(ui, id + "/save", foot,
                       {.label = save, .icon = Icon::Tick, .enabled = ready, .reason = look.expect})) {
        result = KeypadResult::Save;
    }
    if (sheet.closed()) {
        result = KeypadResult::Close;
    }
    if (result != KeypadResult::None) {
        state.open = false;
    }
    return result;
}

} // namespace lanternleaf
