// Board panel: the card view inside a place, with its camera: pinch, wheel, drag, zoom buttons, mirror,
// layers. Exists so that Make, Mend and Draw look at the card in one way.
#pragma once

#include "screens/screen.h"
#include "view/board_view.h"
#include "view/viewport.h"

namespace lanternleaf {

/// What a place shows on the card.
struct BoardWish {
    const Card* card = nullptr;
    const Parts* parts = nullptr;
    const Conductors* conductors = nullptr;
    BoardProgress progress;
    std::vector<double> glow;
    std::vector<BoardMark> marks;
    std::string card_folder; ///< where its art is
};

/// Draws the card in `area` and turns gestures into camera commands.
void draw_board_panel(Screen& screen, const Rect& area, const BoardWish& wish);

/// The row of legend samples; only those that fit.
void draw_legend(Screen& screen, const Rect& row, bool moving, bool fabric);

/// Zoom out, zoom in, fit, layers, front; returns the width used.
float draw_board_tools(Screen& screen, const Rect& row, bool brief);

/// The conductors of the whole card as built (for drawing what is not laid yet too).
[[nodiscard]] const Conductors& whole_conductors(const OpenBuild& build);

} // namespace lanternleaf
