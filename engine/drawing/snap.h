// Snap: where a finger's rough place becomes a place a ruler can find: pads, holder contacts, ends of strips,
// straight runs, 15 degree steps, whole millimetres. Pure functions of the card and the finger.
// Exists so that a plan drawn by touch can be laid by hand: whole numbers, right angles, ends that meet.
#pragma once

#include "card/card.h"
#include "card/parts.h"

#include <optional>
#include <string>

namespace lanternleaf {

inline constexpr double kSnapGrid_mm = 1.0;
inline constexpr double kSnapTurn_deg = 15.0;

/// How far a finger may be off and still mean the thing: about half a finger's width on a tablet.
inline constexpr double kSnapReach_mm = 4.0;

enum class SnapKind {
    grid,     ///< whole millimetres
    turn,     ///< a 15 degree step, a whole length
    straight, ///< straight on from the last run
    in_line,  ///< 15 degree step, and level with a pad or strip the run leads to
    pad,      ///< the middle of a pad
    contact,  ///< the middle of a holder contact
    strip,    ///< on the centre line of a strip of the same side
};

struct Snap {
    Vec2 at_mm;
    SnapKind kind = SnapKind::grid;
    std::string on;         ///< what it holds on to: "L3+", "holder+", "N1"; empty for none
    double length_mm = 0.0; ///< of the run that would be laid; 0 for the first point
};

/// Whole millimetres.
[[nodiscard]] Vec2 snap_to_grid(Vec2 raw_mm);
/// The nearest 15 degree step, 0 up to 360.
[[nodiscard]] double snap_turn(double deg);
/// From `from`, along the 15 degree step nearest to the way to `raw`, a whole number of mm far (0 when `raw`
/// is nearer than half a millimetre).
[[nodiscard]] Vec2 snap_run(Vec2 from_mm, Vec2 raw_mm);

/// What is being laid or moved.
struct SnapQuestion {
    Side side = Side::negative;
    std::optional<Vec2> from_mm;   ///< the corner before, none for a first point
    std::optional<Vec2> before_mm; ///< the corner before that: gives the way straight on
    std::string ignore;            ///< id of the strip that is being changed
    double reach_mm = kSnapReach_mm;
};

/// For the next corner of a strip. Pads and contacts of the strip's own side win over strips, these over
/// straight on, these over 15 degree steps.
[[nodiscard]] Snap snap_corner(const Card& card, const Parts& parts, const SnapQuestion& question,
                               Vec2 raw_mm);

/// For an LED or resistor.
struct PartSnap {
    Vec2 at_mm;
    double turn_deg = 0.0;
    bool across = false; ///< it stands across a - and a + strip, the right way round
};

/// Across a - and a + run that lie side by side near the finger when the package's pads fit there; else whole
/// millimetres and `turn_deg` as it was.
[[nodiscard]] PartSnap snap_led(const Card& card, const Parts& parts, const std::string& type, Vec2 raw_mm,
                                double turn_deg);

} // namespace lanternleaf
