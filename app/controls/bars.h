// Bars: a reading on its expected range, a share of a whole, a brightness, and the pips of a step's moves.
// Exists so that numbers are also seen. None of them can be touched; each adds a note that says what it
// shows.
#pragma once

#include <optional>

#include "controls/ui.h"

namespace lanternleaf {

struct RangeLook {
    std::string spoken{}; ///< "expect 0.1 to 0.6 ohms, read 0.3"
    float low = 0;        ///< the expected range, as shares 0..1 of the trough
    float high = 1;
    std::optional<float> value{}; ///< the reading, as a share; kept inside
};

/// A trough with the expected box (leaf tint) and the reading (lamp dot).
void range_bar(Ui& ui, std::string_view name, const Rect& r, const RangeLook& look);

/// A trough filled to `share` in `fill`; 12 to 16 high.
void share_bar(Ui& ui, const Rect& r, float share, Colour fill);

/// An upright brightness bar (26 x 76): filled to `share` with a cap of ink; none at all shows the struck
/// bulb.
void brightness_bar(Ui& ui, const Rect& r, float share, bool green);

/// The moves of a step: done, now, later. Drawn from the right end of r leftwards when `right`, else from the
/// left. Shrinks its gaps, and then counts in words, when there is no room.
void pips(Ui& ui, const Rect& r, int count, int now, bool right);

} // namespace lanternleaf
