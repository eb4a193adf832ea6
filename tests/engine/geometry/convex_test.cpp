// Convex polygons against figures worked by hand, counted points and the circle-segment formula.
#include "geometry/convex.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

using namespace lanternleaf;

namespace {

double total(const std::vector<Convex>& pieces) {
    double sum = 0.0;
    for (const Convex& piece : pieces) {
        sum += area(piece);
    }
    return sum;
}

/// Area shared by two shapes, by the share of a fine raster's points that lie in both: knows nothing of
/// clipping.
double shared_by_counting(const Convex& a, const Convex& b, const Box& box, int steps) {
    int inside = 0;
    const Vec2 step{(box.max.x - box.min.x) / steps, (box.max.y - box.min.y) / steps};
    for (int y = 0; y < steps; ++y) {
        for (int x = 0; x < steps; ++x) {
            const Vec2 p{box.min.x + (x + 0.5) * step.x, box.min.y + (y + 0.5) * step.y};
            inside += contains(a, p) && contains(b, p) ? 1 : 0;
        }
    }
    return inside * step.x * step.y;
}

Convex random_rectangle(std::mt19937& random) {
    std::uniform_real_distribution<double> place(-10, 10);
    std::uniform_real_distribution<double> size(2, 14);
    std::uniform_real_distribution<double> turn(0, 360);
    const Vec2 at{place(random), place(random)};
    const Vec2 wide{size(random), size(random)};
    return rectangle(at, wide, turn(random));
}

} // namespace

TEST_CASE("rectangles have their sizes, corners run clockwise", "[convex]") {
    const Convex plain = rectangle({10, 20}, {4, 7}, 0);
    CHECK(area(plain) == Approx(28));
    CHECK(centroid(plain).x == Approx(10));
    CHECK(centroid(plain).y == Approx(20));
    const Convex quarter = rectangle({10, 20}, {4, 7}, 90);
    CHECK(bounds(quarter).min == Vec2{6.5, 18}); // exact: quarter turns involve no rounding
    CHECK(bounds(quarter).max == Vec2{13.5, 22});
    CHECK(area(Convex{{0, 0}, {0, 1}, {1, 0}}) == Approx(0.5)); // given the other way round
}

TEST_CASE("clip areas worked by hand", "[convex]") {
    const Convex square = rectangle({0, 0}, {2, 2}, 0);
    SECTION("quarter shared") {
        CHECK(area(clip(square, rectangle({1, 1}, {2, 2}, 0))) == Approx(1));
    }
    SECTION("inside") {
        CHECK(area(clip(rectangle({0, 0}, {1, 1}, 30), square)) == Approx(1));
    }
    SECTION("octagon: two squares at 45 degrees share 8 (sqrt 2 - 1)") {
        const Convex both = clip(square, rectangle({0, 0}, {2, 2}, 45));
        CHECK(both.size() == 8);
        CHECK(area(both) == Approx(8 * (std::sqrt(2.0) - 1)));
    }
    SECTION("a shared edge is no overlap") {
        CHECK(clip(square, rectangle({2, 0}, {2, 2}, 0)).empty());
    }
    SECTION("apart") {
        CHECK(clip(square, rectangle({5, 0}, {2, 2}, 0)).empty());
    }
    SECTION("5 mm strip crossed at 60 degrees: 25 / sin 60") {
        const Convex across = clip(rectangle({0, 0}, {100, 5}, 0), rectangle({0, 0}, {100, 5}, 60));
        CHECK(area(across) == Approx(25 / std::sin(radians(60))));
    }
    SECTION("empty in, empty out") {
        CHECK(clip(square, Convex{}).empty());
    }
}

TEST_CASE("subtract leaves disjoint pieces that add up", "[convex]") {
    const Convex square = rectangle({0, 0}, {10, 10}, 0);
    std::vector<Convex> left;
    SECTION("hole in the middle") {
        subtract(square, rectangle({0, 0}, {4, 4}, 45), left);
        CHECK(total(left) == Approx(84));
        for (std::size_t i = 0; i < left.size(); ++i) {
            for (std::size_t k = i + 1; k < left.size(); ++k) {
                CHECK(clip(left[i], left[k]).empty());
            }
        }
    }
    SECTION("covered whole") {
        subtract(square, rectangle({0, 0}, {11, 11}, 0), left);
        CHECK(left.empty());
    }
    SECTION("covered exactly") {
        subtract(square, square, left);
        CHECK(left.empty());
    }
    SECTION("missed: kept in one piece") {
        subtract(square, rectangle({20, 0}, {4, 4}, 0), left);
        REQUIRE(left.size() == 1);
        CHECK(left[0].size() == 4);
    }
    SECTION("a corner sticks out: 100 - 25") {
        subtract(square, rectangle({5, 5}, {10, 10}, 0), left);
        CHECK(total(left) == Approx(75));
    }
}

