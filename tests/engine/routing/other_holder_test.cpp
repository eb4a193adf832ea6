// Another holder under the same lights: sound as the review judges it, or said not to be.
#include "routing/other_holder.h"

#include "desk/desk.h"
#include "findings/review.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

OpenCard shipped(const std::string& name) {
    const std::string assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
    const Outcome<Parts> parts = load_parts(assets);
    REQUIRE(parts.ok());
    Outcome<OpenCard> open = open_card(assets + "/cards/" + name + ".card.json", parts.value());
    REQUIRE(open.ok());
    return std::move(open).value();
}

} // namespace

TEST_CASE("a holder with a screw gets traces of its own under the same lights", "[routing]") {
    const OpenCard open = shipped("window-candle");
    Card only_swapped = open.card;
    only_swapped.holder.type = "screw-20";
    REQUIRE(review(only_swapped, open.parts).count(Level::problem) > 0); // or there would be nothing to do
    const Rehoused made = with_other_holder(open.card, open.parts, "screw-20");
    CHECK(made.sound);
    CHECK(made.laid_anew);
    CHECK(made.card.holder.type == "screw-20");
    CHECK(review(made.card, open.parts).count(Level::problem) == 0);
    REQUIRE(made.card.leds.size() == open.card.leds.size());
    for (std::size_t i = 0; i < open.card.leds.size(); ++i) {
        CHECK(made.card.leds[i].at_mm == open.card.leds[i].at_mm);
    }
}

TEST_CASE("the same holder changes nothing, and a card without a way says so", "[routing]") {
    const OpenCard open = shipped("window-candle");
    const Rehoused same = with_other_holder(open.card, open.parts, open.card.holder.type);
    CHECK(same.sound);
    CHECK_FALSE(same.laid_anew);
    CHECK(same.card == open.card);
    Card full = open.card;
    full.sheet.keepouts.push_back({"window", {{50, 0}, {60, 0}, {60, 105}, {50, 105}}, {}});
    const Rehoused none = with_other_holder(full, open.parts, "screw-20");
    CHECK_FALSE(none.sound);
    CHECK(none.card.laid == full.laid);
    CHECK(none.card.holder.type == "screw-20");
}
