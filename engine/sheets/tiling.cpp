#include "sheets/tiling.h"

#include <cmath>

namespace lanternleaf {

namespace {

int count_of(double size_mm, double window_mm) {
    if (size_mm <= window_mm) {
        return 1;
    }
    const double step = window_mm - kTileOverlap_mm;
    return static_cast<int>(std::ceil((size_mm - kTileOverlap_mm) / step - 1e-9));
}

} // namespace

Tiling tile(const Box& drawing, Vec2 window_mm) {
    const Vec2 size = drawing.max - drawing.min;
    Tiling made;
    made.columns = count_of(size.x, window_mm.x);
    made.rows = count_of(size.y, window_mm.y);
    const Vec2 step = window_mm - Vec2{kTileOverlap_mm, kTileOverlap_mm};
    const Vec2 whole{step.x * made.columns + kTileOverlap_mm, step.y * made.rows + kTileOverlap_mm};
    constexpr double kShares[] = {0.2, 0.8}; // where along a seam the crosses stand
    for (int row = 0; row < made.rows; ++row) {
        for (int column = 0; column < made.columns; ++column) {
            Tile& tile = made.tiles.emplace_back();
            tile.column = column;
            tile.row = row;
            const Vec2 from = drawing.min + Vec2{step.x * column, step.y * row};
            tile.window = {from, from + window_mm};
            for (const int side : {0, 1}) { // the seam before this column or row, and the one after
                const int seam_x = column + side;
                if (seam_x > 0 && seam_x < made.columns) {
                    const double x = drawing.min.x + step.x * seam_x + kTileOverlap_mm / 2.0;
                    tile.seams.push_back({{x, drawing.min.y}, {x, drawing.min.y + whole.y}});
                    for (const double share : kShares) {
                        tile.crosses.push_back({x, from.y + window_mm.y * share});
                    }
                }
                const int seam_y = row + side;
                if (seam_y > 0 && seam_y < made.rows) {
                    const double y = drawing.min.y + step.y * seam_y + kTileOverlap_mm / 2.0;
                    tile.seams.push_back({{drawing.min.x, y}, {drawing.min.x + whole.x, y}});
                    for (const double share : kShares) {
                        tile.crosses.push_back({from.x + window_mm.x * share, y});
                    }
                }
            }
        }
    }
    return made;
}

} // namespace lanternleaf
