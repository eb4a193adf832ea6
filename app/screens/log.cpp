// The Log: the record of one build, plainly: step by step, how it differs from the plan, and the other builds
// of the same card.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"
#include "screens/screen.h"
#include "view/log_view.h"

#include <algorithm>

namespace lanternleaf {

namespace {

float draw_rows_panel(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const bool narrow = r.w < 560;
    const float row_h = std::max(42.0f, body.lead + 14) + (narrow ? body.lead : 0);
    const float height = static_cast<float>(view.rows.size()) * row_h + 24;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 12);
    for (const LogRow& row : view.rows) {
        Rect line = inside.cut_top(row_h);
        if (row.step > 1) {
            divider(ui, {line.x, line.y}, {line.right(), line.y});
        }
        const Point bead{line.x + 14, line.y + (narrow ? 21.0f : row_h / 2)};
        if (row.proved) {
            ui.pen().disc(bead, 13, ui.theme().leaf_tint);
            draw_icon(ui.pen(), Icon::Tick, bead, 20, ui.theme().leaf_text);
        } else if (row.regardless) {
            draw_icon(ui.pen(), Icon::Caution, bead, 26, ui.theme().ochre);
        } else {
            ui.pen().dashed_ring(bead, 12, ui.theme().edge, 2, 4, 3);
        }
        line.cut_left(36);
        const Rect title =
            narrow ? Rect{line.x, line.y, line.w - 70, 42} : Rect{line.x, line.y, line.w * 0.46f, row_h};
        ui.pen().text_in(title, ui.fonts().fitted(row.title, body, title.w), body, ui.theme().ink,
                         Align::Left);
        const Rect time =
            narrow ? Rect{line.right() - 70, line.y, 70, 42} : Rect{title.right(), line.y, 78, row_h};
        ui.pen().text_in(time, row.time, body, ui.theme().ink, narrow ? Align::Right : Align::Left);
        Rect reading = narrow ? Rect{line.x, line.y + 36, line.w, row_h - 40}
                              : Rect{time.right() + 6, line.y, line.right() - time.right() - 6, row_h};
        if (row.has_value && row.high > 0) {
            const float full = static_cast<float>(std::max(row.high * 1.6, row.value * 1.1));
            const Rect trough{reading.x, reading.centre().y - 5, std::min(110.0f, reading.w * 0.5f), 10};
            range_bar(ui, "log/reading/" + std::to_string(row.step), trough,
                      {.spoken = row.reading,
                       .low = static_cast<float>(row.low) / full,
                       .high = static_cast<float>(row.high) / full,
                       .value = static_cast<float>(row.value) / full});
            reading.cut_left(trough.w + 12);
            const std::string value = row.reading.substr(0, row.reading.find(','));
            ui.pen().text_in(reading, ui.fonts().fitted(value, body.bold(), reading.w), body.bold(),
                             ui.theme().ink, Align::Left);
        } else {
            ui.pen().text_in(
                reading,
                ui.fonts().fitted(row.reading.substr(0, row.reading.find(", expected")), body, reading.w),
                body, ui.theme().ink2, Align::Left);
        }
    }
    return height;
}

float draw_as_built(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    float height = 24 + ui.m.type(Type::H2).lead + 8;
    for (const std::string& line : view.as_built) {
        height += ui.fonts().wrapped_height(line, body, r.w - 76) + 8;
    }
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 12);
    inside.cut_top(draw_heading(ui, inside, inside.y, "As built", Type::H2) + 8);
    for (const std::string& line : view.as_built) {
        draw_icon(ui.pen(), Icon::Differ, {inside.x + 13, inside.y + body.lead / 2}, 24, ui.theme().ink);
        inside.cut_top(
            ui.pen().paragraph({inside.x + 40, inside.y}, inside.w - 40, line, body, ui.theme().ink) + 8);
    }
    return height;
}

float draw_others(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const float row_h = ui.m.target;
    const float height = 24 + ui.m.type(Type::H2).lead + 8 + static_cast<float>(view.others.size()) * row_h;
    const Rect box{r.x, y, r.w, height};
    panel(ui, box);
    Rect inside = box.shrunk(ui.m.panel_pad_x, 12);
    inside.cut_top(draw_heading(ui, inside, inside.y, "Builds of this card", Type::H2) + 8);
    for (const LogView::Other& other : view.others) {
        const Rect line = inside.cut_top(row_h);
        const std::string name = "log/build/" + other.number;
        ui.add({.name = name,
                .role = Role::Item,
                .label = "Build " + other.number,
                .rect = line,
                .checked = other.chosen});
        if (other.chosen || ui.pressed(name)) {
            ui.pen().fill(line, other.chosen ? ui.theme().lamp_tint : ui.theme().well, 10);
        }
        const TextStyle style = other.chosen ? body.bold() : body;
        ui.pen().text_in({line.x + 14, line.y, 40, line.h}, other.number, style, ui.theme().ink, Align::Left);
        const float state_w = std::min(150.0f, line.w * 0.3f);
        ui.pen().text_in({line.x + 60, line.y, line.w - 70 - state_w, line.h},
                         ui.fonts().fitted(other.when, style, line.w - 70 - state_w), style, ui.theme().ink,
                         Align::Left);
        ui.pen().text_in({line.right() - state_w - 8, line.y, state_w, line.h},
                         ui.fonts().fitted(other.state, style, state_w), style, ui.theme().ink2,
                         Align::Right);
        if (ui.tapped(name)) {
            screen.say(command::OpenLog{other.journal});
        }
    }
    return height;
}

