// Mend, first help: what to do before anything else when a light stays dark, and what the engine can see from
// here.
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "screens/make.h"
#include "screens/sheets.h"

namespace lanternleaf {

void draw_mend(Screen& screen) {
    Ui& ui = screen.ui;
    const Regions regions = make_regions(ui.m, {.actions = false});
    const Rect page = regions.page.shrunk(ui.m.phone() ? 12.0f : 28.0f, 0);
    Scroll scroll(ui, "mend", regions.page);
    const TextStyle body = ui.m.type(Type::Body);
    const Rect r{page.x, 0, std::min(page.w, 760.0f), 0};
    float y = scroll.top() + 20;
    y += draw_heading(ui, r, y, "A light stays dark?", Type::H1) + 8;
    y += ui.pen().paragraph({r.x, y}, r.w, "**Is anything warm?** Take the cell out first, look second.",
                            body, ui.theme().ink) +
         16;
    const char* const kFirst[] = {
        "Pull out any tab or film between cell and tape.",
        "Read the cell: the + face looks up at the flap unless the plan says otherwise.",
        "Press each end of a dark light with a dry eraser. If it wakes, press it down for good.",
        "Rub the joints of its trace hard, one after the other.",
        "Hold the light alone across a good cell, both ways round. If it never shows, change it."};
    int number = 0;
    for (const char* line : kFirst) {
        number_disc(ui, {r.x + 16, y + 16}, 16, std::to_string(++number), ui.theme().lamp, ui.theme().on_lamp,
                    ui.theme().lamp);
        y += std::max(32.0f, ui.pen().paragraph({r.x + 46, y + (32 - body.lead) / 2}, r.w - 46, line, body,
                                                ui.theme().ink)) +
             12;
    }
    y += 8;
    if (screen.state.build && !screen.state.build->record.finished) {
        y = draw_rows(
            screen, {r.x, y, r.w, 0}, y,
            {{"mend/differs", "I found how mine differs", Icon::Differ, command::OfferDifferences{}, false},
             {"mend/back", "Back to the move", Icon::Make, command::GoTo{Place::make}, false}});
    }
    scroll.done(y + 16 - scroll.top());
    draw_top_bar(screen, regions.top, "");
}

} // namespace lanternleaf
