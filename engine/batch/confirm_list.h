// Confirm list: a step for hands that know it: done from memory, then each line is confirmed. Exists because
// a repeater who is walked move by move for the twentieth card stops reading. The lines stand for the step's
// moves, so the record stays whole; readings and proof stay as they are.
#pragma once

#include "guide/step.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// One thing that must be true now.
struct ConfirmLine {
    std::string text;               ///< "N2 lies flat and is cut; folds: 1"
    std::string detail;             ///< the one figure or direction that is easily wrong
    std::vector<std::string> moves; ///< ids of the moves it stands for, in the order of the step
};

/// Lines for the moves of a step up to the first that only an adult does: the cell and what comes after it is
/// always gone through move by move. Moves that follow each other and are about the same thing share a line.
[[nodiscard]] std::vector<ConfirmLine> confirm_list(const Step& step, const Words& words = english());

} // namespace lanternleaf
