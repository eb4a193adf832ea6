// Mend: the parts the Mend place is put together from, one function per panel. Only mend*.cpp use these.
#pragma once

#include "controls/button.h"
#include "screens/screen.h"
#include "view/mend_view.h"

namespace lanternleaf {

inline void act(Screen& screen, MendCommand command) {
    screen.say(command::Mend{std::move(command)});
}

/// The card with a badge on every light tapped and a letter at every suspect; taps go round the states.
void draw_mend_card(Screen& screen, const MendView& view, const Rect& area);
/// A close-up of one place of the card, ringed, with the letter of its cause and the tape to lay there.
void draw_mend_lens(Screen& screen, const Rect& frame, Vec2 at_mm, const std::string& letter,
                    const std::vector<Vec2>& bridge_mm = {});

/// The causes with letter, percentage and bar. Panels return their height; `draw` false only measures.
float draw_causes_panel(Screen& screen, const MendView& view, const Rect& r, bool draw);
/// What to do next: feel the cell, tap the lights, the next test with its answers, or how the chosen cause is
/// mended.
float draw_next_panel(Screen& screen, const MendView& view, const Rect& r, bool draw);

// The contents of the next panel, within its padding.
float draw_mend_fix(Screen& screen, const MendView& view, int cause, Rect r, bool draw);
float draw_mend_none_fits(Screen& screen, const MendView& view, Rect r, bool draw);
/// What the maker has at hand, as chips.
float draw_mend_tools(Screen& screen, const Rect& r, bool draw);

// How panels are set.
Rect mend_inside(const Ui& ui, const Rect& panel);
/// A panel's head with a small word at its right; it goes below when both do not fit.
float mend_head(Ui& ui, const Rect& r, Icon icon, const std::string& title, const std::string& aside,
                bool draw);
float mend_words(Ui& ui, const Rect& r, const std::string& text, TextStyle style, Colour colour, bool draw);
/// Lines with amber numbers before them.
float mend_numbered(Ui& ui, const Rect& r, const std::vector<std::string>& lines, bool draw);

struct MendButton {
    std::string name;
    ButtonLook look;
};

/// Two buttons side by side, under each other where their words need it. `tapped` becomes 0 or 1.
float mend_two(Screen& screen, const Rect& r, const MendButton& left, const MendButton& right, bool leaf,
               bool draw, int& tapped);

} // namespace lanternleaf
