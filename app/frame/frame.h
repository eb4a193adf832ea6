// Frame: one turn of the app: draw what is, take what was meant, carry it out.
// Exists so that the window, the tests and the pictures run the very same turn; each brings its own host,
// clock and pictures.
#pragma once

#include "controls/ui.h"
#include "model/update.h"
#include "paint/pictures.h"

#include <cstdint>
#include <string>

namespace lanternleaf {

struct App {
    AppState state;
    Surroundings around;
    Pictures* pictures = nullptr; ///< outlives the app
};

/// Where an app finds and keeps things; see Surroundings.
struct AppFolders {
    std::string assets;
    std::string library;
    std::string fonts{};
    std::string device{};
};

/// Reads the parts, settings and library. A Problem when the shipped parts cannot be read: then nothing can
/// be built.
[[nodiscard]] Outcome<App> open_app_in(const AppFolders& folders, Pictures& pictures, std::int64_t now_s);

/// Between ui.begin_frame() and ui.end_frame(). `now_s` is UTC, for the records.
void app_frame(App& app, Ui& ui, std::int64_t now_s);

/// Puts the app at a screen, for pictures and tests: "shelf", "draw", "make", "mend", "log", "safety",
/// "notice", "keypad", "no-meter", "differs", "wrong", "audience", "settings", "steps", "proof", "verdict",
/// "mend/..." (show_mend.h), "learn/..." (show_learn.h), "batch", "batch/...", "make/confirm" (show_batch.h),
/// "light", "light-tired", "light-traces", or "make/S/M": step S at move M; with "-night" behind it, by
/// night. Works on a build of `card_path` in the app's library. False: no such screen.
[[nodiscard]] Outcome<Done> show_screen(App& app, const std::string& name, const std::string& card_path);

} // namespace lanternleaf
