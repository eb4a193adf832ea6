// The top bar: the five places, the card's title, the safety chip and the lamp for day and night.
#include "controls/button.h"
#include "controls/chip.h"
#include "controls/nav.h"
#include "controls/panel.h"
#include "screens/screen.h"

#include <array>

namespace lanternleaf {

namespace {

std::array<NavPlace, 5> places_in(const Words& words) {
    return {{{"nav/shelf", words("top.shelf"), Icon::Shelf},
             {"nav/draw", words("top.draw"), Icon::Draw},
             {"nav/make", words("top.make"), Icon::Make},
             {"nav/mend", words("top.mend"), Icon::Mend},
             {"nav/log", words("top.log"), Icon::Log}}};
}

constexpr float kMarkRoom = 54; ///< the mark and the space to the first place

/// How much the bar can say at this size of text: all five places and the whole chip; a shorter chip; or the
/// places behind the mark, as on a tablet held upright. Nothing is ever cut off or laid over another.
enum class Room { whole, short_chip, menu };

Room room_of(const Ui& ui) {
    if (ui.m.form != Form::Landscape) {
        return ui.m.phone() ? Room::short_chip : Room::whole;
    }
    float places = kMarkRoom;
    for (const NavPlace& place : places_in(ui.words)) {
        places += nav_item_width(ui, place) + 8;
    }
    const float right = ui.m.target + 6 + 2 * ui.m.page_margin + 4 + ui.m.gap;
    const float left = ui.m.window.w - ui.m.insets.left - ui.m.insets.right - right - places;
    return left >= safety_chip_width(ui, ui.words("top.safety"))         ? Room::whole
           : left >= safety_chip_width(ui, ui.words("top.safety_brief")) ? Room::short_chip
                                                                         : Room::menu;
}

std::string chip_label(const Ui& ui) {
    return ui.words(room_of(ui) == Room::short_chip ? "top.safety_brief" : "top.safety");
}

// From the right: day or night (not on phones, where settings hold it), then the chip.
struct Right {
    Rect toggle;
    Rect chip;
};

Right right_of(const Ui& ui, Rect inside) {
    Right right;
    inside = inside.shrunk(ui.m.phone() ? 8.0f : ui.m.page_margin, 0);
    if (!ui.m.phone()) {
        right.toggle = around({inside.cut_right(ui.m.target).centre()}, ui.m.target, ui.m.target);
        inside.cut_right(6);
    }
    const float width = safety_chip_width(ui, chip_label(ui));
    const Rect slot = inside.cut_right(width);
    right.chip = around(slot.centre(), width, ui.m.button_h);
    return right;
}

} // namespace

void draw_top_bar(Screen& screen, const Rect& top, const std::string& title) {
    Ui& ui = screen.ui;
    bar(ui, top, true);
    Rect inside = top;
    inside.cut_top(ui.m.insets.top);
    const Right right = right_of(ui, inside);
    if (!right.toggle.empty() && icon_button(ui, "settings", right.toggle,
                                             {.icon = screen.state.settings.night ? Icon::Sun : Icon::Moon,
                                              .spoken = ui.words("top.day_or_night")})) {
        screen.say(command::ToggleNight{});
    }
    const float room_to = right.chip.x - ui.m.gap;
    const std::array<NavPlace, 5> places = places_in(ui.words);
    if (ui.m.form == Form::Landscape && room_of(ui) != Room::menu) {
        float x = inside.x + ui.m.page_margin + 4;
        draw_mark(ui.pen(), {x + 17, inside.centre().y}, 42, ui.theme());
        x += kMarkRoom;
        float places_end = x;
        const int chosen = nav_bar(ui, places, static_cast<int>(screen.state.place), inside, x, &places_end);
        if (chosen >= 0) {
            screen.say(command::GoTo{static_cast<Place>(chosen)});
        }
        const float room = room_to - places_end - 24;
        if (!title.empty() && room > 80) {
            const TextStyle style = ui.m.type(Type::Body);
            ui.pen().text_in({room_to - room, inside.y, room, inside.h},
                             ui.fonts().fitted(title, style, room), style, ui.theme().ink2, Align::Right);
        }
    } else {
        const Rect menu{inside.x + 4, inside.y, room_to - inside.x - 4, inside.h};
        const std::string& here = places[static_cast<std::size_t>(screen.state.place)].label;
        const std::string shown = title.empty() ? here : title;
        if (nav_menu(ui, menu, shown)) {
            screen.say(command::OpenSheet{SheetKind::places});
        }
    }
}

void draw_safety_chip(Screen& screen, const Rect& top) {
    Ui& ui = screen.ui;
    Rect inside = top;
    inside.cut_top(ui.m.insets.top);
    if (safety_chip(ui, right_of(ui, inside).chip, chip_label(ui))) {
        screen.say(command::ReadNotice{});
    }
}

} // namespace lanternleaf
