// Tiling: how a drawing larger than the page is cut into overlapping windows, and where the crosses stand by
// which the pages are put together again.
#pragma once

#include "geometry/convex.h"

#include <vector>

namespace lanternleaf {

/// Neighbouring windows share this much: room for a seam and tape.
inline constexpr double kTileOverlap_mm = 12.0;

/// One page's window on the drawing, in the drawing's millimetres.
struct Tile {
    int column = 0;
    int row = 0;
    Box window;
    std::vector<Vec2> crosses;                ///< on the seams; the same points on both pages of a seam
    std::vector<std::pair<Vec2, Vec2>> seams; ///< along the middle of each shared band, right across the
                                              ///< drawing so that dashes fall alike on both pages
};

struct Tiling {
    int columns = 1;
    int rows = 1;
    std::vector<Tile> tiles; ///< row by row; one tile when all fits
};

/// Windows of `window_mm` over `drawing`; even overlaps are not needed, the last column and row are left
/// partly empty.
[[nodiscard]] Tiling tile(const Box& drawing, Vec2 window_mm);

} // namespace lanternleaf
