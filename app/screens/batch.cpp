// The board: head with the counts, rows of builders, cells, figures; and the bar at the foot.
#include "screens/batch.h"

#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Icon icon_of(BuilderState state) {
    switch (state) {
    case BuilderState::stopped:
        return Icon::Problem;
    case BuilderState::at_work:
        return Icon::Make;
    case BuilderState::resting:
        return Icon::Clock;
    case BuilderState::not_begun:
        return Icon::People;
    case BuilderState::done:
        break;
    }
    return Icon::Fine;
}

// One pill a state: symbol, number, word; in as many lines as it takes.
float draw_counts(Ui& ui, const BatchView& view, const Rect& r, float y) {
    const TextStyle number = ui.m.type(Type::H2);
    const TextStyle body = ui.m.type(Type::Body);
    const float height = std::max(46.0f, number.lead + 14);
    float x = r.x;
    float top = y;
    for (const BatchCountView& count : view.counts) {
        const std::string figure = std::to_string(count.count);
        const float width = 64 + ui.fonts().width(figure, number) + ui.fonts().width(count.word, body);
        if (x > r.x && x + width > r.right()) {
            x = r.x;
            top += height + 8;
        }
        const Rect box{x, top, width, height};
        const bool help = count.state == BuilderState::stopped;
        const bool done = count.state == BuilderState::done;
        ui.pen().fill(box,
                      help   ? ui.theme().plum_tint
                      : done ? ui.theme().leaf_tint
                             : ui.theme().panel,
                      height / 2);
        ui.pen().outline(box,
                         help   ? ui.theme().plum
                         : done ? ui.theme().leaf
                                : ui.theme().line,
                         2, height / 2);
        const Colour ink = help ? ui.theme().plum : done ? ui.theme().leaf_text : ui.theme().ink;
        draw_icon(ui.pen(), icon_of(count.state), {box.x + 26, box.centre().y}, 26, ink);
        const float wide =
            ui.pen().text_in({box.x + 44, box.y, box.w, box.h}, figure, number, ui.theme().ink, Align::Left);
        ui.pen().text_in({box.x + 51 + wide, box.y, box.w, box.h}, count.word, body, ui.theme().ink,
                         Align::Left);
        x += width + 8;
    }
    ui.add({.name = "batch/counts", .role = Role::Note, .label = view.title, .rect = {r.x, y, r.w, height}});
    return top + height + 14 - y;
}

void draw_foot(Screen& screen, const BatchView& view, const Regions& regions) {
    Ui& ui = screen.ui;
    const Words& words = ui.words;
    bar(ui, regions.actions, false);
    const bool phone = ui.m.phone();
    Rect foot = regions.content(regions.actions).shrunk(phone ? 8.0f : ui.m.page_margin, 0);
    ButtonLook primary{.label = view.primary, .icon = Icon::Plus};
    Command on_primary = command::Batch{batching::OpenName{}};
    if (screen.state.batch->batch.purpose == BatchFor::repeater) {
        on_primary = command::Batch{batching::Begin{""}};
    }
    if (view.primary.empty()) {
        primary = {.label = words(view.closed ? "batch.reopen" : "batch.close"),
                   .icon = view.closed ? Icon::Repeat : Icon::Lock};
        on_primary = view.closed ? Command(command::Batch{batching::Reopen{}})
                                 : Command(command::Batch{batching::OpenClose{}});
    }

    struct Side {
        const char* name;
        ButtonLook look;
        Command command;
    };

    std::vector<Side> sides = {{"batch/shelf",
                                {.label = words("batch.to_shelf"), .icon = Icon::Back},
                                command::Batch{batching::Leave{}}},
                               {"batch/look-again",
                                {.icon = Icon::Repeat, .spoken = words("batch.look_again")},
                                command::Batch{batching::LookAgain{}}},
                               {"batch/take",
                                {.label = words("batch.take"), .icon = Icon::Book},
                                command::Batch{batching::OpenTake{}}}};
    if (!view.primary.empty()) {
        sides.push_back({"batch/close",
                         {.label = words("batch.close"), .icon = Icon::Lock},
                         command::Batch{batching::OpenClose{}}});
    }
    Rect seconds = foot;
    Rect slot = foot;
    if (phone) {
        foot.cut_top(8);
        seconds = foot.cut_top(ui.m.target);
        foot.cut_top(8);
        slot = {foot.x, foot.y, foot.w, ui.m.primary_h};
    } else {
        const float width = std::min(std::max(primary_width(ui, primary), 300.0f), foot.w * 0.4f);
        slot = seconds.cut_right(width);
        seconds.cut_right(ui.m.gap);
        slot = {slot.x, slot.centre().y - ui.m.primary_h / 2, slot.w, ui.m.primary_h};
    }
    float whole = -ui.m.gap;
    for (const Side& side : sides) {
        whole += ui.m.gap + (side.look.label.empty() ? ui.m.target : button_width(ui, side.look));
    }
    const bool brief = whole > seconds.w;
    for (Side& side : sides) {
        if (brief && !side.look.label.empty()) {
            side.look.spoken = side.look.label;
            side.look.label.clear();
        }
        const float width = brief ? (seconds.w >= 4 * ui.m.target + 3 * ui.m.gap ? ui.m.target : 52.0f)
                            : side.look.label.empty() ? ui.m.target
                                                      : button_width(ui, side.look);
        const Rect at = seconds.cut_left(width);
        seconds.cut_left(ui.m.gap);
        const Rect box{at.x, at.centre().y - ui.m.button_h / 2, at.w, ui.m.button_h};
        if (side.look.label.empty() ? icon_button(ui, side.name, box, side.look)
                                    : button(ui, side.name, box, side.look)) {
            screen.say(side.command);
        }
    }
    if (primary_button(ui, "batch/next", slot, primary)) {
        screen.say(on_primary);
    }
}

} // namespace

void draw_batch(Screen& screen) {
    Ui& ui = screen.ui;
    const BatchView view = make_batch_view(screen.state);
    RegionWish wish;
    wish.actions_h = ui.m.phone() ? 144 * std::max(1.0f, ui.m.text_scale * 0.85f) : 0;
    const Regions regions = make_regions(ui.m, wish);
    const Rect page = regions.content(regions.page).shrunk(ui.m.phone() ? 12.0f : ui.m.page_margin, 0);
    {
        Scroll scroll(ui, "batch", regions.page);
        float y = scroll.top() + 14;
        y += draw_heading(ui, page, y, view.title, Type::H1);
        y += ui.pen().paragraph({page.x, y}, page.w, view.subtitle, ui.m.type(Type::Body),
                                view.closed ? ui.theme().ink : ui.theme().ink2) +
             12;
        y += draw_counts(ui, view, page, y);
        if (ui.m.form == Form::Landscape) {
            Rect left = page;
            const Rect right = left.cut_right(std::max(page.w * 0.34f, ui.m.with_text(340)));
            left.cut_right(16);
            const float rows = draw_batch_rows(screen, view, left, y);
            float side = draw_batch_cells(screen, view, right, y) + 14;
            side += draw_batch_figures(screen, view, right, y + side);
            y += std::max(rows, side) + 14;
        } else {
            y += draw_batch_cells(screen, view, page, y) + 14;
            y += draw_batch_rows(screen, view, page, y) + 14;
            y += draw_batch_figures(screen, view, page, y) + 14;
        }
        scroll.done(y - scroll.top());
    }
    draw_foot(screen, view, regions);
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
