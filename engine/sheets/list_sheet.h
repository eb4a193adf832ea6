// List sheet: what to cut for one card, what to buy for a batch, and what it costs when prices are given.
#pragma once

#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "sheets/shopping.h"
#include "words/words.h"

namespace lanternleaf {

[[nodiscard]] std::vector<Page> list_sheet(const Card& card, const Shopping& list, const SpareRules& rules,
                                           const std::optional<Costs>& costs, Paper paper,
                                           const Lettering& lettering, const Words& words = english());

} // namespace lanternleaf
