// Nav: the five places in the top bar, with the mark at its left.
// Exists so that every screen has the same way out. On tablets held upright and on phones the mark with a
// chevron opens the same five as a sheet, which the frame draws.
#pragma once

#include <span>

#include "controls/ui.h"

namespace lanternleaf {

struct NavPlace {
    std::string name{}; ///< target name: "nav/make"
    std::string label{};
    Icon icon = Icon::None;
};

/// One place in the bar. Selected: bold, leaf, with an amber bar under it.
bool nav_item(Ui& ui, const NavPlace& place, const Rect& r, bool selected);
[[nodiscard]] float nav_item_width(const Ui& ui, const NavPlace& place);

/// All places from x on, in a bar. Gives the index of the one tapped, or -1. `right` receives where they end.
int nav_bar(Ui& ui, std::span<const NavPlace> places, int selected, const Rect& bar, float x,
            float* right = nullptr);

/// The mark with a chevron and a title: opens the places on upright tablets and phones. Target "nav/menu".
bool nav_menu(Ui& ui, const Rect& r, std::string_view title);

} // namespace lanternleaf
