// Audience: what follows from "who will have this card?" for the way the cell is held.
// Exists because an easy flap is good practice among adults and exactly what keeps a cell within a child's
// reach. Never says that a card is safe or compliant; it defers to local rules.
#pragma once

#include "card/card.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// One way to go on.
struct AudienceChoice {
    std::string id;         ///< "go-on", "screw-holder", "without-cell", "not-now"
    std::string title;      ///< on the button
    std::string sentence;   ///< what it means
    std::string holder;     ///< type to change to; empty to keep the card's
    bool gives_cell = true; ///< false: the card is given without its cell
};

struct AudienceAdvice {
    bool must_choose = false; ///< true: the build does not start until a choice is made
    std::string headline;
    std::vector<std::string> sentences;
    std::vector<AudienceChoice> choices; ///< first is the one we suggest
};

/// What to say and offer for this audience with a holder that is closed so.
[[nodiscard]] AudienceAdvice advice_for(Audience audience, Closure closure, const Words& words = english());

/// The question's answers as a person reads them.
[[nodiscard]] std::string spoken(Audience audience, const Words& words = english());

/// The line for the back of every card, in our own words.
[[nodiscard]] std::string back_label(const Words& words = english());

} // namespace lanternleaf
