// StepRail: the seven steps as beads on a thread, with the one that is on now.
// Exists so that a maker always sees where they are and what is still closed. On narrow forms only "now"
// keeps its words.
#pragma once

#include <span>

#include "controls/ui.h"

namespace lanternleaf {

enum class RailState { Done, Now, Open, Stopped, Blocked };

struct Bead {
    std::string label{}; ///< "Lay the\nnegative trace"
    std::string brief{}; ///< for phones: "− trace"
    RailState state = RailState::Blocked;
};

/// Gives the index of the bead tapped, or -1. Targets rail/1 … rail/7. One bead is Now or Stopped and wears
/// the pill.
int step_rail(Ui& ui, const Rect& r, std::span<const Bead> beads);

} // namespace lanternleaf
