// FindingsRow: what the engine has to say about one thing, with what can be done about it.
// Exists so that a problem, a caution and an all-clear differ in form (bar, icon, word) and not by colour
// alone.
#pragma once

#include <span>

#include "controls/button.h"

namespace lanternleaf {

enum class FindingMark { Problem, Caution, Fine };

struct FindingLook {
    FindingMark mark = FindingMark::Fine;
    int number = 0;     ///< the badge on the card; 0 for none
    std::string word{}; ///< "Problem", "Caution", "Fine"
    std::string text{};
    std::vector<ButtonLook> fixes{};
};

struct FindingHit {
    bool row = false; ///< the row itself was tapped: show the place
    int fix = -1;     ///< which fix was tapped
};

[[nodiscard]] float findings_row_height(const Ui& ui, float width, const FindingLook& look);
/// Targets NAME for the row, NAME/fix/0 … for the fixes. r.h as from findings_row_height.
FindingHit findings_row(Ui& ui, std::string_view name, const Rect& r, const FindingLook& look);

/// Colours of a kind: its ink and its tint.
[[nodiscard]] Colour mark_colour(const Theme& theme, FindingMark mark);
[[nodiscard]] Colour mark_tint(const Theme& theme, FindingMark mark);
[[nodiscard]] Icon mark_icon(FindingMark mark);

} // namespace lanternleaf
