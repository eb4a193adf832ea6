// The Shelf: the builds on the table, to carry on with, and the cards, to start.
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/batch.h"
#include "screens/screen.h"
#include "screens/shelf_aside.h"
#include "view/make_view.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr std::size_t kDrawnWhole = 60; ///< so many builds are all drawn, wherever the list stands

float wanted_columns(const Ui& ui, float one, int most) {
    const float width = ui.m.window.w - 2 * ui.m.page_margin;
    return static_cast<float>(std::clamp(static_cast<int>(width / one), 1, most));
}

void draw_cover(Screen& screen, const std::string& path, const Rect& r) {
    Ui& ui = screen.ui;
    ui.pen().shadow(r, 4, Lift::Panel);
    ui.pen().fill(r, ui.theme().sheet, 3);
    const Picture picture = screen.pictures.get(path);
    if (picture.there()) {
        draw_picture(ui.pen(), picture, r, rgb(ui.theme().night ? 0xB8B4AC : 0xFFFFFF), 3);
    } else {
        draw_mark(ui.pen(), r.centre(), r.h * 0.4f, ui.theme());
    }
    ui.pen().outline(r, ui.theme().sheet_edge, 1, 3);
}

// Seven dots: steps done, the one at hand, the ones to come.
void draw_step_pips(Ui& ui, Point at, int step) {
    float x = at.x;
    for (int i = 1; i <= kStepCount; ++i) {
        if (i == step) {
            const Rect r{x, at.y - 8, 30, 16};
            ui.pen().fill(r, ui.theme().lamp, 8);
            ui.pen().outline(r, ui.theme().lamp_dk, 2, 8);
            x += 36;
        } else {
            if (i < step) {
                ui.pen().disc({x + 8, at.y}, 8, ui.theme().leaf);
            } else {
                ui.pen().ring({x + 8, at.y}, 8, ui.theme().edge, 2);
            }
            x += 23;
        }
    }
}

void draw_build(Screen& screen, const ShelfBuild& build, const Rect& r, bool first) {
    Ui& ui = screen.ui;
    panel(ui, r);
    Rect inside = r.shrunk(ui.m.panel_pad_x, ui.m.panel_pad_x);
    const bool narrow = inside.w < 420;
    const float cover_w = narrow ? inside.w * 0.42f : inside.w * 0.51f;
    const Rect slot = inside.cut_left(cover_w);
    draw_cover(screen, build.picture, {slot.x, slot.y, slot.w, std::min(slot.h, slot.w * 105 / 148)});
    inside.cut_left(ui.m.panel_pad_x);
    float y = inside.y;
    const TextStyle head = ui.m.type(narrow ? Type::Body : Type::H2).bold();
    ui.pen().text({inside.x, y}, ui.fonts().fitted(build.title, head, inside.w), head, ui.theme().ink);
    y += head.lead + 2;
    const TextStyle body = ui.m.type(narrow ? Type::Small : Type::Body);
    const int step = std::min(build.step, kStepCount);
    ui.pen().text(
        {inside.x, y},
        ui.words("shelf.where", {{"build", std::to_string(build.number)}, {"step", std::to_string(step)}}),
        body, ui.theme().ink2);
    y += body.lead + 2;
    if (!narrow) {
        const std::string step_title = title_of(static_cast<StepId>(step), ui.words);
        ui.pen().text({inside.x, y}, ui.fonts().fitted(step_title, body, inside.w), body, ui.theme().ink);
        y += body.lead + 16;
        draw_step_pips(ui, {inside.x, y}, step);
    }
    Rect foot = inside.cut_bottom(ui.m.primary_h);
    if (narrow) {
        // The buttons lie under both columns where a phone leaves no room beside the picture.
        foot = Rect{r.x + ui.m.panel_pad_x, foot.y, r.w - 2 * ui.m.panel_pad_x, foot.h};
    }
    Rect more = foot.cut_right(ui.m.target);
    foot.cut_right(8);
    const ButtonLook look{.label = ui.words("shelf.carry_on"), .icon = Icon::Make, .bold = true};
    const std::string name = "shelf/build/" + build.id;
    const bool go = first ? primary_button(ui, name, foot, look) : leaf_button(ui, name, foot, look);
    if (go) {
        screen.say(command::Resume{build.path});
    }
    if (icon_button(ui, "shelf/more/" + build.id, more,
                    {.icon = Icon::More, .spoken = ui.words("shelf.more")})) {
        screen.say(command::OpenMenu{build.path});
    }
}

