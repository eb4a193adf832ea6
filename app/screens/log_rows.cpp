// The Log's table of steps: state, time, and the reading on the range that was predicted.
#include "controls/bars.h"
#include "controls/panel.h"
#include "screens/log.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kTrough_w = 110;

void draw_bead(Ui& ui, Point at, const LogRow& row) {
    switch (row.state) {
    case StepState::proved:
        ui.pen().disc(at, 13, ui.theme().leaf_tint);
        draw_icon(ui.pen(), Icon::Tick, at, 20, ui.theme().leaf_text);
        break;
    case StepState::regardless:
        draw_icon(ui.pen(), Icon::Caution, at, 26, ui.theme().ochre);
        break;
    case StepState::open:
        ui.pen().disc(at, 12, ui.theme().lamp);
        ui.pen().ring(at, 12, ui.theme().lamp_dk, 2);
        break;
    case StepState::waiting:
        ui.pen().dashed_ring(at, 12, ui.theme().edge, 2, 4, 3);
        break;
    }
}

void draw_reading(Ui& ui, Rect r, const LogRow& row) {
    const TextStyle body = ui.m.type(Type::Body);
    if (row.has_range) {
        const Rect trough{r.x, r.centre().y - 5, std::min(kTrough_w, r.w * 0.5f), 10};
        draw_trough(ui, trough, row.range);
        r.cut_left(trough.w + 14);
    }
    if (row.has_range && !row.as_expected) {
        draw_icon(ui.pen(), Icon::Caution, {r.x + 11, r.centre().y}, 22, ui.theme().ochre);
        r.cut_left(28);
    } else if (!row.has_range && row.measured && row.as_expected) {
        draw_icon(ui.pen(), Icon::Fine, {r.x + 11, r.centre().y}, 22, ui.theme().leaf_text);
        r.cut_left(28);
    }
    const TextStyle style = row.has_range ? body.bold() : body;
    ui.pen().text_in(r, ui.fonts().fitted(row.reading, style, r.w), style,
                     row.has_range ? ui.theme().ink : ui.theme().ink2, Align::Left);
}

} // namespace

void draw_trough(Ui& ui, const Rect& r, const RangeShares& range) {
    const Theme& t = ui.theme();
    const float y = r.centre().y;
    const Rect trough{r.x, y - 5, r.w, 10};
    ui.pen().fill(trough, t.well, 5);
    ui.pen().outline(trough, t.edge, 1, 5);
    const float low = r.x + r.w * std::clamp(range.low, 0.0f, 1.0f);
    const float high = r.x + r.w * std::clamp(range.high, 0.0f, 1.0f);
    const Rect box{low, y - 7, std::max(high - low, 4.0f), 14};
    ui.pen().fill(box, t.leaf_tint);
    ui.pen().outline(box, t.leaf, 2);
    const float x = r.x + r.w * std::clamp(range.value, 0.0f, 1.0f);
    ui.pen().disc({x, y}, 8, t.lamp);
    ui.pen().ring({x, y}, 8, t.night ? t.lamp_dk : t.ink, 2);
}

float draw_log_rows(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const bool narrow = r.w < 560;
    const float row_h = narrow ? std::max(76.0f, body.lead * 2 + 20) : std::max(ui.m.target, body.lead + 16);
    const float head_h = narrow ? 0 : small.lead + 14;
    const float height = head_h + static_cast<float>(view.rows.size()) * row_h + 16;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 8);
    const float title_w = (inside.w - 36) * 0.45f;
    const float time_w = ui.m.with_text(84);
    if (!narrow) {
        const Rect head = inside.cut_top(head_h);
        const auto word = [&](float x, const std::string& text) {
            const float room = box.right() - 8 - x;
            ui.pen().text_in({x, head.y, room, head.h}, ui.fonts().fitted(text, small, room), small,
                             ui.theme().ink2, Align::Left);
        };
        word(inside.x + 36, ui.words("log.step"));
        word(inside.x + 36 + title_w, ui.words("log.time"));
        word(inside.x + 36 + title_w + time_w, ui.words("log.reading"));
    }
    for (const LogRow& row : view.rows) {
        Rect line = inside.cut_top(row_h);
        const std::string name = "log/step/" + std::to_string(row.step);
        ui.add({.name = name, .role = Role::Item, .label = row.spoken, .rect = line});
        if (ui.pressed(name)) {
            ui.pen().fill(line.shrunk(-8, 1), ui.theme().well, 10);
        }
        if (!narrow || row.step > 1) {
            divider(ui, {line.x, line.y}, {line.right(), line.y});
        }
        if (ui.tapped(name)) {
            screen.say(command::Log{logbook::ShowStep{row.step}});
        }
        draw_bead(ui, {line.x + 14, line.y + (narrow ? row_h * 0.3f : row_h / 2)}, row);
        draw_icon(ui.pen(), Icon::Next, {line.right() - 9, line.y + (narrow ? row_h * 0.72f : row_h / 2)}, 18,
                  ui.theme().ink2);
        line.cut_left(36);
        if (narrow) {
            const Rect top = line.cut_top(row_h * 0.56f);
            const float time_room = row.time.empty() ? 0 : ui.fonts().width(row.time, body) + 8;
            ui.pen().text_in(top, ui.fonts().fitted(row.title, body, top.w - time_room), body, ui.theme().ink,
                             Align::Left);
            ui.pen().text_in(top, row.time, body, ui.theme().ink, Align::Right);
            line.cut_right(24);
            line.h -= 8;
            draw_reading(ui, line, row);
            continue;
        }
        const Rect title = line.cut_left(title_w);
        ui.pen().text_in(title, ui.fonts().fitted(row.title, body, title.w - 8), body, ui.theme().ink,
                         Align::Left);
        ui.pen().text_in(line.cut_left(time_w), row.time, body, ui.theme().ink, Align::Left);
        line.cut_right(24);
        draw_reading(ui, line, row);
    }
    return height;
}

} // namespace lanternleaf
