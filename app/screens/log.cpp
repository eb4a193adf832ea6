// The Log: the record of one build, plainly: step by step, how it differs from the plan, and the other builds
// of the same card.
#include "screens/log.h"

#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

float draw_head(Screen& screen, const LogView& view, const Rect& r, float y) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const float words_w =
        std::max(ui.fonts().width(view.badge, body.bold()), ui.fonts().width(view.badge_line, small));
    const float badge_w = std::min(r.w, words_w + 84);
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
    const float text_x = badge.x + 64;
    ui.pen().text({text_x, badge.centre().y - body.lead + 2},
                  ui.fonts().fitted(view.badge, body.bold(), badge.right() - text_x - 10), body.bold(),
                  ui.theme().ink);
    ui.pen().text({text_x, badge.centre().y + 2}, view.badge_line, small, ui.theme().ink);
    ui.add({.name = "log/badge",
            .role = Role::Note,
            .label = ui.words("log.badge", {{"badge", view.badge}, {"line", view.badge_line}}),
            .rect = badge});
    return std::max(height, beside ? badge_h : height + 8 + badge_h) + 14;
}

void draw_nothing(Screen& screen, const Rect& page) {
    Ui& ui = screen.ui;
    const float y = page.y + 24 + draw_heading(ui, page, page.y + 24, ui.words("log.nothing"), Type::H1);
    ui.pen().paragraph({page.x, y + 8}, page.w, ui.words("log.nothing_words"), ui.m.type(Type::Body),
                       ui.theme().ink);
}

void draw_record(Screen& screen, const LogView& view, const Regions& regions, const Rect& page) {
    Ui& ui = screen.ui;
    if (screen.state.log_page.compare) {
        Scroll scroll(ui, "log/compare", regions.page);
        scroll.done(draw_log_compare(screen, page, scroll.top() + 14) + 28);
        return;
    }
    Scroll scroll(ui, "log", regions.page);
    float y = scroll.top() + 14;
    const auto put = [&](float height) { y += height + 14; };
    y += draw_head(screen, view, page, y);
    if (ui.m.form == Form::Landscape) {
        Rect left = page;
        const Rect right = left.cut_right(page.w * 0.42f);
        left.cut_right(16);
        const float rows = draw_log_rows(screen, view, left, y);
        float side = draw_log_photos(screen, right, y) + 14;
        side += draw_log_as_built(screen, view, right, y + side);
        put(std::max(rows, side));
    } else {
        put(draw_log_rows(screen, view, page, y));
        put(draw_log_as_built(screen, view, page, y));
        put(draw_log_photos(screen, page, y));
    }
    put(draw_log_builds(screen, view, page, y));
    put(draw_log_figures(screen, page, y));
    scroll.done(y + 2 - scroll.top());
}

void draw_primary(Screen& screen, const LogView& view, const Rect& room) {
    Ui& ui = screen.ui;
    const ButtonLook look = view.finished
                                ? ButtonLook{.label = ui.words("log.again"), .icon = Icon::Repeat}
                                : ButtonLook{.label = ui.words("shelf.carry_on"), .icon = Icon::Make};
    const float width = ui.m.phone() ? room.w : std::min(room.w, std::max(330.0f, primary_width(ui, look)));
    const Rect slot{room.right() - width, room.centre().y - ui.m.primary_h / 2, width, ui.m.primary_h};
    if (primary_button(ui, view.finished ? "log/again" : "log/carry-on", slot, look)) {
        if (view.finished) {
            screen.say(command::BuildAgain{});
        } else {
            screen.say(command::Resume{screen.state.log_shelf.path});
        }
    }
}

void draw_log_foot(Screen& screen, const LogView& view, const Regions& regions) {
    Ui& ui = screen.ui;
    bar(ui, regions.actions, false);
    Rect foot = regions.content(regions.actions).shrunk(ui.m.phone() ? 8.0f : ui.m.page_margin, 0);
    const bool phone = ui.m.phone();
    Rect seconds = foot;
    if (phone) {
        foot.cut_top(8);
        seconds = foot.cut_top(ui.m.target);
        foot.cut_top(8);
        foot.h = ui.m.primary_h;
    }
    // While two builds stand side by side there is one way: back.
    if (screen.state.log_page.compare) {
        const ButtonLook back{.label = ui.words("log.back"), .icon = Icon::Back};
        const float width = std::min(foot.w, std::max(330.0f, primary_width(ui, back)));
        if (primary_button(
                ui, "log/compare-back",
                {foot.right() - width, foot.centre().y - ui.m.primary_h / 2, width, ui.m.primary_h}, back)) {
            screen.say(command::Log{logbook::Compare{}});
        }
        return;
    }
    const auto offer_button = [&](const char* name, const ButtonLook& look, float width) {
        const Rect slot = seconds.cut_left(width);
        seconds.cut_left(ui.m.gap);
        return button(ui, name, {slot.x, slot.centre().y - ui.m.button_h / 2, slot.w, ui.m.button_h}, look);
    };
    const ButtonLook light{.icon = Icon::Bulb, .spoken = ui.words("sheet.light")};
    const Rect light_slot = seconds.cut_left(ui.m.target);
    if (icon_button(ui, "log/light",
                    {light_slot.x, light_slot.centre().y - ui.m.target / 2, ui.m.target, ui.m.target},
                    light)) {
        screen.say(command::OpenLight{});
    }
    seconds.cut_left(ui.m.gap);
    const ButtonLook copy{.label = phone && view.changed ? std::string() : ui.words("log.save_copy"),
                          .icon = Icon::Share,
                          .spoken = ui.words("log.save_copy_spoken")};
    const bool tight = phone && view.changed;
    const float copy_w = tight ? ui.m.target : phone ? seconds.w : button_width(ui, copy);
    if (offer_button("log/save-copy", copy, copy_w)) {
        screen.say(command::Log{logbook::SaveCopy{}});
    }
    if (view.changed) {
        const ButtonLook plan{.label = phone || ui.m.form == Form::Portrait ? ui.words("log.as_plan_brief")
                                                                            : ui.words("log.as_plan"),
                              .icon = Icon::Differ,
                              .spoken = ui.words("log.as_plan")};
        if (offer_button("log/as-plan", plan, phone ? seconds.w : button_width(ui, plan))) {
            screen.say(command::Log{logbook::UseAsPlan{}});
        }
    }
    if (!phone) {
        foot = seconds;
    }
    draw_primary(screen, view, foot);
}

} // namespace

void draw_log(Screen& screen) {
    Ui& ui = screen.ui;
    const bool there = screen.state.log.has_value();
    const float two_rows = ui.m.target + ui.m.primary_h + 24;
    const Regions regions =
        make_regions(ui.m, {.actions = there, .actions_h = ui.m.phone() ? two_rows : 0.0f});
    const Rect page = regions.page.shrunk(ui.m.phone() ? 10.0f : ui.m.page_margin, 0);
    if (there) {
        const LogView view = make_log_view(screen.state, screen.ui.words);
        if (!screen.state.log_page.figures.done()) { // some more journals in each frame, until all are read
            screen.say(command::Log{logbook::CountOn{}});
        }
        draw_record(screen, view, regions, page);
        draw_log_foot(screen, view, regions);
    } else {
        draw_nothing(screen, page);
    }
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
