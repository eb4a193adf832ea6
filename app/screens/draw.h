// Draw: the parts the Draw place is put together from, one function per panel. Only draw*.cpp use these.
#pragma once

#include "screens/screen.h"
#include "view/viewport.h"

namespace lanternleaf {

inline void act(Screen& screen, DrawCommand command) {
    screen.say(command::Draw{std::move(command)});
}

/// The row of undo, zoom, suggestions, what is saved, and the way into Make.
void draw_plan_tools(Screen& screen, const Rect& row);
/// The tools, in one column or one row.
void draw_tray(Screen& screen, const Rect& area, bool column);
/// The card with its handles; turns taps, drags, pinches and keys into commands.
void draw_plan_card(Screen& screen, const Rect& area, bool editing);
/// Handles, the run being laid and the length bubble, over the card.
void draw_handles(Screen& screen, const Viewport& at);
/// Problems, cautions and notes with their fixes; `lights_too` puts the brightness under them.
void draw_findings_panel(Screen& screen, const Rect& area, bool lights_too);
/// The pills that show and hide layers.
void draw_layer_chips(Screen& screen, const Rect& row);
/// What can be done with the thing that is selected or laid; false, and nothing drawn, when there is none.
bool draw_selection(Screen& screen, const Rect& area, bool brief);
/// Traces being looked for or looked at; false, and nothing drawn, when there are none. Keeps the search
/// going.
bool draw_suggestions(Screen& screen, const Rect& area, bool brief);
/// Which sheets to print, on what paper; one of the Draw place's sheets.
void draw_print_sheet(Screen& screen);
/// How bright each light will be.
void draw_brightness(Screen& screen, const Rect& area);

} // namespace lanternleaf
