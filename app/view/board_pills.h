// Board pills: where the id pills stand so that they hide nothing: no strip under them, none over another.
// Exists because a label that covers the tape it names is worse than none; the places are found, not drawn by
// hand.
#pragma once

#include "view/board_view.h"

namespace lanternleaf {

/// Size of a pill for a text of so many characters: 1.38 em high, 1.75 em wide for two, wider for more.
[[nodiscard]] Vec2 pill_size_mm(std::size_t characters, double em, double ppm);
/// Sets PartView::pill_mm of every part and the pill of the start mark. The places depend on the card and the
/// sizes alone, never on how far the build has come, so that a pill does not wander from move to move.
void place_pills(BoardView& view, const Conductors& conductors, const BoardOptions& options);

} // namespace lanternleaf
