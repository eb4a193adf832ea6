// Board: draws the card view: sheet, picture, tape, patches, holder, LEDs, labels, and what the hands do now.
// Exists so that Make, Draw, Mend, Light and the pictures for printing all show the same card. It only draws
// what view/board_view prepared; sizes in millimetres come from there, the least sizes in points from here.
#pragma once

#include "paint/pen.h"
#include "paint/theme.h"
#include "view/board_view.h"
#include "view/viewport.h"

namespace lanternleaf {

/// A texture of the host (whatever its renderer calls one); nullptr: none.
using ImageHandle = void*;

/// What the host and the clock add to a view.
struct BoardLook {
    /// The card's line art, white with the lines in its opacity (see view/pencil_mask.h); drawn in pencil.
    ImageHandle art = nullptr;
    float art_ratio = 1.0f; ///< its height / width
    float label_em = 17.0f; ///< id pills
    float note_em = 16.0f;  ///< ruler, "inside the flap"
    float chevrons = 0.0f;  ///< 0..1: how far the chevrons have travelled within one pitch; 0 when still
    float ring = 1.0f;      ///< 0..1: how much of the verdict's rings is drawn
    bool ruler = true;
    bool labels = true; ///< id pills
    bool halos = true;  ///< light of the LEDs
    bool cover = true;  ///< sliver of the opened cover
};

/// Draws inside viewport.area only.
void draw_board(Pen& pen, const Theme& theme, const BoardView& view, const Viewport& viewport,
                const BoardLook& look);

} // namespace lanternleaf
