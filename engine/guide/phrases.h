// Phrases: places and directions in the words a maker uses at the table.
// Exists so that "below L3", "towards the top edge" and "30 mm from the left edge" are worded once. The sheet
// lies face up, y runs down, so "the top" is y = 0.
#pragma once

#include "card/card.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// "L6-" -> "L6−" (U+2212): what is shown; ids and check names keep the plain sign.
[[nodiscard]] std::string shown(const std::string& pad);
/// "30 mm from the left edge and 80 mm from the top edge".
[[nodiscard]] std::string from_edges(Vec2 at_mm, const Words& words);
/// "30 mm from the left, 80 mm from the top".
[[nodiscard]] std::string from_edges_short(Vec2 at_mm, const Words& words);
/// "below L3" when an LED is near, else empty. Near is within 25 mm of its middle.
[[nodiscard]] std::string near_led(const Card& card, Vec2 at_mm, const Words& words);
/// "to the right", "to the top", "to the bottom left".
[[nodiscard]] std::string which_way(Vec2 heading, const Words& words);
/// "towards the right edge", "towards the bottom left corner".
[[nodiscard]] std::string towards(Vec2 heading, const Words& words);
/// A length before another one that says the unit: "20" of "20 × 30 mm". In inches each says its own.
[[nodiscard]] std::string first_of_two(double mm, const Words& words);

} // namespace lanternleaf
