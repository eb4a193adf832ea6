// Choices: what can be done with the thing that is selected on the plan, in words and commands. Exists apart
// from its drawing so that a row of buttons knows nothing of strips and foam. Only draw*.cpp use it.
#pragma once

#include "screens/draw.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct Choice {
    const char* name; ///< of the target
    std::string label;
    Icon icon;
    Command command;
};

struct Selection {
    std::string title;
    std::string words;
    std::vector<Choice> choices;
};

/// Of DrawState::selected; empty when nothing is.
[[nodiscard]] Selection selection_of(const DrawState& draw, const Words& words);

} // namespace lanternleaf
