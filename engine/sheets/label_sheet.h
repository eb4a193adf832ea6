// Label sheet: the caution for the back of the card, to cut out and stick on; our own words and drawing.
// Never says that a card is safe or compliant.
#pragma once

#include "card/card.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "words/words.h"

#include <vector>

namespace lanternleaf {

/// Fits the card's back with room round it.
[[nodiscard]] Vec2 label_size(const Card& card, const Lettering& lettering, const Words& words = english());
/// As many labels as cards, on one page at most; the page says how often to print it.
[[nodiscard]] std::vector<Page> label_sheet(const Card& card, int cards, Paper paper,
                                            const Lettering& lettering, const Words& words = english());

} // namespace lanternleaf
