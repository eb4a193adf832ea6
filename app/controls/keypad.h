// Keypad: the sheet on which a reading is entered, with the expected range in sight.
// Exists because a meter reading is a number with one point, and large keys are quicker than an on-screen
// keyboard. Digits, point, Backspace and Enter of a real keyboard work too.
#pragma once

#include <optional>

#include "controls/sheet.h"
#include "controls/ui.h"

namespace lanternleaf {

struct KeypadLook {
    std::string title{};  ///< "Reading: flap to L3+"
    std::string expect{}; ///< "expect 0.1–0.6 Ω"
    std::string unit{};   ///< "Ω"
    std::string save{};   ///< "Save {value}"; {value} becomes "0.3 Ω"
    std::string over{};   ///< "Meter shows OL"; empty for none
    std::string note{};   ///< under the right end of the range: "5 Ω or more: loose joint"
    double low = 0;       ///< expected range
    double high = 1;
    double full = 2;                  ///< value at the right end of the range bar
    std::string low_text{};           ///< "0.1"
    std::string high_text{};          ///< "0.6"
    std::optional<Rect> over_panel{}; ///< lies over this panel in landscape
};

/// What has been typed, kept by the caller while the sheet is open.
struct KeypadEntry {
    bool open = false;
    std::string entry{};

    /// The number typed; nothing while it is empty or only a point.
    [[nodiscard]] std::optional<double> value() const;
    /// Adds a digit or the point if that still makes a number of at most six characters.
    void type(char c);
    void erase();
};

enum class KeypadResult { None, Save, Over, Close };

/// Draws the sheet while state.open (and while it slides away). Targets NAME/0…9, /point, /del, /over, /save,
/// /close.
KeypadResult keypad(Ui& ui, std::string_view name, const KeypadLook& look, KeypadEntry& state);

} // namespace lanternleaf
