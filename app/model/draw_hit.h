// Which thing on the plan a finger means. Pure: a card, what was found of it, a place and a reach.
#pragma once

#include "model/draw_state.h"

namespace lanternleaf {

/// Corners of the selected strip first; then what lies right under the place, then what comes nearest to it:
/// lights and resistors before strips, these before patches and the holder, creases and places to keep clear
/// last.
[[nodiscard]] DrawHit hit_at(const DrawState& draw, Vec2 at_mm, double reach_mm);

/// Two strips of opposite sides that lie over each other there; null when there is none.
[[nodiscard]] const Overlap* crossing_at(const DrawState& draw, Vec2 at_mm, double reach_mm);

/// The edge of the sheet nearest to a place.
[[nodiscard]] Edge edge_at(const Sheet& sheet, Vec2 at_mm);

/// Where a part, patch or the holder stands; a strip's middle. Nothing for an unknown id.
[[nodiscard]] std::optional<Vec2> place_of(const Card& card, const std::string& id);

} // namespace lanternleaf
