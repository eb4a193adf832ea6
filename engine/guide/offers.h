// Offers: the ways in which the real card may differ from the plan at one move, ready to be chosen from.
// Exists so that "Mine is different" shows the few things that can be different here, not a form.
#pragma once

#include "guide/change.h"
#include "guide/step.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// Which of a change's figures the maker still has to give.
enum class OfferNeeds {
    nothing,
    length, ///< Change::mm, in steps of `step`
    place,  ///< Change::at_mm
    shift,  ///< Change::at_mm as a displacement
    type,   ///< one of `types`
    count,  ///< Change::count
};

struct ChangeOffer {
    Change change;        ///< filled with a sensible first guess
    std::string title;    ///< "I cut it and lapped the ends"
    std::string question; ///< "How far do they overlap?"; empty when nothing is asked
    OfferNeeds needs = OfferNeeds::nothing;
    double low = 0.0; ///< bounds of the figure
    double high = 0.0;
    double step = 1.0;
    std::vector<std::string> types;
};

/// Offers for a move of a step (`move` may be one past the last: the step as a whole), likeliest first.
[[nodiscard]] std::vector<ChangeOffer> offers_for(const Card& card, const Parts& parts, const Step& step,
                                                  int move, const Words& words = english());

} // namespace lanternleaf
