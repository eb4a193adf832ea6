// Reports as JSON: what `--json` prints, one object each, keys in the order of the format's description.
// Numbers have six significant digits: more than any figure of the model deserves, and the same on every
// machine.
#pragma once

#include "card/card.h"
#include "findings/review.h"
#include "guide/step.h"
#include "record/walk.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// `check --json`.
[[nodiscard]] std::string check_report(const Card& card, const Review& review);
/// `steps --json`.
[[nodiscard]] std::string steps_report(const Card& card, const std::vector<Step>& steps);

struct MadeFiles {
    std::string journal;
    std::string record;
    std::string copy; ///< folder with the record as page, sheet and table; empty: not asked for
};

/// `make --json`.
[[nodiscard]] std::string make_report(const Walk& walk, const MadeFiles& files);

} // namespace lanternleaf
