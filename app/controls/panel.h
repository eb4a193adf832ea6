// Panels: the papers that controls and text lie on, and the fold lines between their parts.
// Exists so that every surface has the same radius, edge and shadow. Nothing here can be touched, except that
// a panel given a name keeps touches from going through it.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

/// A raised sheet of paper: hairline, under-edge, soft shadow.
void panel(Ui& ui, const Rect& r);
/// A hollow in a panel or bar: troughs, fields, rails.
void well(Ui& ui, const Rect& r, Colour colour);
/// A dashed fold line from a to b.
void divider(Ui& ui, Point a, Point b);
/// The whole page behind everything.
void table(Ui& ui);
/// Top bar (hairline below) or action bar (hairline above), reaching to the window's edges.
void bar(Ui& ui, const Rect& r, bool at_top);
/// A disc of a number: to-dos (lamp), findings on the card (tone of their kind).
void number_disc(Ui& ui, Point centre, float radius, std::string_view number, Colour fill, Colour ink,
                 Colour ring);

} // namespace lanternleaf
