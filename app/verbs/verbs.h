// Verbs: the command line of the program: each verb answers without a window, for scripts, tests and tablets
// alike. Exit status: 0 all well, 1 the card has a problem, 2 the input cannot be read (one line on `err`).
#pragma once

#include "base/outcome.h"

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <span>
#include <string>

namespace lanternleaf {

/// One screen of the app to be drawn into a picture file.
struct ShotRequest {
    std::string card;
    std::string screen;
    int width = 0;
    int height = 0;
    std::string out;
    std::string language = "en"; ///< a file of assets/words
};

/// What the verbs need from the program round them.
struct VerbSurroundings {
    std::string assets;                  ///< the folder with parts.json
    std::string fonts{};                 ///< the folder with the face for print; empty for a built-in one
    std::function<std::int64_t()> now_s; ///< seconds since 1970, UTC
    /// Draws a screen; empty in a program that cannot draw, and `shot` is then not offered.
    std::function<Outcome<Done>(const ShotRequest&)> shot;
};

/// Whether these arguments (without the program's name) are for run_verb; else they open the app: none, or
/// one card or build file.
[[nodiscard]] bool is_for_verbs(std::span<const std::string> args);

/// Runs what `args` ask for and returns the exit status.
[[nodiscard]] int run_verb(std::span<const std::string> args, std::ostream& out, std::ostream& err,
                           const VerbSurroundings& around);

} // namespace lanternleaf
