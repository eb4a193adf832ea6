// Screen: what every drawing function of a place is given, and the one way to answer: a command.
// Exists so that screens stay thin: state in, commands out. They place finished words and figures and compute
// none.
#pragma once

#include "controls/ui.h"
#include "layout/regions.h"
#include "model/command.h"
#include "model/library.h"
#include "paint/pictures.h"

#include <vector>

namespace lanternleaf {

struct Screen {
    Ui& ui;
    const AppState& state;
    const Surroundings& around;
    Pictures& pictures;
    std::vector<Command>& commands;

    void say(Command command) { commands.push_back(std::move(command)); }
};

/// Draws everything: the place, what lies over it, and the notice. The order is the order of covering.
void draw_screen(Screen& screen);

// One function per place.
void draw_shelf(Screen& screen);
void draw_plan(Screen& screen);
void draw_make(Screen& screen);
void draw_mend(Screen& screen);
void draw_log(Screen& screen);
/// Trace from the screen: over everything while it is open.
void draw_light_box(Screen& screen);

/// The Light sheet, instead of the place under it.
void draw_light(Screen& screen);

/// The coin-cell notice, full screen.
void draw_notice(Screen& screen);
/// Whatever sheet is open, over the place.
void draw_open_sheet(Screen& screen);

/// The top bar; `title` stands beside the places (landscape) or in their menu (upright).
void draw_top_bar(Screen& screen, const Rect& bar, const std::string& title);
/// The safety chip again, above a scrim: drawn last so that it is one tap from everywhere.
void draw_safety_chip(Screen& screen, const Rect& bar);

} // namespace lanternleaf
