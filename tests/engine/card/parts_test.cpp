// A card's own parts win over the shipped ones, id by id; all else stays.
#include "card/parts.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("own parts win id by id", "[parts]") {
    const Parts shipped = make::test_parts();
    Parts own;
    own.tapes["copper-5"] = shipped.tapes.at("copper-5");
    own.tapes["copper-5"].width_mm = 4.5;
    own.leds["my-light"] = shipped.leds.at("carrier-red");
    const Parts both = merged(shipped, own);
    CHECK(both.tapes.at("copper-5").width_mm == 4.5);
    CHECK(both.tapes.at("fabric-5") == shipped.tapes.at("fabric-5"));
    CHECK(both.leds.size() == shipped.leds.size() + 1);
    CHECK(both.resistor == shipped.resistor);
    CHECK(both.holders == shipped.holders);
}

TEST_CASE("no own parts change nothing, an own resistor replaces the shipped one", "[parts]") {
    const Parts shipped = make::test_parts();
    CHECK(merged(shipped, Parts{}) == shipped);
    CHECK(merged(Parts{}, shipped) == shipped);
    Parts own;
    own.resistor = Package{};
    own.resistor->body_mm = {3, 1};
    CHECK(merged(shipped, own).resistor->body_mm == Vec2{3, 1});
}

TEST_CASE("parts are empty only when nothing at all stands in them", "[parts]") {
    CHECK(Parts{}.empty());
    CHECK_FALSE(make::test_parts().empty());
    Parts only_resistor;
    only_resistor.resistor = Package{};
    CHECK_FALSE(only_resistor.empty());
    Parts only_unknown;
    only_unknown.extras = R"({"later": 1})";
    CHECK_FALSE(only_unknown.empty());
}
