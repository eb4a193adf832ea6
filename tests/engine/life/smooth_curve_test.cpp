#include "life/smooth_curve.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lanternleaf;

TEST_CASE("A smooth curve meets its points, stays between them and is level outside", "[life]") {
    const std::vector<std::pair<double, double>> points = {
        {0, 3.0}, {1, 2.9}, {2, 2.9}, {4, 2.0}, {4.5, 0.5}};
    const SmoothCurve curve(points);
    for (const auto& [x, y] : points) {
        CHECK(curve.at(x) == Approx(y));
    }
    CHECK(curve.at(-1) == 3.0);
    CHECK(curve.at(9) == 0.5);
    double before = curve.at(0);
    for (double x = 0.01; x <= 4.5; x += 0.01) {
        const double now = curve.at(x);
        CHECK(now <= before + 1e-12); // monotone where the points are
        before = now;
    }
    CHECK(curve.at(1.5) == Approx(2.9));
    const std::vector<std::pair<double, double>> line = {{0, 0}, {1, 2}, {3, 6}};
    CHECK(SmoothCurve(line).at(2.2) == Approx(4.4)); // a straight line stays straight
    const std::vector<std::pair<double, double>> one = {{1, 7}};
    CHECK(SmoothCurve(one).at(-3) == 7.0);
}
