// Assess: what a laid card is worth: its report, what is left to say against it, and which of that comes from
// the laying rather than from where the maker put the parts.
#pragma once

#include "findings/review.h"
#include "routing/lay.h"
#include "routing/route.h"

namespace lanternleaf::routing_stages {

/// What the card's findings are with nothing laid but what is kept.
[[nodiscard]] std::vector<Finding> findings_before(const Card& kept, const Parts& parts);

/// Fills everything but why_not and move_led.
[[nodiscard]] Suggestion assess(LaidCard laid, const Parts& parts, const std::vector<Finding>& before,
                                double bound_mm, const Words& words);

} // namespace lanternleaf::routing_stages
