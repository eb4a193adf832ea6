// Chips: pills that switch a layer on and off, the safety chip, small tags, and the tiles of a tool tray.
// Exists so that "on" is told by form (solid edge, open eye) and not by colour alone.
#pragma once

#include "controls/ui.h"

namespace lanternleaf {

/// A pill that shows or hides something. True when tapped; the caller flips `on`.
bool chip(Ui& ui, std::string_view name, const Rect& r, std::string_view label, bool on);
[[nodiscard]] float chip_width(const Ui& ui, std::string_view label);

/// The safety chip, named "safety": plum edge, shield and words. Stays above scrims: draw it after them.
bool safety_chip(Ui& ui, const Rect& r, std::string_view label);
[[nodiscard]] float safety_chip_width(const Ui& ui, std::string_view label);

/// A tag that cannot be touched: a pad reached or not, a state. `problem` gives it a plum edge and the
/// octagon.
void tag(Ui& ui, const Rect& r, std::string_view label, bool problem);

/// A pill with words on amber ("Start") or, plain, on paper with an ink edge (ids of LEDs).
void pill(Ui& ui, const Rect& r, std::string_view label, bool now);

/// A tile of a tray: picture above a word. `draw` icon; selected = amber tint with a heavy ink edge.
struct TileLook {
    std::string label{};
    Icon icon = Icon::None;
    bool selected = false;
    bool enabled = true;
    std::string reason{};
};

bool tool_tile(Ui& ui, std::string_view name, const Rect& r, const TileLook& look);

} // namespace lanternleaf
