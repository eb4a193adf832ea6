// Puts a frame together: the place, what lies over it, the notice, and the safety chip above everything.
#include "controls/panel.h"
#include "screens/screen.h"

namespace lanternleaf {

void draw_screen(Screen& screen) {
    Ui& ui = screen.ui;
    table(ui);
    if (screen.state.notice != Notice::none) {
        draw_notice(screen);
        return;
    }
    switch (screen.state.place) {
    case Place::shelf:
        draw_shelf(screen);
        break;
    case Place::draw:
        draw_plan(screen);
        break;
    case Place::make:
        draw_make(screen);
        break;
    case Place::mend:
        draw_mend(screen);
        break;
    case Place::log:
        draw_log(screen);
        break;
    }
    draw_open_sheet(screen);
    draw_safety_chip(screen, make_regions(ui.m, {}).top);
}

} // namespace lanternleaf
