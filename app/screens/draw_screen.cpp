// Puts a frame together: the place, what lies over it, the notice, and the safety chip above everything.
#include "controls/panel.h"
#include "screens/batch.h"
#include "screens/screen.h"

namespace lanternleaf {

namespace {

void draw_place(Screen& screen) {
    switch (screen.state.place) {
    case Place::shelf:
        if (screen.state.batch) {
            draw_batch(screen);
        } else {
            draw_shelf(screen);
        }
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
}

// A screen that goes dark in the middle of a step would have to be woken with glue on the fingers, and one
// that goes dark under the paper loses the line that is being traced.
bool hands_are_busy(const AppState& state) {
    const bool making = state.place == Place::make || state.place == Place::mend;
    return state.light_box.open || (making && state.build && !state.build->record.finished);
}

} // namespace

void draw_screen(Screen& screen) {
    Ui& ui = screen.ui;
    const bool light = screen.state.light.has_value() && screen.state.notice == Notice::none;
    if (light) {
        ui.use_theme(night_theme()); // light is looked at in the dark, whatever the room
    } else if (ui.arrows_in == "light/hours") {
        ui.arrows_in.clear();
    }
    ui.host().keep_screen_on(hands_are_busy(screen.state));
    table(ui);
    if (screen.state.notice != Notice::none) {
        draw_notice(screen);
        return;
    }
    if (screen.state.light_box.open) {
        draw_light_box(screen);
        return;
    }
    if (light) {
        draw_light(screen);
    } else {
        draw_place(screen);
    }
    draw_open_sheet(screen);
    draw_safety_chip(screen, make_regions(ui.m, {}).top);
}

} // namespace lanternleaf
