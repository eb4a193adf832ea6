// Overlaps of strips: regions, areas, what patches leave bare. Areas worked by hand, and random strips
// against a count of points that uses no clipping.
#include "conductors/conductors.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

#include <random>

using namespace lanternleaf;

namespace {

Card card_of(std::vector<Laid> laid) {
    Card card = make::bare_card();
    card.holder.at_mm = {-500, -500}; // out of the way
    card.laid = std::move(laid);
    return card;
}

Conductors found_on(std::vector<Laid> laid) {
    return find_conductors(card_of(std::move(laid)), make::test_parts());
}

/// Whether p lies on a 5 mm strip along `path`, from the description alone: within half a width of a run,
/// each run reaching past its inner vertices by tan(turn / 2) half widths (the mitre's tip).
bool on_strip(const std::vector<Vec2>& path, Vec2 p) {
    for (std::size_t i = 1; i < path.size(); ++i) {
        const Vec2 u = unit(path[i] - path[i - 1]);
        const auto reach = [&](std::size_t vertex) {
            if (vertex == 0 || vertex + 1 == path.size()) {
                return 0.0;
            }
            const Vec2 in = unit(path[vertex] - path[vertex - 1]);
            const Vec2 out = unit(path[vertex + 1] - path[vertex]);
            return 2.5 * std::tan(0.5 * std::acos(std::min(1.0, dot(in, out))));
        };
        const double t = dot(p - path[i - 1], u);
        if (std::abs(cross(u, p - path[i - 1])) <= 2.5 && t >= -reach(i - 1) &&
            t <= distance(path[i], path[i - 1]) + reach(i)) {
            return true;
        }
    }
    return false;
}

std::vector<Vec2> random_path(std::mt19937& random) {
    std::uniform_real_distribution<double> place(20, 80);
    std::uniform_real_distribution<double> turn(-85, 85);
    std::uniform_real_distribution<double> size(8, 40);
    std::vector<Vec2> path{{place(random), place(random)}};
    double heading = turn(random) * 4;
    for (int i = 0; i < 3; ++i) {
        path.push_back(path.back() + direction(heading) * size(random));
        heading += turn(random);
    }
    return path;
}

} // namespace

TEST_CASE("two strips that cross twice have two overlaps", "[overlaps]") {
    const Conductors found =
        found_on({make::strip("A", Side::link, {{10, 50}, {90, 50}}),
                  make::strip("B", Side::link, {{30, 20}, {30, 70}, {60, 70}, {60, 20}})});
    REQUIRE(found.overlaps.size() == 2);
    CHECK(found.overlaps[0].area_mm2 == Approx(25));
    CHECK(found.overlaps[1].area_mm2 == Approx(25));
    CHECK(found.overlaps[0].along_lower_mm == Approx(20));
    CHECK(found.overlaps[1].along_lower_mm == Approx(50));
    CHECK(found.overlaps[1].along_upper_mm == Approx(50 + 30 + 20));
    CHECK(found.contacts.size() == 2);
    CHECK(found.contacts[1].overlap == 1);
}

TEST_CASE("an overlap at a corner is one overlap", "[overlaps]") {
    // A runs under B's corner: 7.5 x 5 of A lies under B (from B's outer edge at 47.5 ... to A's end at 55,
    // worked by hand), cut in two pieces by B's mitre.
    const Conductors found = found_on({make::strip("A", Side::link, {{20, 50}, {55, 50}}),
                                       make::strip("B", Side::link, {{50, 20}, {50, 50}, {90, 50}})});
    REQUIRE(found.overlaps.size() == 1);
    CHECK(found.overlaps[0].pieces.size() == 2);
    CHECK(found.overlaps[0].area_mm2 == Approx(7.5 * 5));
    CHECK(found.overlaps[0].at_mm.x == Approx(51.25));
}

TEST_CASE("joints: resistance by the upper tape over the bare area", "[overlaps]") {
    const Conductors copper = found_on({make::strip("A", Side::link, {{20, 50}, {60, 50}}, "fabric-5"),
                                        make::strip("B", Side::link, {{50, 50}, {90, 50}})});
    REQUIRE(copper.contacts.size() == 1);
    CHECK(copper.contacts[0].ohm == Approx(3.2 / 50));
    CHECK(copper.contacts[0].along_a_mm == Approx(35));
    CHECK(copper.contacts[0].along_b_mm == Approx(5));
    const Conductors fabric = found_on({make::strip("A", Side::link, {{20, 50}, {60, 50}}),
                                        make::strip("B", Side::link, {{50, 50}, {90, 50}}, "fabric-5")});
    CHECK(fabric.contacts[0].ohm == Approx(32.0 / 50));
}

