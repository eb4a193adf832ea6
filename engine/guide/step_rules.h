// Step rules: which findings belong to which step. Internal to guide/.
// Exists so that a step is stopped by what was done in it and by nothing that comes later.
#pragma once

#include "findings/finding.h"
#include "guide/facts.h"

namespace lanternleaf {

/// The findings on the table after `step` that are this step's business, worst first. `as_built` has the LEDs
/// as they really lie. Steps before the LEDs are judged without them, step 2 with the LEDs alone.
[[nodiscard]] std::vector<Finding> findings_of_step(const GuideFacts& facts, const Card& as_built,
                                                    StepId step);

} // namespace lanternleaf
