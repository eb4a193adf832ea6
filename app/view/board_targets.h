// Board targets: which thing on the card a finger means. Every LED, joint, strip end, patch and the holder
// answers within 28 points of it (56 across), and the nearest wins. Pure.
#pragma once

#include "view/board_view.h"
#include "view/viewport.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct BoardTarget {
    std::string name;
    Vec2 at_mm;
    double half_mm = 0.0; ///< the thing itself reaches this far from its middle
};

[[nodiscard]] std::vector<BoardTarget> board_targets(const BoardView& view);
/// Name of the nearest target that answers at `p`; empty when none does.
[[nodiscard]] std::string target_at(const BoardView& view, const Viewport& viewport, Point p,
                                    float least_across_px = 56.0f);

} // namespace lanternleaf
