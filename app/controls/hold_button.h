// HoldButton: an answer that takes four seconds of holding, so that a child's tap does not give it.
// Exists for the safety notice. It fills from left to right, counts down in words and, let go, drains at
// once. Works the same with a finger, a mouse button, Space or Enter.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

inline constexpr double kHold_s = 4.0;

struct HoldLook {
    std::string label{};    ///< "I am an adult and I have read this"
    std::string idle{};     ///< second line while not held: "Hold for four seconds."
    std::string one_more{}; ///< "keep holding: 1 second more"
    std::string more{};     ///< "keep holding: {n} seconds more"; {n} is replaced
};

/// True once, in the frame in which the hold is complete.
bool hold_button(Ui& ui, std::string_view name, const Rect& r, const HoldLook& look);

} // namespace lanternleaf
