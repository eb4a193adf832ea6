// The outline of a strip, its folds and places along it; areas worked by hand.
#include "geometry/ribbon.h"

#include <catch2/catch.hpp>

#include <random>

using namespace lanternleaf;

namespace {

Ribbon ribbon_of(std::vector<Vec2> path, double width = 5) {
    return make_ribbon(path, width);
}

double outline_area(const Ribbon& ribbon) {
    double sum = 0.0;
    for (const Run& run : ribbon.runs) {
        sum += area(run.outline);
    }
    return sum;
}

bool covers(const Ribbon& ribbon, Vec2 p) {
    for (const Run& run : ribbon.runs) {
        if (contains(run.outline, p)) {
            return true;
        }
    }
    return false;
}

bool tiles(const Ribbon& ribbon) {
    for (std::size_t i = 0; i < ribbon.runs.size(); ++i) {
        for (std::size_t k = i + 1; k < ribbon.runs.size(); ++k) {
            if (!clip(ribbon.runs[i].outline, ribbon.runs[k].outline).empty()) {
                return false;
            }
        }
    }
    return true;
}

} // namespace

TEST_CASE("a straight strip is a square-ended rectangle", "[ribbon]") {
    const Ribbon ribbon = ribbon_of({{10, 20}, {60, 20}});
    REQUIRE(ribbon.runs.size() == 1);
    CHECK(ribbon.length_mm == Approx(50));
    CHECK(outline_area(ribbon) == Approx(250));
    CHECK(ribbon.box.min == Vec2{10, 17.5});
    CHECK(ribbon.box.max == Vec2{60, 22.5});
    CHECK(ribbon.folds_mm.empty());
}

TEST_CASE("a right-angled fold: corner filled, pieces tile, doubled square", "[ribbon]") {
    // Either way round; outline = (40 + 2.5) x 5 + 30 x 5 - 2.5 x 5 worked by hand = length x width for
    // mitres.
    for (const double way : {1.0, -1.0}) {
        const Ribbon ribbon = ribbon_of({{0, 0}, {40, 0}, {40, 30 * way}});
        CHECK(outline_area(ribbon) == Approx(70 * 5));
        CHECK(tiles(ribbon));
        CHECK(covers(ribbon, {42.4, -2.4 * way})); // the outer corner is filled
        CHECK_FALSE(covers(ribbon, {42.6, -2.4 * way}));
        REQUIRE(ribbon.fold_places.size() == 1);
        CHECK(ribbon.folds_mm[0] == Vec2{40, 0});
        CHECK(area(ribbon.fold_places[0]) == Approx(25));
        CHECK(bounds(ribbon.fold_places[0]).min.x == Approx(37.5));
        CHECK(bounds(ribbon.fold_places[0]).max.y == Approx(2.5));
    }
}

TEST_CASE("mitred outlines have area length x width at any turn up to 90 degrees", "[ribbon]") {
    // Each mitre adds on the outer side what it takes on the inner one: a property of mitres, by hand.
    std::mt19937 random(7);
    std::uniform_real_distribution<double> turn(-90, 90);
    std::uniform_real_distribution<double> size(6, 40); // never too short for two mitres of 2.5
    for (int round = 0; round < 50; ++round) {
        std::vector<Vec2> path{{0, 0}};
        double heading = turn(random);
        double swing = 0;
        for (int i = 0; i < 5; ++i) {
            path.push_back(path.back() + direction(heading) * size(random));
            double next = turn(random);
            if (std::abs(swing + next) > 100) {
                next = -next; // keep the strip from crossing itself
            }
            swing += next;
            heading += next;
        }
        const Ribbon ribbon = ribbon_of(path);
        CHECK(outline_area(ribbon) == Approx(ribbon.length_mm * 5));
        CHECK(ribbon.folds_mm.size() == 4);
    }
}

TEST_CASE("sharper turns and runs too short for mitres keep the whole outline", "[ribbon]") {
    SECTION("folded back on itself: square end past the vertex") {
        const Ribbon ribbon = ribbon_of({{0, 0}, {40, 0}, {10, 0}});
        CHECK(covers(ribbon, {42.4, 2.4}));
        CHECK_FALSE(covers(ribbon, {42.6, 0}));
        CHECK(ribbon.length_mm == Approx(70));
        REQUIRE(ribbon.fold_places.size() == 1);
        CHECK(area(ribbon.fold_places[0]) == Approx(25));
    }
    SECTION("135 degrees") {
        const Ribbon ribbon = ribbon_of({{0, 0}, {40, 0}, {20, 20}});
        CHECK(covers(ribbon, {39, 0}));
        CHECK(covers(ribbon, {38, 2}));
        for (const Run& run : ribbon.runs) {
            CHECK(area(run.outline) == Approx((run.length_mm + 2.5) * 5));
        }
    }
    SECTION("a U whose middle is shorter than the width") {
        const Ribbon ribbon = ribbon_of({{0, 0}, {40, 0}, {40, 3}, {0, 3}});
        for (const Run& run : ribbon.runs) {
            CHECK(area(run.outline) > 0);
        }
        CHECK(covers(ribbon, {42.4, 1.5}));
        CHECK(covers(ribbon, {20, 5.4}));
        CHECK(covers(ribbon, {20, 1.5}));
        CHECK_FALSE(covers(ribbon, {20, 5.6}));
    }
    SECTION("a jog shorter than the width still tiles") {
        const Ribbon ribbon = ribbon_of({{0, 0}, {40, 0}, {40, 2}, {80, 2}});
        CHECK(tiles(ribbon));
        CHECK(outline_area(ribbon) == Approx(82 * 5));
    }
}

TEST_CASE("points twice in the path and straight vertices are no folds", "[ribbon]") {
    const Ribbon ribbon = ribbon_of({{0, 0}, {0, 0}, {20, 0}, {20, 0}, {40, 0}});
    CHECK(ribbon.runs.size() == 2);
    CHECK(ribbon.folds_mm.empty());
    CHECK(outline_area(ribbon) == Approx(200));
    CHECK(ribbon_of({{3, 3}, {3, 3}}).runs.empty());
    CHECK(ribbon_of({}).runs.empty());
}

TEST_CASE("places along a strip and back", "[ribbon]") {
    const Ribbon ribbon = ribbon_of({{30, 80}, {30, 45}, {118, 45}});
    CHECK(ribbon.length_mm == Approx(35 + 88));
    CHECK(along(ribbon, {60, 45}) == Approx(35 + 30));
    CHECK(along(ribbon, {60, 49}) == Approx(35 + 30)); // beside the centre line
    CHECK(along(ribbon, {0, 200}) == Approx(0).margin(1e-12));
    CHECK(point_at(ribbon, 65).x == Approx(60));
    CHECK(point_at(ribbon, -5) == Vec2{30, 80});
    CHECK(point_at(ribbon, 500) == Vec2{118, 45});
    CHECK(heading_at(ribbon, 10).y == Approx(-1));
    CHECK(heading_at(ribbon, 100).x == Approx(1));
    for (double at = 0; at < ribbon.length_mm; at += 3.7) {
        CHECK(along(ribbon, point_at(ribbon, at)) == Approx(at).margin(1e-9));
    }
}
