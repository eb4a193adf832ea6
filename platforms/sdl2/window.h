// Window: opens the app in a window and runs it until it is closed.
// Exists to hold the loop: it waits for events and draws only when the frame pacer says so, so that an idle
// tablet draws nothing at all.
#pragma once

#include "app_window.h"

namespace lanternleaf {

/// Runs to the end. The problem is what kept the window from opening.
[[nodiscard]] Outcome<Done> run_window(const WindowOptions& options);

} // namespace lanternleaf
