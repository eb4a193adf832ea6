// Needs: what to have on the table for a batch, spares included. Exists so that nobody runs out in the middle
// of a lesson. The amounts are those of sheets/shopping.h; here they are one line each, to read at arm's
// length.
#pragma once

#include "batch/batch.h"
#include "sheets/shopping.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct NeedLine {
    std::string thing;  ///< "coin cell"
    std::string amount; ///< "22", "4.2 m"
    std::string spare;  ///< "20 + 2"; empty when there is no spare
};

/// The share of spares: a class's, or a repeater's (spare_rules()).
[[nodiscard]] SpareRules spares_of(BatchFor purpose);

[[nodiscard]] std::vector<NeedLine> needs_of(const Card& card, const Parts& parts, const Batch& batch,
                                             const Words& words = english());

} // namespace lanternleaf
