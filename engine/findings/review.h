// Review: runs the table of rules over a card and ranks what they found.
//   Card + Parts -> conductors -> circuit -> lighting -> findings
#pragma once

#include "circuit/lights.h"
#include "conductors/conductors.h"
#include "findings/finding.h"
#include "words/words.h"

#include <span>

namespace lanternleaf {

/// All that rules may look at; made once per review.
struct ReviewFacts {
    const Card& card;
    const Parts& parts;
    const Conductors& conductors;
    const Circuit& circuit;
    const Solution& solution;
    const Lighting& lighting;        ///< fresh cell, pressed
    const Lighting& steady_lighting; ///< same card left on
    const Words& words;              ///< what the findings are said in
};

/// One row of the rule table. `check` appends what it finds.
struct Rule {
    const char* id;
    const char* reason; ///< one line: why it matters
    void (*check)(const ReviewFacts& facts, std::vector<Finding>& out);
};

[[nodiscard]] std::span<const Rule> rules();

/// Everything known of one card at one moment.
struct Review {
    Conductors conductors;
    Circuit circuit;
    Solution solution;
    Lighting lighting;
    Lighting steady_lighting;
    std::vector<Finding>
        findings; ///< problems first, then cautions, then notes; within a level in table order
    [[nodiscard]] int count(Level level) const;
};

/// The findings speak through `words`.
[[nodiscard]] Review review(const Card& card, const Parts& parts, const Words& words = english());

} // namespace lanternleaf
