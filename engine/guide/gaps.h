// Gaps: why a pad is not reached: where its tape, or the pad itself, misses what would feed it. Internal to
// guide/.
#pragma once

#include "findings/finding.h"
#include "guide/checks.h"

namespace lanternleaf {

/// One miss between two things on the table.
struct Gap {
    Finding finding; ///< rule led-not-reached, at the gap, with the ids of both sides and the pads beyond it
    double mm = 0.0; ///< how far they miss each other; 0 when they overlap but do not conduct
    bool lies_over = false; ///< they overlap, and glue or a patch keeps them apart
};

/// The gaps that explain the pads not reached, each once.
[[nodiscard]] std::vector<Gap> find_gaps(const GuideFacts& facts, const Stage& stage,
                                         const std::vector<PadState>& states);
/// What to do about a gap, in order, one action each.
[[nodiscard]] std::vector<std::string> mend_gap(const Gap& gap, const Words& words);

} // namespace lanternleaf