std::string times(const Words& words, int count) {
    return count == 0   ? words("shelf.built_never")
           : count == 1 ? words("shelf.built_once")
           : count == 2 ? words("shelf.built_twice")
                        : words("shelf.built_often", {{"n", count}});
}

void draw_card(Screen& screen, const ShelfCard& card, const Rect& r) {
    Ui& ui = screen.ui;
    const std::string name = "shelf/card/" + card.name;
    panel(ui, r);
    const bool tapped = offer(ui, {.name = name,
                                   .role = Role::Item,
                                   .label = ui.words("shelf.start", {{"title", card.title}}),
                                   .rect = r});
    if (ui.pressed(name)) {
        ui.pen().fill(r, faded(ui.theme().well, 0.6f), ui.m.radius);
    }
    // The lesser way in: look at its plan and change it.
    const Rect corner{r.right() - ui.m.target - 6, r.bottom() - ui.m.target - 6, ui.m.target, ui.m.target};
    Rect inside = r.shrunk(14, 14);
    draw_cover(screen, card.picture, inside.cut_top(inside.w * 105 / 148));
    inside.cut_top(14);
    const TextStyle head = ui.m.type(Type::Body).sized(22 * ui.m.text_scale).bold();
    ui.pen().text_in(inside.cut_top(head.lead), ui.fonts().fitted(card.title, head, inside.w), head,
                     ui.theme().ink, Align::Left);
    inside.cut_top(3);
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    inside.cut_right(corner.w - 4);
    const auto row = [&](Icon icon, const std::string& text, TextStyle style, Colour colour) {
        const Rect line = inside.cut_top(style.lead);
        draw_icon(ui.pen(), icon, {line.x + 12, line.centre().y}, 22, colour);
        ui.pen().text_in({line.x + 32, line.y, line.w - 32, line.h},
                         ui.fonts().fitted(text, style, line.w - 32), style, colour, Align::Left);
    };
    if (!card.trouble.empty()) {
        row(Icon::Problem, ui.words("shelf.cannot_open"), small, ui.theme().plum);
    } else {
        row(Icon::Bulb, ui.words("shelf.lights", {{"n", card.lights}}), body, ui.theme().ink);
        if (card.problems > 0) {
            row(Icon::Problem, ui.words("shelf.problems", {{"n", card.problems}}), small, ui.theme().plum);
        } else {
            row(card.times_built > 0 ? Icon::Log : Icon::Draw, times(ui.words, card.times_built), small,
                ui.theme().ink2);
        }
    }
    if (card.trouble.empty() &&
        icon_button(ui, "shelf/draw/" + card.name, corner,
                    {.icon = Icon::Draw, .spoken = ui.words("shelf.draw", {{"title", card.title}})})) {
        screen.say(command::Draw{draw::Open{card.path}});
        return;
    }
    if (tapped) {
        if (!card.trouble.empty()) {
            ui.toast(card.trouble);
        } else if (card.problems > 0) {
            screen.say(command::Draw{draw::Open{card.path}}); // its plan has a problem to put right first
        } else {
            screen.say(command::StartCard{card.path});
        }
    }
}

