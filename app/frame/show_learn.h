// The named screens of a part's test, for pictures and tests.
#pragma once

#include "frame/frame.h"

namespace lanternleaf {

/// "learn" (the list, with one tape learnt), "learn/mark", "learn/led" (across the cell), "learn/tape",
/// "learn/reading", "learn/light", "learn/foam", "learn/done". False: no such one.
[[nodiscard]] bool show_learn(App& app, const std::string& name, const std::string& card_path);

} // namespace lanternleaf
