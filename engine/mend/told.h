// Told: one thing that was seen, tried or measured in Mend as a line of words, and back.
// Exists so that a search for a fault can stand in a build's journal: a kill in the middle loses no answer.
//
//   "light dark L3"  "lights again"  "pressing yes"  "test 2 press-pads/L3"  "test cannot-tell warm"
//   "meter 8.2 ohm flap L3+"  "meter OL ohm flap bed"  "meter 2.9 V cell"
//   "read 0.3 meter-reach/L3+"  "read OL meter-apart"
#pragma once

#include "mend/session.h"

#include <string>

namespace lanternleaf {

[[nodiscard]] std::string write_told(const Observation& observation);
/// A Problem when the line is none of the above. Whether the card has that light or test, observe() tells.
[[nodiscard]] Outcome<Observation> read_told(const std::string& line);

/// Every light unseen again.
inline constexpr const char* kLightsAgain = "lights again";

/// The session after a line of either sort.
[[nodiscard]] Outcome<MendSession> observe_told(const MendSession& session, const std::string& line);

} // namespace lanternleaf
