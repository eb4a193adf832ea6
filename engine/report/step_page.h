// Step page: the seven steps of a card as one HTML page, for those who listen to a screen or enlarge it.
// Exists because the app's canvas holds no text that a screen reader could find: the page says everything
// that Make says, move by move, in words alone.
#pragma once

#include "card/card.h"
#include "guide/step.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// HTML 5, well-formed as XML too. Headings run h1, h2, h3 without a gap, the cautions about cells stand
/// before the first step, links lead to each step, moves are an ordered list, every check has its reading and
/// what to look for without a meter.
[[nodiscard]] std::string step_page(const Card& card, const std::vector<Step>& steps,
                                    const Words& words = english());

} // namespace lanternleaf
