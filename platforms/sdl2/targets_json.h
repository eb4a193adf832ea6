// Targets as JSON: what can be touched now, for a finger that is not part of the program.
// Exists so that the tests of the window and of the browser build tap by the same names at the same places.
#pragma once

#include "paint/targets.h"

#include <string>

namespace lanternleaf {

/// An array: name, role, label, value, rect and visible as [x, y, w, h] in points, enabled, checked,
/// reachable.
[[nodiscard]] std::string targets_json(const Targets& targets);

} // namespace lanternleaf
