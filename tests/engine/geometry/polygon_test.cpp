// Polygons with hollows, and segments that meet; worked by hand.
#include "geometry/polygon.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {
// A U: 30 wide, 20 high, with a hollow 10 wide from the top down to y = 15.
const std::vector<Vec2> kU{{0, 0}, {10, 0}, {10, 15}, {20, 15}, {20, 0}, {30, 0}, {30, 20}, {0, 20}};
} // namespace

TEST_CASE("a polygon with a hollow", "[polygon]") {
    CHECK(std::abs(signed_area(kU)) == Approx(600 - 150));
    CHECK(contains(kU, {5, 5}));
    CHECK(contains(kU, {25, 5}));
    CHECK(contains(kU, {15, 18}));
    CHECK_FALSE(contains(kU, {15, 5}));
    CHECK(contains(kU, {10, 5})); // on the edge
    CHECK_FALSE(contains(kU, {-1, 20}));
    CHECK_FALSE(contains(kU, {31, 15}));
}

TEST_CASE("pieces overlap a polygon only where area is shared", "[polygon]") {
    CHECK_FALSE(overlaps(kU, rectangle({15, 5}, {8, 8}, 0)));     // wholly in the hollow
    CHECK_FALSE(overlaps(kU, rectangle({15, 7.5}, {10, 15}, 0))); // fills the hollow, shares its edges
    CHECK(overlaps(kU, rectangle({15, 5}, {12, 8}, 0)));          // one mm into either arm
    CHECK(overlaps(kU, rectangle({15, 12}, {8, 8}, 0)));          // into the floor
    CHECK(overlaps(kU, rectangle({15, 10}, {100, 100}, 0)));      // covers all
    CHECK(overlaps(kU, rectangle({5, 5}, {1, 1}, 30)));           // wholly inside
    CHECK_FALSE(overlaps(kU, rectangle({40, 5}, {4, 4}, 0)));
    const std::vector<Vec2> other_way(kU.rbegin(), kU.rend());
    CHECK(overlaps(other_way, rectangle({15, 5}, {12, 8}, 0)));
    CHECK_FALSE(overlaps(other_way, rectangle({15, 5}, {8, 8}, 0)));
}

TEST_CASE("segments that meet", "[polygon]") {
    Vec2 at;
    CHECK(segments_meet({0, 0}, {10, 10}, {0, 10}, {10, 0}, &at));
    CHECK(at.x == Approx(5));
    CHECK(at.y == Approx(5));
    CHECK_FALSE(segments_meet({0, 0}, {4, 4}, {0, 10}, {10, 0}));
    CHECK(segments_meet({0, 0}, {5, 5}, {0, 10}, {10, 0}));       // ends on it
    CHECK_FALSE(segments_meet({0, 0}, {10, 0}, {0, 1}, {10, 1})); // parallel
    CHECK(segments_meet({0, 0}, {10, 0}, {6, 0}, {20, 0}, &at));  // along each other
    CHECK(at.x == Approx(8));
    CHECK_FALSE(segments_meet({0, 0}, {10, 0}, {11, 0}, {20, 0}));
    CHECK(segments_meet({0, 0}, {0, 0}, {-1, 0}, {1, 0})); // a point on a segment
}
