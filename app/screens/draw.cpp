// The Draw place in its three forms: tools above, tray, card, findings.
#include "screens/draw.h"

#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr float kTool_h = 74;
constexpr float kTray_w = 126;
constexpr float kFindings_w = 374;
constexpr float kFoot_h = 126;

// Nothing on the drawing table: a new card, or one from the shelf.
void draw_choice(Screen& screen) {
    Ui& ui = screen.ui;
    const Regions regions = make_regions(ui.m, {.actions = false});
    const Rect full = regions.content(regions.page);
    Scroll scroll(ui, "draw/choice", full);
    const Rect page = full.shrunk(ui.m.page_margin + 8, 0);
    float y = scroll.top() + 24;
    y += draw_heading(ui, page, y, ui.words("draw.choose"), Type::H1) + 6;
    y += ui.pen().paragraph({page.x, y}, std::min(page.w, 620.0f), ui.words("draw.choose_words"),
                            ui.m.type(Type::Body), ui.theme().ink) +
         18;
    const ButtonLook fresh{.label = ui.words("shelf.new_card"), .icon = Icon::Plus, .bold = true};
    const Rect button{page.x, y, std::min(primary_width(ui, fresh), page.w), ui.m.primary_h};
    if (primary_button(ui, "draw/new", button, fresh)) {
        screen.say(command::OpenSheet{SheetKind::draw_new});
    }
    y += ui.m.primary_h + 22;
    for (const ShelfCard& card : screen.state.cards) {
        if (!card.trouble.empty()) {
            continue;
        }
        const Rect row{page.x, y, std::min(page.w, 620.0f), ui.m.button_h};
        if (lanternleaf::button(ui, "draw/open/" + card.name, row,
                                {.label = card.title, .icon = Icon::Draw})) {
            act(screen, draw::Open{card.path});
        }
        y += ui.m.button_h + 10;
    }
    scroll.done(y + 20 - scroll.top());
    draw_top_bar(screen, regions.top, "");
}

void draw_wide(Screen& screen, const Regions& regions) {
    Ui& ui = screen.ui;
    Rect area = regions.card;
    area.x = std::max(regions.page.x + 16, area.x - 4);
    area.w = regions.card.right() - area.x;
    area.cut_top(10);
    area.cut_bottom(14);
    draw_tray(screen, area.cut_left(kTray_w * std::max(1.0f, 0.5f + ui.m.text_scale / 2)), true);
    area.cut_left(20);
    const Rect foot = area.cut_bottom(kFoot_h * std::max(1.0f, ui.m.text_scale));
    area.cut_bottom(12);
    const Rect chips = area.cut_bottom(ui.m.target);
    area.cut_bottom(8);
    draw_plan_card(screen, area, true);
    draw_layer_chips(screen, chips);
    if (!draw_selection(screen, foot, false)) {
        draw_brightness(screen, foot);
    }
    draw_findings_panel(screen, regions.panel, false);
}

void draw_upright(Screen& screen, const Regions& regions) {
    Ui& ui = screen.ui;
    Rect area = regions.card;
    area.cut_top(8);
    draw_tray(screen, area.cut_top(70 * std::max(1.0f, ui.m.text_scale)), false);
    area.cut_top(4);
    const Rect foot = area.cut_bottom(ui.m.target + 4);
    area.cut_bottom(6);
    draw_plan_card(screen, area, true);
    if (!draw_selection(screen, foot, true)) {
        draw_layer_chips(screen, {foot.x, foot.y + 2, foot.w, ui.m.target});
    }
    Rect findings = regions.panel;
    findings.cut_top(6);
    draw_findings_panel(screen, findings, true);
}

void draw_small(Screen& screen, const Regions& regions) {
    Ui& ui = screen.ui;
    Rect panel_rect = regions.panel;
    const TextStyle small = ui.m.type(Type::Small);
    Rect foot = panel_rect.cut_bottom(std::max(ui.m.target, small.lead * 2) + 16);
    draw_plan_card(screen, regions.card, false);
    draw_findings_panel(screen, panel_rect, true);
    foot.cut_top(8);
    foot.cut_bottom(8);
    if (draw_suggestions(screen, foot, true)) {
        return;
    }
    const ButtonLook suggest{.label = ui.words("draw.suggest"),
                             .icon = Icon::Suggest,
                             .enabled = !screen.state.draw->card.leds.empty(),
                             .reason = ui.words("draw.light_first")};
    const Rect slot = foot.cut_right(button_width(ui, suggest));
    if (button(ui, "draw/suggest", around(slot.centre(), slot.w, ui.m.target), suggest)) {
        act(screen, draw::Suggest{});
    }
    foot.cut_right(12);
    const std::string words = ui.words("draw.larger_screen");
    const float h = ui.fonts().wrapped_height(words, small, foot.w - 8);
    ui.pen().paragraph({foot.x + 8, foot.centre().y - h / 2}, foot.w - 8, words, small, ui.theme().ink2);
}

} // namespace

void draw_plan(Screen& screen) {
    if (!screen.state.draw) {
        draw_choice(screen);
        return;
    }
    Ui& ui = screen.ui;
    RegionWish wish{.rail = true, .rail_h = 0, .actions = false};
    wish.rail_h = ui.m.phone() ? 0 : std::max(kTool_h, ui.m.button_h + 18);
    wish.rail = !ui.m.phone();
    wish.panel_w = kFindings_w;
    wish.panel_h = 300;
    wish.phone_card_h = 316;
    const Regions regions = make_regions(ui.m, wish);
    switch (ui.m.form) {
    case Form::Landscape:
        draw_wide(screen, regions);
        break;
    case Form::Portrait:
        draw_upright(screen, regions);
        break;
    case Form::Phone:
        draw_small(screen, regions);
        break;
    }
    if (!ui.m.phone()) {
        draw_plan_tools(screen, regions.rail);
    }
    draw_top_bar(screen, regions.top, screen.state.draw->card.title);
}

} // namespace lanternleaf
