// Plan: one whole laying of a card: the main ribbon and the branches for what it could not reach. Exists
// between the search for a single ribbon and the request with its suggestions.
#pragma once

#include "routing/lay.h"
#include "routing/route.h"

namespace lanternleaf::routing_stages {

struct Plan {
    std::vector<Woven> ribbons;   ///< places count in the task's stops
    std::vector<int> left_out;    ///< stops that no clean ribbon reaches
    std::vector<double> blame_mm; ///< trouble at each stop when the whole was tried on one ribbon

    [[nodiscard]] double trouble() const;
    [[nodiscard]] double price() const;
};

/// A ribbon that bends no wider than this follows its lights closely.
inline constexpr double kTightBend_mm = 10.0;

[[nodiscard]] Plan make_plan(const WeaveTask& task, Random& random);

/// Trouble at each stop of a ribbon: what its two links break and clash.
[[nodiscard]] std::vector<double> blame_of(const WeaveTask& task, const Woven& woven);

} // namespace lanternleaf::routing_stages
