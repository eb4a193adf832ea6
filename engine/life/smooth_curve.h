// Smooth curve: a table of points joined so that the curve neither overshoots nor has corners.
// Exists so that read-off discharge tables can be stepped through without a jump in slope at every row.
#pragma once

#include <span>
#include <utility>
#include <vector>

namespace lanternleaf {

/// Piecewise cubic through the points, monotone wherever they are (F. N. Fritsch and R. E. Carlson, "Monotone
/// piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980) 238-246, slopes by the harmonic mean of F.
/// N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304). Level outside.
class SmoothCurve {
public:
    SmoothCurve() = default;
    /// (x, y) with rising x; at least one point.
    explicit SmoothCurve(std::span<const std::pair<double, double>> points);

    [[nodiscard]] double at(double x) const;

    [[nodiscard]] bool empty() const { return knots_.empty(); }

private:
    struct Knot {
        double x = 0.0;
        double y = 0.0;
        double slope = 0.0;
    };

    std::vector<Knot> knots_;
};

} // namespace lanternleaf
