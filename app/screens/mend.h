// Mend: the parts the Mend place is put together from, one function per panel. Only mend*.cpp use these.
#pragma once

#include "screens/screen.h"
#include "view/mend_view.h"

namespace lanternleaf {

inline void act(Screen& screen, MendCommand command) {
    screen.say(command::Mend{std::move(command)});
}

/// The card with a badge on every light tapped and a letter at every suspect; taps go round the states.
void draw_mend_card(Screen& screen, const MendView& view, const Rect& area);
/// A close-up of one place of the card, ringed, with the letter of its cause.
void draw_mend_lens(Screen& screen, const Rect& frame, Vec2 at_mm, const std::string& letter);

/// The causes with letter, percentage and bar. Both panels return their height; `draw` false only measures.
float draw_causes_panel(Screen& screen, const MendView& view, const Rect& r, bool draw);
/// What to do next: feel the cell, the next test with its answers, or how the chosen cause is mended.
float draw_next_panel(Screen& screen, const MendView& view, const Rect& r, bool draw);

} // namespace lanternleaf
