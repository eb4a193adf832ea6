// Ribbon: the outline of one strip of tape, as a chain of convex quads along its centre line.
// Exists so that "how far along is this point" and "what does it cover" come from the same shape. Ends are
// square; at a fold the two quads meet on the mitre line, so that the pieces tile the outline and areas add
// up.
#pragma once

#include "geometry/convex.h"

#include <vector>

namespace lanternleaf {

/// One straight run of a strip.
struct Run {
    Vec2 from_mm;
    Vec2 to_mm;
    double starts_at_mm = 0.0; ///< arc length of `from_mm` along the centre line
    double length_mm = 0.0;
    Convex outline; ///< this run's share of the strip's outline, corners filled
    Box box;
};

struct Ribbon {
    double width_mm = 0.0;
    double length_mm = 0.0; ///< centre-line length, end to end
    std::vector<Run> runs;  ///< one per segment of the path; zero-length segments are left out
    std::vector<Convex>
        fold_places;            ///< one per inner vertex that bends: the square (or mitre) of doubled tape
    std::vector<Vec2> folds_mm; ///< where: the inner vertices that bend, in order
    Box box;
};

/// Sweeps `path_mm` by `width_mm`: square ends, corners filled (mitred up to a right angle, square beyond
/// it).
[[nodiscard]] Ribbon make_ribbon(std::span<const Vec2> path_mm, double width_mm);
/// Arc length of the point of the centre line nearest to `p`.
[[nodiscard]] double along(const Ribbon& ribbon, Vec2 p);
/// The point of the centre line at arc length `at_mm` (clamped to the ends).
[[nodiscard]] Vec2 point_at(const Ribbon& ribbon, double at_mm);
/// Unit direction of travel at arc length `at_mm`.
[[nodiscard]] Vec2 heading_at(const Ribbon& ribbon, double at_mm);

} // namespace lanternleaf
