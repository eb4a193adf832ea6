// Gallery: one page with every control in every state, for people who change their look.
// Exists so that a change to a control can be seen in one picture, by day and by night, on any form; the
// tests touch the same page.
#pragma once

#include "controls/keypad.h"
#include "controls/ui.h"

namespace lanternleaf {

/// What the page remembers. Open what you want to see.
struct GalleryState {
    int place = 2;
    int view = 0;
    float hours = 6;
    double copies = 3;
    bool picture = true;
    bool notes = false;
    bool sheet = false;
    bool adult = false;
    int taps = 0;
    KeypadEntry reading;
    std::string maker = "Ines";
};

/// Draws the whole window.
void draw_gallery(Ui& ui, GalleryState& state);

} // namespace lanternleaf
