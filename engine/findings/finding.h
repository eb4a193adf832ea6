// Finding: one thing the engine has to say about a card, with its place, its numbers and its cure.
// Exists so that the command line, the screens, the steps and the printed sheets all say the same.
#pragma once

#include "geometry/vec2.h"

#include <string>
#include <vector>

namespace lanternleaf {

enum class Level { problem, caution, note };

struct Finding {
    std::string rule; ///< id from format.md's table: "short-circuit", "clearance", ...
    Level level = Level::note;
    Vec2 at_mm;
    std::vector<std::string> parts; ///< ids: "N1", "L3-", "P1", "holder"
    std::string text;               ///< one plain sentence with numbers
    std::string fix;                ///< what to do, one sentence
};

[[nodiscard]] const char* name_of(Level level);

} // namespace lanternleaf
