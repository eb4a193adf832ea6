// CheckBlock: the part of a step that proves it: what to measure, what to expect, where to enter it, and the
// way for makers without a meter. Exists so that every check looks the same and takes one tap to answer.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

struct CheckLook {
    std::string title{};    ///< "Check: flap to L3+"
    std::string expect{};   ///< "expect **0.1–0.6 Ω**"
    std::string value{};    ///< the reading, or empty
    std::string blank{};    ///< shown while there is none: "–.– Ω"
    std::string no_meter{}; ///< "I have no meter:\nlook for…"; empty for none
};

enum class CheckHit { None, Keypad, NoMeter };

[[nodiscard]] float check_block_height(const Ui& ui, float width, const CheckLook& look);
/// Targets NAME/field (opens the keypad) and NAME/no-meter. r.h as from check_block_height.
CheckHit check_block(Ui& ui, std::string_view name, const Rect& r, const CheckLook& look);

} // namespace lanternleaf
