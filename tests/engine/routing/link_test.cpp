// The pieces of a ribbon: ways between two stops, distances, and the spacing a card's packages ask for.
#include "routing/link.h"

#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using namespace lanternleaf::routing_stages;

namespace {

Gauge usual() {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-white", {70, 40}));
    const int leds[] = {0};
    return make_gauge(card, make::test_parts(), leds, "copper-5", 2.0, 1.0).value();
}

} // namespace

TEST_CASE("Stops in line are joined without a bend, others with one or two", "[routing]") {
    const Gauge gauge = usual();
    Ways ways;
    const Pose here = make_pose({20, 20}, 0, 3.5);
    find_ways(here, make_pose({60, 20}, 0, 3.5), gauge, {}, 0.0, ways);
    REQUIRE(ways.count == 1);
    CHECK(ways.way[0].bends == 0);
    CHECK(ways.way[0].length_mm == Approx(40.0));

    Taste few;
    few.bend_mm = 80.0; // else the slanting way, shorter but with a bend more, comes first
    find_ways(here, make_pose({60, 60}, 90, 3.5), gauge, few, 0.0, ways);
    REQUIRE(ways.count > 0);
    CHECK(ways.way[0].bends == 1);
    CHECK(ways.way[0].bend[0].x == Approx(60.0));
    CHECK(ways.way[0].bend[0].y == Approx(20.0));

    find_ways(here, make_pose({20, 60}, 180, 3.5), gauge, {}, 0.0, ways); // there and back
    REQUIRE(ways.count > 0);
    CHECK(ways.way[0].bends == 2);

    find_ways(here, make_pose({25, 21}, 180, 3.5), gauge, {}, 0.0, ways); // no room
    CHECK(ways.count == 0);
}

TEST_CASE("No fold comes under a pad, on either tape", "[routing]") {
    const Gauge gauge = usual();
    Ways ways;
    const Pose here = make_pose({20, 20}, 0, 3.5);
    // The inner tape of a right angle turns off_mm early and its fold is half a tape: 11 mm are too few.
    find_ways(here, make_pose({31, 60}, 90, 3.5), gauge, {}, 0.0, ways);
    CHECK((ways.count == 0 || ways.way[0].bends == 2));
    find_ways(here, make_pose({32, 60}, 90, 3.5), gauge, {}, 0.0, ways);
    REQUIRE(ways.count > 0);
    CHECK(ways.way[0].bends == 1);
    const Link link = link_of(here, make_pose({32, 60}, 90, 3.5), ways.way[0], gauge);
    CHECK(link.right[1].x == Approx(27.0));
    CHECK(link.left[1].x == Approx(37.0));
}

TEST_CASE("Opposite sides clash nearer than the clearance; the same side does not across a U", "[routing]") {
    const Gauge gauge = usual();
    const Link a = straight_line({20, 20}, {80, 20}, gauge);
    CHECK(clash(a, straight_line({20, 38}, {80, 38}, gauge), gauge, false, false) == 0.0);
    // 16 mm: right of one to left of the other 6 mm between middles, 1 mm between edges
    CHECK(clash(a, straight_line({20, 36}, {80, 36}, gauge), gauge, false, false) > 1.0);
    // the other way round, right faces right, and they may come nearer
    CHECK(clash(a, straight_line({80, 36}, {20, 36}, gauge), gauge, false, false) == 0.0);
    CHECK(clash(a, straight_line({50, 5}, {50, 50}, gauge), gauge, false, false) > 10.0);
}

TEST_CASE("Distance between two runs", "[routing]") {
    CHECK(segment_distance({0, 0}, {10, 0}, {5, -5}, {5, 5}) == 0.0);
    CHECK(segment_distance({0, 0}, {10, 0}, {0, 3}, {10, 3}) == Approx(3.0));
    CHECK(segment_distance({0, 0}, {10, 0}, {13, 4}, {20, 4}) == Approx(5.0));
}

TEST_CASE("The spacing fits every light's pads, or a light is named", "[routing]") {
    Card card = make::bare_card();
    Parts parts = make::test_parts();
    parts.leds["chip"] = parts.leds["carrier-white"];
    parts.leds["chip"].package = "chip-1206";
    parts.leds["wide"] = parts.leds["carrier-white"];
    parts.leds["wide"].package = "wide";
    parts.packages["wide"] = parts.packages["carrier"];
    parts.packages["wide"].pads[0].at_mm = {-20, 0};
    parts.packages["wide"].pads[1].at_mm = {20, 0};
    card.leds = {make::led("L1", "carrier-white", {70, 40}), make::led("L2", "chip", {100, 40}),
                 make::led("L3", "wide", {120, 40})};
    const int one[] = {0};
    CHECK(make_gauge(card, parts, one, "copper-5", 2.0, 1.0).value().off_mm == Approx(5.0));
    const int chip[] = {1};
    const Outcome<Gauge> tight = make_gauge(card, parts, chip, "copper-5", 2.0, 1.0);
    REQUIRE(tight);
    CHECK(2.0 * (tight.value().off_mm - tight.value().half_mm) >= 2.0);
    const int all[] = {0, 1, 2};
    const Outcome<Gauge> none = make_gauge(card, parts, all, "copper-5", 2.0, 1.0);
    REQUIRE_FALSE(none);
    CHECK(none.problem().place == "L3");
}
