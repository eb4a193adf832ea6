// Progress: how far one build of a batch is, read from its journal alone. Exists so that a board of many
// builders needs no card and no fold: only what was done, when, and whether it passed.
#pragma once

#include "base/outcome.h"
#include "guide/step.h"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

struct StepProgress {
    bool closed = false;
    bool first_pass = false;   ///< proved, never stopped and never passed regardless
    bool regardless = false;   ///< closed although it was not proved
    std::int64_t worked_s = 0; ///< without long silences (history/timeline.h)
};

struct BuildProgress {
    std::string id;
    std::string batch;
    std::string maker; ///< nickname; empty: not told
    std::int64_t started_s = 0;
    std::int64_t last_s = 0;    ///< the last event
    int step = 1;               ///< the open step; 8 once all are closed
    std::int64_t stopped_s = 0; ///< since when its open step is stopped; 0: it is not
    bool finished = false;
    bool abandoned = false;
    bool cell_in = false;
    std::array<StepProgress, kStepCount> steps{};
};

/// From a build's journal. A Problem for what is no journal; a text without a whole line gives a progress
/// without an id.
[[nodiscard]] Outcome<BuildProgress> progress_of(const std::string& text, const std::string& file);

[[nodiscard]] std::int64_t worked_in_all_s(const BuildProgress& build);
[[nodiscard]] bool passed_first_time(const BuildProgress& build); ///< finished, every step at first

} // namespace lanternleaf
