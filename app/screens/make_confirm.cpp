// The list panel: a step from memory, then line by line; and the way between list and moves.
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

float draw_line(Screen& screen, const MakeView& view, std::size_t index, const Rect& r) {
    Ui& ui = screen.ui;
    const ConfirmRow& row = view.list[index];
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const bool now = static_cast<int>(index) == view.list_now;
    const float text_w = r.w - 74;
    const float text_h = ui.fonts().wrapped_height(row.text, body.bold(), text_w);
    const float detail_h = ui.fonts().wrapped_height(row.detail, small, text_w);
    const float height = std::max(ui.m.target, text_h + detail_h + 18);
    const Rect box{r.x, r.y, r.w, height};
    const std::string name = "confirm/" + std::to_string(index + 1);
    ui.add({.name = name,
            .role = Role::Item,
            .label = row.text + ". " + row.detail,
            .rect = box,
            .checked = row.done});
    ui.pen().fill(box,
                  now                ? ui.theme().lamp_tint
                  : ui.pressed(name) ? ui.theme().well
                                     : ui.theme().panel,
                  ui.m.radius_small);
    ui.pen().outline(box,
                     now        ? ui.theme().lamp_dk
                     : row.done ? ui.theme().leaf
                                : ui.theme().edge,
                     2, ui.m.radius_small);
    const Point mark{box.x + 32, box.centre().y};
    if (row.done) {
        ui.pen().disc(mark, 17, ui.theme().leaf);
        draw_icon(ui.pen(), Icon::Tick, mark, 24, ui.theme().on_leaf);
    } else {
        ui.pen().ring(mark, 17, now ? ui.theme().lamp_dk : ui.theme().edge, 2);
    }
    const float y = box.centre().y - (text_h + detail_h) / 2;
    ui.pen().paragraph({box.x + 62, y}, text_w, row.text, body.bold(), ui.theme().ink);
    ui.pen().paragraph({box.x + 62, y + text_h}, text_w, row.detail, small, ui.theme().ink2);
    if (ui.tapped(name) && !row.done) {
        screen.say(command::Batch{batching::ConfirmLine{static_cast<int>(index)}});
    }
    return height + 8;
}

} // namespace

float draw_list_switch(Screen& screen, const MakeView& view, const Rect& r) {
    Ui& ui = screen.ui;
    const Segment segments[] = {{ui.words("confirm.as_list"), Icon::None, "list"},
                                {ui.words("confirm.as_moves"), Icon::None, "moves"}};
    int index = view.list.empty() ? 1 : 0;
    const float width = std::min(r.w, std::max(300.0f, segmented_width(ui, segments)));
    if (segmented(ui, "make/way", {r.x, r.y, width, ui.m.button_h}, segments, index)) {
        screen.say(command::Batch{batching::UseList{index == 0}});
    }
    return ui.m.button_h;
}

void draw_confirm_panel(Screen& screen, const MakeView& view, const Rect& panel_rect) {
    Ui& ui = screen.ui;
    Rect rest = panel_rect;
    const Rect inside = panel_rect.shrunk(ui.m.panel_pad_x, 12);
    rest.cut_top(12 + draw_list_switch(screen, view, inside));
    if (view.list.empty()) {
        draw_move_panel(screen, view, rest);
        return;
    }
    rest.cut_top(8);
    Scroll scroll(ui, "make/list", inside_panel(rest));
    const TextStyle body = ui.m.type(Type::Body);
    Rect r{inside.x, scroll.top() + 4, inside.w, 9000};
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.step_text + "  ·  " + view.move_text, body,
                                 ui.theme().ink2) +
              2);
    r.cut_top(draw_heading(ui, r, r.y, view.heading, ui.m.phone() ? Type::H2 : Type::H1) + 2);
    if (!ui.m.phone()) { // where room is short the lines speak for themselves
        r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, view.sentence, body, ui.theme().ink));
    }
    r.cut_top(10);
    for (std::size_t i = 0; i < view.list.size(); ++i) {
        r.cut_top(draw_line(screen, view, i, r));
    }
    scroll.done(r.y + 8 - scroll.top());
}

} // namespace lanternleaf
