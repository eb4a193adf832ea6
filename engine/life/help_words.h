// Help words: a help as a sentence. Private to this module. Exists so that the search is about figures only.
#pragma once

#include "life/helps.h"

#include <string>

namespace lanternleaf {

/// "Without L3: 14 000 presses instead of 9 800, …": what to do, what it gains, what it costs.
[[nodiscard]] std::string help_sentence(const Card& card, const Parts& parts, const Help& help, Use use,
                                        double press_s, const Words& words);

} // namespace lanternleaf