// The empty place on the plank.
void draw_new_card(Screen& screen, const Rect& r) {
    Ui& ui = screen.ui;
    const bool tapped =
        offer(ui, {.name = "shelf/new", .role = Role::Item, .label = ui.words("shelf.new_card"), .rect = r});
    ui.pen().fill(r, faded(ui.theme().panel, ui.pressed("shelf/new") ? 0.9f : 0.45f), ui.m.radius);
    ui.pen().dashed_outline(r, ui.theme().edge, 2, ui.m.radius, 7, 6);
    const TextStyle head = ui.m.type(Type::Body).sized(22 * ui.m.text_scale).bold();
    const TextStyle body = ui.m.type(Type::Body);
    const float y = r.centre().y - 20;
    draw_icon(ui.pen(), Icon::Plus, {r.centre().x, y - 16}, 46, ui.theme().leaf_text);
    ui.pen().text({r.centre().x, y + 14}, ui.words("shelf.new_card"), head, ui.theme().ink, Align::Centre);
    ui.pen().text({r.centre().x, y + 14 + head.lead}, ui.words("shelf.draw_your_own"), body, ui.theme().ink2,
                  Align::Centre);
    if (tapped) {
        screen.say(command::OpenSheet{SheetKind::draw_new});
    }
}

float draw_heading(Ui& ui, const Rect& page, float y, const std::string& head, const std::string& beside) {
    const TextStyle h1 = ui.m.type(Type::H1);
    const float width = ui.pen().text({page.x, y}, head, h1, ui.theme().ink);
    const TextStyle body = ui.m.type(Type::Body);
    ui.pen().text({page.x + width + 14, y + (h1.lead - body.lead) / 2 + 2},
                  ui.fonts().fitted(beside, body, page.w - width - 14), body, ui.theme().ink2);
    return y + h1.lead + 12;
}

// A few are spelled out.
std::string unfinished(const Words& words, std::size_t count) {
    return count >= 1 && count <= 6 ? words("shelf.unfinished_" + std::to_string(count))
                                    : words("shelf.unfinished_many", {{"n", count}});
}

// Builds of a batch are carried on with from its board: twenty of them would bury everything else.
bool on_a_board(const AppState& state, const ShelfBuild& build) {
    return !build.batch.empty() &&
           std::any_of(state.batches.begin(), state.batches.end(), [&build](const ShelfBatch& batch) {
               return batch.id == build.batch && batch.trouble.empty();
           });
}

} // namespace

