// Timeline: how long each move and each step took, from the moments in a build's journal.
// Exists because a step that lay open overnight did not take a night: long silences are told apart from work.
#pragma once

#include "guide/step.h"
#include "record/event.h"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

/// A silence longer than this between two events is a pause, not work (our judgement: the longest single move
/// of the demo cards takes a few minutes).
inline constexpr std::int64_t kPause_s = 20 * 60;

struct MoveTime {
    std::string move; ///< Move::id
    std::int64_t worked_s = 0;
};

struct StepTime {
    std::int64_t worked_s = 0; ///< moves, measuring and proving
    std::int64_t paused_s = 0;
    int pauses = 0;
    std::int64_t proving_s = 0;  ///< of worked_s: after the last move
    std::vector<MoveTime> moves; ///< in the order first done; a move done again adds up
};

using Timeline = std::array<StepTime, kStepCount>;

/// The time between two events belongs to the later one's step, and to the move that is done next. What comes
/// after the build was finished (notes, photos, a mending) counts for nothing.
[[nodiscard]] Timeline timeline_of(const std::vector<Event>& events);

[[nodiscard]] std::int64_t worked_s(const Timeline& timeline);
[[nodiscard]] std::int64_t paused_s(const Timeline& timeline);

/// "40 s", "4 min", "1 h 04": as long as a maker would say.
[[nodiscard]] std::string spoken_span(std::int64_t seconds);

} // namespace lanternleaf
