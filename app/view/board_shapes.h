// Board shapes: the small sums behind the card view: where ticks stand, which folds lie, what the open flap
// covers. Exists apart from board_view so that each of look's distances is one function with one test.
#pragma once

#include "view/board_view.h"

namespace lanternleaf {

/// Distances of the + and - signs on tape, in millimetres.
inline constexpr double kTickPitch_mm = 8.0;
inline constexpr double kWideTickPitch_mm = 12.0; ///< below kSmallPpm
inline constexpr double kTickFromFold_mm = 4.2;
inline constexpr double kTickFromJoint_mm = 4.5;
inline constexpr double kSmallPpm = 2.2;

/// Inner vertices of a centre line, with the way before and after.
[[nodiscard]] std::vector<FoldMark> folds_of(const std::vector<Vec2>& path_mm);
/// Signs along the part that lies: clear of folds, of places where strips lie over each other, of parts, of
/// patches and of the holder's edges.
[[nodiscard]] std::vector<Vec2> ticks_of(const StripView& strip, const Conductors& conductors, int index,
                                         const std::vector<PartView>& parts, const HolderView& holder,
                                         double ppm);
/// How long a part is drawn: over the middle of both its pads, and at least 9.6 mm.
[[nodiscard]] double drawn_length(const Package& package);
[[nodiscard]] LightTint tint_of(const std::string& colour);
/// Woven tapes have a sheet resistance far above metal foil's (catalogue: 0.05 against 0.0005 ohm per
/// square).
[[nodiscard]] bool is_fabric(const TapeType& tape);
/// The holder while its flap lies open. The flap reaches from the hinge, half way between the discs, over its
/// disc and as far sideways as the tape that starts on it needs before it crosses the hinge.
[[nodiscard]] HolderView holder_view(const Card& card, const Parts& parts, const Conductors& conductors);

} // namespace lanternleaf
