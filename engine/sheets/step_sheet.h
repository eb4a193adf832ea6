// Step sheet: every step and move on paper, each with a picture, a box to tick and the reading to expect, for
// a day without a tablet.
#pragma once

#include "guide/step.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "words/words.h"

namespace lanternleaf {

[[nodiscard]] std::vector<Page> step_sheet(const Card& card, const Parts& parts, Paper paper,
                                           const Lettering& lettering, const Words& words = english());

} // namespace lanternleaf
