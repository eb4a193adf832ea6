// Finding rows: what the side of the plan lists, one row for one cause. Exists because a sheet on which
// nothing is laid yet has two unreached pads for every light, and that is one thing to do, not fourteen.
// Pure.
#pragma once

#include "findings/review.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct FindingRow {
    std::vector<int> findings; ///< indices into Review::findings, the first stands for all
    int number = 0;            ///< on the row and on the card; 0 for notes
    Level level = Level::note;
    std::string text;
};

/// Problems, cautions, notes; within a level causes before what follows from them, else in the review's
/// order. Pads that wait for tape, that one strip does not reach yet, and lights that the two sides bridge
/// share a row.
[[nodiscard]] std::vector<FindingRow> finding_rows(const std::vector<Finding>& findings,
                                                   const Words& words = english());

} // namespace lanternleaf