TEST_CASE("what sticks out from under a patch still touches", "[overlaps]") {
    const auto with = [](std::vector<Laid> patches) {
        std::vector<Laid> laid{make::strip("A", Side::negative, {{10, 50}, {90, 50}})};
        laid.insert(laid.end(), patches.begin(), patches.end());
        laid.emplace_back(make::strip("B", Side::positive, {{50, 20}, {50, 80}}));
        return found_on(laid);
    };
    SECTION("one mm of five is bare") {
        const Conductors found = with({make::patch("P1", {44.5, 50})}); // reaches x = 51.5 of 52.5
        REQUIRE(found.overlaps.size() == 1);
        CHECK(found.overlaps[0].bare_mm2 == Approx(5));
        CHECK(found.overlaps[0].conducts);
        CHECK(found.contacts[0].ohm == Approx(3.2 / 5));
        CHECK(found.contacts[0].at_mm.x == Approx(52));
    }
    SECTION("two patches side by side cover it between them") {
        const Conductors found = with({make::patch("P1", {43, 50}), make::patch("P2", {57, 50})});
        CHECK(found.overlaps[0].bare_mm2 == 0);
        CHECK(found.overlaps[0].patches == std::vector<int>{0, 1});
    }
    SECTION("two patches one on the other: both lie between") {
        const Conductors found =
            with({make::patch("P1", {50, 50}), make::patch("P2", {50, 50}, {10, 10}, 30)});
        CHECK(found.overlaps[0].patches == std::vector<int>{0, 1});
    }
    SECTION("a gap of 1 mm between two patches") {
        const Conductors found = with({make::patch("P1", {43, 50}), make::patch("P2", {58, 50})});
        CHECK(found.overlaps[0].bare_mm2 == Approx(5));
        CHECK(found.overlaps[0].conducts);
    }
    SECTION("a patch elsewhere") {
        const Conductors found = with({make::patch("P1", {20, 20})});
        CHECK(found.overlaps[0].patches.empty());
        CHECK(found.overlaps[0].bare_mm2 == Approx(25));
    }
}

TEST_CASE("edges that only touch are no overlap; a strip does not overlap itself", "[overlaps]") {
    CHECK(found_on({make::strip("A", Side::link, {{10, 50}, {90, 50}}),
                    make::strip("B", Side::link, {{10, 55}, {90, 55}})})
              .overlaps.empty());
    CHECK(found_on({make::strip("A", Side::link, {{10, 50}, {90, 50}, {90, 80}, {50, 80}, {50, 20}})})
              .overlaps.empty());
}

TEST_CASE("a strip folded back on itself counts no area twice", "[overlaps]") {
    // B turns back by 180 degrees on A: both its runs lie on the same 5 mm of A, and reach 2.5 past the
    // vertex.
    const Conductors found = found_on({make::strip("A", Side::link, {{50, 20}, {50, 80}}),
                                       make::strip("B", Side::link, {{20, 50}, {70, 50}, {30, 50}})});
    REQUIRE(found.overlaps.size() == 1);
    CHECK(found.overlaps[0].area_mm2 == Approx(25));
}

TEST_CASE("random strips: overlap areas agree with counted points", "[overlaps]") {
    std::mt19937 random(42);
    int compared = 0;
    for (int round = 0; round < 250; ++round) {
        const auto a = random_path(random);
        const auto b = random_path(random);
        const Conductors found = found_on({make::strip("A", Side::link, a), make::strip("B", Side::link, b)});
        double area_mm2 = 0;
        Box box;
        for (const Overlap& overlap : found.overlaps) {
            area_mm2 += overlap.area_mm2;
            CHECK(overlap.bare_mm2 == Approx(overlap.area_mm2));
        }
        // Count over all of A: 0.1 mm steps.
        for (const Vec2 p : a) {
            box.add(p);
        }
        box = box.grown(6);
        int count = 0;
        for (double y = box.min.y + 0.05; y < box.max.y; y += 0.1) {
            for (double x = box.min.x + 0.05; x < box.max.x; x += 0.1) {
                count += on_strip(a, {x, y}) && on_strip(b, {x, y}) ? 1 : 0;
            }
        }
        // A region of area S misjudges about a step along its rim; rims are some 4 sqrt S long, errors even
        // out.
        CHECK(area_mm2 == Approx(0.01 * count).margin(0.15 + 0.02 * std::sqrt(0.01 * count)));
        compared += count > 0 ? 1 : 0;
    }
    CHECK(compared > 50); // otherwise the test would say nothing
}

TEST_CASE("many strips: the grid finds what a few strips at a time find", "[overlaps]") {
    std::mt19937 random(5);
    std::vector<Laid> laid;
    for (int i = 0; i < 40; ++i) {
        laid.emplace_back(make::strip("S" + std::to_string(i), Side::link, random_path(random)));
    }
    const Conductors all = found_on(laid);
    std::size_t pairs = 0;
    for (std::size_t i = 0; i < laid.size(); ++i) {
        for (std::size_t k = i + 1; k < laid.size(); ++k) {
            const Conductors two = found_on({laid[i], laid[k]});
            for (const Overlap& overlap : two.overlaps) {
                REQUIRE(pairs < all.overlaps.size());
                const Overlap& same = all.overlaps[pairs++];
                CHECK(same.lower == static_cast<int>(i));
                CHECK(same.upper == static_cast<int>(k));
                CHECK(same.area_mm2 == Approx(overlap.area_mm2));
            }
        }
    }
    CHECK(pairs == all.overlaps.size());
    CHECK(pairs > 100);
}
