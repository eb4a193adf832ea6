// Buttons: plain, with an icon alone, the leaf-edged one for equal answers, and the primary with its turned
// corner. Exists so that pressed, disabled and focused look alike everywhere. A disabled button stays
// tappable: it says why.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

struct ButtonLook {
    std::string label{};
    Icon icon = Icon::None;
    bool enabled = true;
    std::string reason{}; ///< said in a toast when it is tapped while disabled
    bool bold = false;
    bool selected = false; ///< chosen tool, open filter: amber tint, heavy ink edge
    std::string spoken{};  ///< what is read out where the label is empty or short
};

/// A plain button. A label too wide for r is set in two lines.
bool button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look);
/// A square button with an icon and no word; `look.spoken` names it.
bool icon_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look);
/// The leaf-edged button: two equal answers, or the lesser of two "carry on".
bool leaf_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look);
/// The one main action of a screen. Space (a foot pedal) presses it.
bool primary_button(Ui& ui, std::string_view name, const Rect& r, const ButtonLook& look);

/// Width a button needs for its label on one line, at least ui.m.target.
[[nodiscard]] float button_width(const Ui& ui, const ButtonLook& look);
[[nodiscard]] float primary_width(const Ui& ui, const ButtonLook& look);

/// For other controls: icon and words in the middle of a box, wrapped if they must be; `icon_size` in points.
void icon_and_label(Ui& ui, const Rect& box, Icon icon, float icon_size, std::string_view label,
                    TextStyle style, Colour colour);

} // namespace lanternleaf
