#include "life/smooth_curve.h"

#include <algorithm>
#include <cassert>

namespace lanternleaf {

SmoothCurve::SmoothCurve(std::span<const std::pair<double, double>> points) {
    knots_.reserve(points.size());
    for (const auto& [x, y] : points) {
        assert(knots_.empty() || x > knots_.back().x);
        knots_.push_back({x, y, 0.0});
    }
    const auto secant = [this](std::size_t i) {
        return (knots_[i + 1].y - knots_[i].y) / (knots_[i + 1].x - knots_[i].x);
    };
    const std::size_t n = knots_.size();
    for (std::size_t i = 0; i < n && n > 1; ++i) {
        if (i == 0 || i + 1 == n) {
            knots_[i].slope = secant(i == 0 ? 0 : n - 2);
            continue;
        }
        const double before = secant(i - 1);
        const double after = secant(i);
        if (before * after <= 0.0) {
            continue; // a peak or trough stays one
        }
        const double wide = knots_[i + 1].x - knots_[i - 1].x;
        const double near = (wide + knots_[i + 1].x - knots_[i].x) / (3.0 * wide);
        knots_[i].slope = before * after / (near * after + (1.0 - near) * before);
    }
}

double SmoothCurve::at(double x) const {
    assert(!knots_.empty());
    if (!(x > knots_.front().x)) {
        return knots_.front().y;
    }
    if (x >= knots_.back().x) {
        return knots_.back().y;
    }
    const auto above =
        std::upper_bound(knots_.begin(), knots_.end(), x, [](double v, const Knot& k) { return v < k.x; });
    const Knot& b = *above;
    const Knot& a = *(above - 1);
    const double h = b.x - a.x;
    const double t = (x - a.x) / h;
    const double u = 1.0 - t;
    return u * u * ((1.0 + 2.0 * t) * a.y + t * h * a.slope) +
           t * t * ((1.0 + 2.0 * u) * b.y - u * h * b.slope);
}

} // namespace lanternleaf
