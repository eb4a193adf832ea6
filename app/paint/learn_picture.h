// Learn picture: what the hands do in one stage of a test of a part, in one frame.
// Exists beside the move pictures because a test belongs to no card: there is no plan to take it from.
#pragma once

#include "model/learn_state.h"
#include "paint/pen.h"
#include "paint/theme.h"

namespace lanternleaf {

/// Whether a stage has a picture.
[[nodiscard]] bool has_picture(LearnStage stage);
/// Fills `r`.
void draw_learn_picture(Pen& pen, const Theme& theme, const Rect& r, const LearnState& learn,
                        const Words& words);

} // namespace lanternleaf