TEST_CASE("random rectangles: shared area agrees with counting points, parts add up", "[convex]") {
    std::mt19937 random(20260101);
    for (int round = 0; round < 60; ++round) {
        const Convex a = random_rectangle(random);
        const Convex b = random_rectangle(random);
        const double shared = area(clip(a, b));
        CHECK(area(clip(b, a)) == Approx(shared).margin(1e-9));
        std::vector<Convex> left;
        subtract(a, b, left);
        CHECK(total(left) + shared == Approx(area(a)));
        // 400 x 400 points: each edge of b misjudges at most about one row of points along it.
        CHECK(shared == Approx(shared_by_counting(a, b, bounds(a), 400)).margin(0.005 * area(a)));
        CHECK((nearest(a, b).mm == 0.0) == (shared > 0.0));
    }
}

TEST_CASE("area in a disc against the circle-segment formula", "[convex]") {
    // Segment beyond a chord at distance d from the centre: r^2 acos(d/r) - d sqrt(r^2 - d^2) (Bronshtein and
    // Semendyayev, Handbook of Mathematics, section on the circle; from memory).
    const double r = 10;
    const auto segment = [&](double d) { return r * r * std::acos(d / r) - d * std::sqrt(r * r - d * d); };
    const Vec2 c{30, 80};
    for (const double d : {-9.0, -2.5, 0.0, 2.5, 6.0, 9.9}) {
        const Convex half_plane = rectangle({c.x + d + 50, c.y}, {100, 100}, 0);
        CHECK(area_in_disc(half_plane, c, r) == Approx(segment(d)));
    }
    CHECK(area_in_disc(rectangle(c, {100, 100}, 17), c, r) == Approx(std::numbers::pi * 100));
    CHECK(area_in_disc(rectangle(c, {5, 4}, 17), c, r) == Approx(20));
    CHECK(area_in_disc(rectangle({c.x + 60, c.y}, {100, 100}, 0), c, r) == Approx(0).margin(1e-9)); // touches
    // A 5 mm band through the middle: what two segments at 2.5 leave of the disc.
    CHECK(area_in_disc(rectangle(c, {100, 5}, 33), c, r) ==
          Approx(std::numbers::pi * 100 - 2 * segment(2.5)));
    // A quadrant.
    CHECK(area_in_disc(rectangle(c + Vec2{50, 50}, {100, 100}, 0), c, r) == Approx(std::numbers::pi * 25));
}

TEST_CASE("distances worked by hand", "[convex]") {
    const Convex a = rectangle({0, 0}, {10, 10}, 0);
    const Nearest side = nearest(a, rectangle({12, 0}, {10, 4}, 0));
    CHECK(side.mm == Approx(2));
    CHECK(side.on_a.x == Approx(5));
    CHECK(side.on_b.x == Approx(7));
    CHECK(nearest(a, rectangle({8 + 3, 9 + 4}, {6, 8}, 0)).mm ==
          Approx(5));                                        // corner 5,5 to corner 8,9: 3-4-5
    CHECK(nearest(a, rectangle({0, 0}, {2, 2}, 0)).mm == 0); // one inside the other
    CHECK(nearest(a, rectangle({10, 0}, {10, 10}, 0)).mm == Approx(0).margin(1e-12)); // touching
    CHECK(distance_to_segment({3, 4}, {0, 0}, {-5, 0}) == Approx(5));
    CHECK(distance_to_segment({3, 4}, {0, 0}, {10, 0}) == Approx(4));
    CHECK(distance_to_segment({3, 4}, {0, 0}, {0, 0}) == Approx(5));
}

TEST_CASE("room to spare inside a window", "[convex]") {
    const Convex overlap = rectangle({60, 45}, {5, 5}, 0);
    CHECK(spare_inside(overlap, rectangle({60, 45}, {14, 14}, 0)) == Approx(4.5));
    CHECK(spare_inside(overlap, rectangle({61, 45}, {14, 14}, 0)) == Approx(3.5));
    CHECK(spare_inside(overlap, rectangle({66, 45}, {14, 14}, 0)) == Approx(-1.5));
}

TEST_CASE("growing moves every edge outward", "[convex]") {
    CHECK(area(grown(rectangle({3, 4}, {10, 6}, 20), 2)) == Approx(14 * 10));
    CHECK(area(grown(rectangle({3, 4}, {10, 6}, 20), -1)) == Approx(8 * 4));
    CHECK(grown(Convex{}, 1).empty());
}

TEST_CASE("boxes include their edges; the empty box touches nothing", "[convex]") {
    Box box;
    CHECK_FALSE(box.touches(Box{{-1e9, -1e9}, {1e9, 1e9}}));
    CHECK_FALSE(box.grown(5).contains({0, 0}));
    box.add(Vec2{0, 0});
    box.add(Vec2{2, 1});
    CHECK(box.contains({2, 1}));
    CHECK(box.touches(Box{{2, 1}, {3, 3}}));
    CHECK_FALSE(box.touches(Box{{2.01, 1}, {3, 3}}));
    CHECK(box.grown(0.5).contains({2.5, 1.5}));
}