float draw_head(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const float badge_w = std::min(r.w, std::max(ui.fonts().width(view.badge, body.bold()),
                                                 ui.fonts().width(view.badge_line, ui.m.type(Type::Small))) +
                                            84);
    const bool beside = r.w > badge_w + 420;
    const float text_w = beside ? r.w - badge_w - 20 : r.w;
    float height = draw_heading(ui, {r.x, y, text_w, 0}, y, view.title, Type::H1);
    height += ui.pen().paragraph({r.x, y + height}, text_w, view.subtitle, body, ui.theme().ink2);
    const float badge_h = 70 * std::max(1.0f, ui.m.text_scale);
    const Rect badge =
        beside ? Rect{r.right() - badge_w, y, badge_w, badge_h} : Rect{r.x, y + height + 8, badge_w, badge_h};
    ui.pen().fill(badge, view.finished ? ui.theme().leaf_tint : ui.theme().lamp_tint, ui.m.radius);
    ui.pen().outline(badge, view.finished ? ui.theme().leaf : ui.theme().lamp_dk, 2, ui.m.radius);
    draw_icon(ui.pen(), view.finished ? Icon::Fine : Icon::Clock, {badge.x + 34, badge.centre().y}, 34,
              view.finished ? ui.theme().leaf_text : ui.theme().ochre);
    ui.pen().text({badge.x + 64, badge.centre().y - body.lead + 2}, view.badge, body.bold(), ui.theme().ink);
    ui.pen().text({badge.x + 64, badge.centre().y + 2}, view.badge_line, ui.m.type(Type::Small),
                  ui.theme().ink);
    return std::max(height, beside ? badge_h : height + 8 + badge_h) + 14;
}

} // namespace

void draw_log(Screen& screen) {
    Ui& ui = screen.ui;
    const bool there = screen.state.log.has_value();
    const Regions regions = make_regions(ui.m, {.actions = there});
    const Rect page = regions.page.shrunk(ui.m.phone() ? 10.0f : ui.m.page_margin, 0);
    if (!there) {
        const float y = page.y + 24 + draw_heading(ui, page, page.y + 24, "Nothing built yet", Type::H1);
        ui.pen().paragraph({page.x, y + 8}, page.w, "When you build a card, its record is kept here.",
                           ui.m.type(Type::Body), ui.theme().ink);
        draw_top_bar(screen, regions.top, "");
        return;
    }
    const LogView view = make_log_view(screen.state, screen.around.shipped);
    {
        Scroll scroll(ui, "log", {regions.page.x, regions.page.y, regions.page.w, regions.page.h});
        float y = scroll.top() + 14;
        y += draw_head(screen, view, page, y);
        if (ui.m.form == Form::Landscape) {
            Rect left = page;
            const Rect right = left.cut_right(page.w * 0.42f);
            left.cut_right(16);
            const float rows = draw_rows_panel(screen, view, left, y);
            float side = draw_as_built(screen, view, right, y) + 14;
            side += draw_others(screen, view, right, y + side);
            y += std::max(rows, side);
        } else {
            y += draw_rows_panel(screen, view, page, y) + 14;
            y += draw_as_built(screen, view, page, y) + 14;
            y += draw_others(screen, view, page, y);
        }
        scroll.done(y + 16 - scroll.top());
    }
    bar(ui, regions.actions, false);
    Rect foot = regions.content(regions.actions).shrunk(ui.m.phone() ? 8.0f : ui.m.page_margin, 0);
    if (ui.m.phone()) {
        foot.cut_top(8);
        foot.h = ui.m.primary_h;
    }
    const ButtonLook light{.label = ui.m.phone() ? "" : "Light", .icon = Icon::Bulb, .spoken = "Light"};
    const Rect slot_of_light = foot.cut_left(ui.m.phone() ? ui.m.target : button_width(ui, light));
    const Rect light_box{slot_of_light.x, slot_of_light.centre().y - ui.m.target / 2, slot_of_light.w,
                         ui.m.target};
    if (ui.m.phone() ? icon_button(ui, "log/light", light_box, light)
                     : button(ui, "log/light", light_box, light)) {
        screen.say(command::OpenLight{});
    }
    foot.cut_left(ui.m.gap);
    if (view.finished) {
        const ButtonLook look{.label = "Build it again", .icon = Icon::Repeat};
        const float width = ui.m.phone() ? foot.w : std::max(330.0f, primary_width(ui, look));
        const Rect slot = foot.cut_right(width);
        if (primary_button(ui, "log/again",
                           {slot.x, slot.centre().y - ui.m.primary_h / 2, slot.w, ui.m.primary_h}, look)) {
            screen.say(command::BuildAgain{});
        }
    } else {
        const ButtonLook look{.label = "Carry on", .icon = Icon::Make};
        const Rect slot = foot.cut_right(ui.m.phone() ? foot.w : std::max(330.0f, primary_width(ui, look)));
        if (primary_button(ui, "log/carry-on",
                           {slot.x, slot.centre().y - ui.m.primary_h / 2, slot.w, ui.m.primary_h}, look)) {
            screen.say(command::Resume{screen.state.log_shelf.path});
        }
    }
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
