// Cause words: a fault as a maker reads it: what it is, why it may be, and what to do. Internal to mend/.
// Exists so that the words stand on one page, one action a sentence, and nobody is blamed.
#pragma once

#include "mend/session.h"

namespace lanternleaf {

/// Everything of a Cause but its probability and ids.
[[nodiscard]] Cause describe_fault(const MendModel& model, int fault);

} // namespace lanternleaf