void draw_shelf(Screen& screen) {
    Ui& ui = screen.ui;
    const Regions regions = make_regions(ui.m, {.actions = false});
    const Rect full = regions.content(regions.page);
    const float margin = ui.m.phone() ? 16.0f : 28.0f;
    Scroll scroll(ui, "shelf", full);
    const Rect page = full.shrunk(margin, 0);
    float y = scroll.top() + 18;

    std::vector<const ShelfBuild*> open;
    for (const ShelfBuild& build : screen.state.builds) {
        if (!build.finished && build.trouble.empty() && !on_a_board(screen.state, build)) {
            open.push_back(&build);
        }
    }
    if (!open.empty()) {
        y = draw_heading(ui, page, y, ui.words("shelf.on_the_table"), unfinished(ui.words, open.size()));
        const float columns = wanted_columns(ui, 500, 2);
        const float gap = 16;
        const float width = (page.w - gap * (columns - 1)) / columns;
        const float cover = (width - 2 * ui.m.panel_pad_x) * 0.51f * 105 / 148;
        const bool narrow = width - 2 * ui.m.panel_pad_x < 420;
        const float height = narrow
                                 ? (width - 2 * ui.m.panel_pad_x) * 0.42f * 105 / 148 + ui.m.primary_h +
                                       2 * ui.m.panel_pad_x + 16
                                 : std::max(cover + 36, 4 * ui.m.type(Type::Body).lead + ui.m.primary_h + 76);
        for (std::size_t i = 0; i < open.size(); ++i) {
            const auto column = static_cast<float>(i % static_cast<std::size_t>(columns));
            // Of a very long list only what is near the window is drawn: thousands may lie on the table.
            const bool near_by = y < full.bottom() + full.h && y + height > full.y - full.h;
            if (open.size() <= kDrawnWhole || near_by) {
                draw_build(screen, *open[i], {page.x + column * (width + gap), y, width, height}, i == 0);
            }
            if (i + 1 == open.size() || (i + 1) % static_cast<std::size_t>(columns) == 0) {
                y += height + gap;
            }
        }
        y += 4;
    }

    y = draw_shelf_batches(screen, page, y);

    const ButtonLook settings{.label = ui.words("shelf.settings"), .icon = Icon::Settings};
    const float settings_w = button_width(ui, settings);
    if (!ui.m.phone() && button(ui, "shelf/settings",
                                {page.right() - settings_w, y - 8, settings_w, ui.m.button_h}, settings)) {
        screen.say(command::OpenSheet{SheetKind::settings});
    }
    // A card from outside; and several of one card. What has no room beside the heading
    // stands below the cards.
    const ButtonLook bring{.label = ui.words("shelf.bring_in"), .icon = Icon::Down};
    const float bring_w = button_width(ui, bring) + 12;
    const ButtonLook several{.label = ui.words("batch.several"), .icon = Icon::People};
    const float several_w = button_width(ui, several) + 12;
    const bool below = ui.m.phone() || page.w < settings_w + bring_w + several_w + ui.m.with_text(240);
    float left = page.right() - settings_w;
    const auto beside = [&](const char* name, float room, const ButtonLook& look) {
        left -= room;
        return button(ui, name, {left, y - 8, room - 12, ui.m.button_h}, look);
    };
    bool bring_in = !ui.m.phone() && beside("shelf/bring-in", bring_w, bring);
    bool make_several = !below && beside("shelf/several", several_w, several);
    y = draw_heading(ui, page, y, ui.words("shelf.cards"),
                     open.empty() ? ui.words("shelf.tap_one") : std::to_string(screen.state.cards.size()));
    const float columns = ui.m.phone() ? 1 : wanted_columns(ui, 240, 4);
    const float gap = 20;
    const float width = (page.w - gap * (columns - 1)) / columns;
    const float height = 28 + (width - 28) * 105 / 148 + 14 + 27 * ui.m.text_scale + 3 +
                         ui.m.type(Type::Body).lead + ui.m.type(Type::Small).lead + 8;
    const std::size_t places = screen.state.cards.size() + 1; // the last one is for a card not drawn yet
    for (std::size_t i = 0; i < places; ++i) {
        const std::size_t column = i % static_cast<std::size_t>(columns);
        const Rect place{page.x + static_cast<float>(column) * (width + gap), y, width, height};
        if (i + 1 < places) {
            draw_card(screen, screen.state.cards[i], place);
        } else {
            draw_new_card(screen, place);
        }
        if (i + 1 == places || column + 1 == static_cast<std::size_t>(columns)) {
            // The plank the cards stand on.
            const Rect plank{page.x - margin * 0.6f, y + height, page.w + margin * 1.2f, 14};
            ui.pen().fill(plank, ui.theme().table_edge, 4, kCornersBottom);
            ui.pen().fill({plank.x, plank.y, plank.w, 2}, ui.theme().edge);
            y += height + 34;
        }
    }
    if (below) {
        make_several = button(ui, "shelf/several", {page.x, y, page.w, ui.m.button_h}, several);
        y += ui.m.button_h + 12;
    }
    if (make_several) {
        screen.say(command::Batch{batching::BeginSeveral{""}});
    }
    if (ui.m.phone()) {
        bring_in = button(ui, "shelf/bring-in", {page.x, y, page.w, ui.m.button_h}, bring);
        y += ui.m.button_h + 20;
    }
    if (bring_in && ui.host().can_pick()) {
        ui.host().pick_card();
    } else if (bring_in) {
        ui.toast(ui.words("bring.how")); // where nothing can be picked, files are dropped
    }
    y = draw_set_aside(screen, page, y);
    scroll.done(y - scroll.top());
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
