// Puts the app at a screen of a batch: a class on its board, its sheets, and the lists of a repeater.
#pragma once

#include "frame/frame.h"

namespace lanternleaf {

/// "batch", "batch/new", "batch/cells", "batch/close", "batch/name", "batch/builder", "batch/take",
/// "make/confirm".
[[nodiscard]] Outcome<Done> show_batch(App& app, const std::string& name, const std::string& card_path);

} // namespace lanternleaf
