#include "find_moves.h"
#include "geometry/ribbon.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

const Strip* strip_on(const Card& card, const std::string& id) {
    return find_strip(card, id);
}

double length_of(const Strip& strip) {
    return make_ribbon(strip.path_mm, 5).length_mm;
}

} // namespace

TEST_CASE("the upper strip waits before its patch", "[guide]") {
    const std::vector<Tail> waits = tails(make::sample_card(), make::kParts);
    REQUIRE(waits.size() == 1);
    CHECK(waits[0].laid_index == 2);
    CHECK(waits[0].patch == "P1");
    // 6 mm, then 28 mm up to the patch's edge at y = 52, less 12 mm.
    CHECK(waits[0].stop_mm == Approx(22));
}

TEST_CASE("a tail does not end in a fold", "[guide]") {
    // The patch starts 4 mm after the corner at (60,60): the fold itself is left for later.
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 49}, {118, 49}}));
    card.laid.emplace_back(make::patch("P1", {60, 49}));
    card.laid.emplace_back(
        make::strip("S1", Side::positive, {{54, 80}, {90, 80}, {90, 60}, {60, 60}, {60, 30}}));
    const std::vector<Tail> waits = tails(card, make::kParts);
    REQUIRE(waits.size() == 1);
    // Corner at 36 + 20 + 30 = 86 mm; patch edge at y = 56, 4 mm on; 12 mm back is 78 mm, before the fold's
    // square.
    CHECK(waits[0].stop_mm == Approx(78));
    // With the corner 10 mm before the patch, 12 mm back would end in the fold: it ends before the square
    // instead.
    card.laid[2] = make::strip("S1", Side::positive, {{54, 80}, {90, 80}, {90, 66}, {60, 66}, {60, 30}});
    const std::vector<Tail> nearer = tails(card, make::kParts);
    REQUIRE(nearer.size() == 1);
    const double corner_mm = 36 + 14 + 30;
    CHECK(nearer[0].stop_mm < corner_mm - 2.5);
    CHECK(nearer[0].stop_mm > corner_mm - 5);
}

TEST_CASE("a tail stops clear of a pad", "[guide]") {
    Card card = make::sample_card();
    // Its + pad is centred on (60, 64): exactly where the strip would stop, 22 mm along.
    card.leds.push_back(make::led("L2", "carrier-white", {55, 64}, 0));
    const std::vector<Tail> waits = tails(card, make::kParts);
    REQUIRE(waits.size() == 1);
    CHECK(std::abs(waits[0].stop_mm - 22) >= 4);
    CHECK(waits[0].stop_mm <= 22);
}

TEST_CASE("a strip that laps onto a waiting piece waits whole", "[guide]") {
    Card card = make::sample_card();
    card.laid.emplace_back(make::strip("S2", Side::positive, {{90, 35}, {90, 15}}));
    const std::vector<Tail> waits = tails(card, make::kParts);
    REQUIRE(waits.size() == 2);
    CHECK(waits[1].laid_index == 3);
    CHECK(waits[1].stop_mm == 0.0);
    const std::vector<Step> steps = make_steps(card, make::kParts);
    CHECK_FALSE(look::has_move(look::step(steps, StepId::lay_positive), "4/S2/start"));
    CHECK(look::has_move(look::step(steps, StepId::insulate), "5/S2/start"));
    CHECK(look::has_move(look::step(steps, StepId::insulate), "5/S2/joint-1"));
}

TEST_CASE("a strip that laps onto the part already laid does not wait", "[guide]") {
    Card card = make::sample_card();
    card.laid.emplace_back(make::strip("S2", Side::positive, {{60, 72}, {100, 72}}));
    CHECK(tails(card, make::kParts).size() == 1);
    CHECK(look::has_move(look::step(make_steps(card, make::kParts), StepId::lay_positive), "4/S2/joint-1"));
}

TEST_CASE("a bare crossing waits too, strips lying along each other do not", "[guide]") {
    Card card = make::sample_card();
    card.laid.erase(card.laid.begin() + 1);
    const std::vector<Tail> waits = tails(card, make::kParts);
    REQUIRE(waits.size() == 1);
    CHECK(waits[0].patch.empty());
    CHECK(waits[0].stop_mm > 0.0);
    // Lifted onto N1 along its whole run: no crossing, a fault to see at once.
    std::get<Strip>(card.laid[1]).path_mm = {{54, 80}, {60, 80}, {60, 46}, {118, 46}};
    CHECK(tails(card, make::kParts).empty());
}

TEST_CASE("the table after each step holds what was laid and nothing later", "[guide]") {
    const Card card = make::sample_card();
    for (const StepId step : {StepId::mount_holder, StepId::mark_pads}) {
        const Card after = card_after(card, make::kParts, step);
        CHECK(after.laid.empty());
        CHECK(after.leds.empty());
        CHECK_FALSE(after.foam.has_value());
    }
    const Card negative = card_after(card, make::kParts, StepId::lay_negative);
    REQUIRE(negative.laid.size() == 1);
    CHECK(id_of(negative.laid[0]) == "N1");
    const Card positive = card_after(card, make::kParts, StepId::lay_positive);
    REQUIRE(positive.laid.size() == 2);
    CHECK(length_of(*strip_on(positive, "S1")) == Approx(22));
    CHECK(positive.leds.empty());
    const Card crossed = card_after(card, make::kParts, StepId::insulate);
    CHECK(crossed.laid == card.laid);
    CHECK(crossed.leds.empty());
    const Card lit = card_after(card, make::kParts, StepId::place_leds);
    CHECK(lit.leds == card.leds);
    CHECK_FALSE(lit.foam.has_value());
    CHECK(card_after(card, make::kParts, StepId::pad_edges) == card);
}

TEST_CASE("two crossings in one run: one tail, two patches, both carried over", "[guide]") {
    Card card = make::sample_card();
    card.laid.insert(card.laid.begin() + 1, make::strip("N2", Side::negative, {{45, 56}, {90, 56}}));
    card.laid.insert(card.laid.begin() + 2, make::strip("N3", Side::negative, {{88, 58}, {88, 45}}));
    card.laid.insert(card.laid.begin() + 4, make::patch("P2", {60, 56}, {12, 8}));
    const std::vector<Tail> waits = tails(card, make::kParts);
    REQUIRE(waits.size() == 1);
    CHECK(waits[0].patch == "P2");
    const Step step = look::step(make_steps(card, make::kParts), StepId::insulate);
    const Move& carry = look::move(step, "5/S1/carry-2");
    CHECK(std::find(carry.parts.begin(), carry.parts.end(), "P1") != carry.parts.end());
    CHECK(std::find(carry.parts.begin(), carry.parts.end(), "P2") != carry.parts.end());
    CHECK(look::has_move(step, "5/P1/patch"));
    CHECK(look::has_move(step, "5/P2/patch"));
}
