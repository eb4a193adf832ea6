// Window: opens the app in a window and runs it until it is closed.
// Exists to hold the loop: it waits for events and draws only when the frame pacer says so, so that an idle
// tablet draws nothing at all.
#pragma once

#include <filesystem>
#include <string>

#include "base/outcome.h"

namespace lanternleaf {

struct WindowOptions {
    std::filesystem::path fonts;  ///< folder with the two faces
    std::filesystem::path assets; ///< folder with parts.json, cards/, safety/
    std::string library;          ///< the maker's own folder; empty: the usual place
    int width = 1180;
    int height = 820;
    std::string open;        ///< card or build to open, or empty
    bool log_frames = false; ///< one line on the error stream for each frame drawn, and a sum at the end
};

/// Runs to the end. The problem is what kept the window from opening.
[[nodiscard]] Outcome<Done> run_window(const WindowOptions& options);

} // namespace lanternleaf
