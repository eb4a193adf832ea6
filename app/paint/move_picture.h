// Move picture: what the hands do in one move, in up to three small frames with a caption each.
// Exists so that a move is understood at a glance from where the card lies on the table.
#pragma once

#include "paint/pen.h"
#include "paint/theme.h"
#include "view/move_picture_spec.h"

namespace lanternleaf {

struct MovePictureLook {
    float phase = 0;       ///< 0..1 round and round; 0 for a still picture (reduced motion)
    float caption_em = 18; ///< 0: no captions
    float gap = 8;
    float radius = 9;
};

/// Draws the frames side by side, filling `r`, captions along its foot.
void draw_move_picture(Pen& pen, const Theme& theme, const Rect& r, const MovePictureSpec& spec,
                       const MovePictureLook& look = {});

} // namespace lanternleaf
