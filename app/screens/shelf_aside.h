// Shelf aside: the files of the library that cannot be opened, as the foot of the shelf.
// Exists so that one bad file neither hides the others nor goes unmentioned.
#pragma once

#include "screens/screen.h"

namespace lanternleaf {

/// Draws the panel when there is something to tell. Returns the y below it.
float draw_set_aside(Screen& screen, const Rect& page, float y);

} // namespace lanternleaf
