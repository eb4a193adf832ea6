// Repair: what puts a stopped step right, as a change to the card as built, and the close-up that shows
// where. Exists so that "I bridged it: check again" records the repair and judges the repaired card, not the
// broken one.
#pragma once

#include "guide/change.h"
#include "guide/verdict.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

struct Repair {
    Change change;
    std::string done; ///< what the maker says when it is done: "I bridged it"
};

/// The repair of the verdict's first finding that has one; empty when it is nothing a change can say (a joint
/// rubbed harder, a lead held better): then the maker measures again.
[[nodiscard]] std::optional<Repair> repair_for(const Card& as_built, const Parts& parts,
                                               const StepVerdict& verdict, const Words& words = english());

/// One place at large: two strips that miss each other, and the piece that would join them.
struct CloseUp {
    Vec2 from_mm; ///< nearest points of the two strips
    Vec2 to_mm;
    double gap_mm = 0.0;
    std::string near; ///< ids of the strips
    std::string far;
    Vec2 near_mm; ///< a place on each, for its name
    Vec2 far_mm;
    std::vector<Vec2> bridge_mm; ///< centre line of the piece to lay
    double bridge_width_mm = 5.0;
    double bridge_length_mm = 0.0;
};

/// For a verdict whose first gap lies between two strips; empty otherwise.
[[nodiscard]] std::optional<CloseUp> close_up_for(const Card& as_built, const Parts& parts,
                                                  const StepVerdict& verdict);

} // namespace lanternleaf
