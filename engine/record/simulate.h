// Simulate: the reading that a check would give on the card as built. Internal to record/.
#pragma once

#include "guide/step.h"
#include "guide/verdict.h"

#include <optional>
#include <vector>

namespace lanternleaf {

/// Every check of a step in the order it is taken: those of its moves, then its proof.
[[nodiscard]] std::vector<Check> checks_of(const Step& step);
[[nodiscard]] const Check* find_check(const std::vector<Check>& checks, const std::string& id);

/// `check` is as the plan has it; `built` is the same check on the card as built, null when it has none there
/// (a pad that no tape reaches). Marked simulated. Empty when the card as built has nothing to measure there,
/// and for a thing to look for: nobody saw it, so nothing is claimed.
[[nodiscard]] std::optional<Reading> simulated_reading(const Card& as_built, const Parts& parts, StepId step,
                                                       const Check& check, const Check* built);

/// One reading against what must hold. Figures follow the tape and joints really used, so they are judged by
/// the card as built; no path where there must be none, and no light worse than planned, hold whatever was
/// changed.
[[nodiscard]] ReadingVerdict judge_against_plan(const Check& check, const Check* built,
                                                const Reading& reading, const Words& words);

} // namespace lanternleaf
