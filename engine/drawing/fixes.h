// Fixes: the cures that the engine can carry out by itself, each as an edit to be done with one tap.
// Exists so that a finding is not only told. A fix is offered only after it was tried: the finding is gone
// from the card with it, and nothing else has become worse.
#pragma once

#include "drawing/edit.h"
#include "findings/review.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct Fix {
    std::string label; ///< on the button: "Add a patch", "Turn L3"
    Edit edit;
};

/// At most two, the gentlest first; none when the engine knows no cure that holds. `now` is the review of
/// `card`. Tries at most kMostTries cards.
inline constexpr int kMostTries = 16;
[[nodiscard]] std::vector<Fix> fixes_for(const Card& card, const Parts& parts, const Review& now,
                                         const Finding& finding, const Words& words = english());
[[nodiscard]] std::vector<Fix> fixes_for(const Card& card, const Parts& parts, const Finding& finding,
                                         const Words& words = english());

/// The same thing is said by both: the same rule about the same parts (at about the same place when the parts
/// alone do not tell).
[[nodiscard]] bool same_finding(const Finding& a, const Finding& b);

} // namespace lanternleaf
