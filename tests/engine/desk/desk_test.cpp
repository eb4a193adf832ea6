#include "desk/desk.h"

#include "support/make_build.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

const std::string kTop = LANTERNLEAF_SOURCE;

} // namespace

TEST_CASE("The shipped parts load", "[desk]") {
    const Outcome<Parts> parts = load_parts(kTop + "/assets");
    INFO((parts ? "" : parts.problem().sentence()));
    REQUIRE(parts.ok());
    CHECK(parts.value().leds.count("carrier-white") == 1);
    CHECK_FALSE(load_parts(kTop + "/tests").ok());
}

TEST_CASE("A card opens with its own parts laid over the shipped ones", "[desk]") {
    const make::TempFolder folder("lanternleaf-desk");
    Card card = make::sample_card();
    card.own_parts.tapes["copper-5"] = make::test_parts().tapes.at("fabric-5");
    const std::string path = folder.at("my.card.json");
    make::put_file(path, write_card(card));
    const Outcome<OpenCard> open = open_card(path, make::test_parts());
    INFO((open ? "" : open.problem().sentence()));
    REQUIRE(open.ok());
    CHECK(open.value().card == card);
    CHECK(open.value().path == path);
    CHECK(open.value().parts.tapes.at("copper-5") == make::test_parts().tapes.at("fabric-5"));
    CHECK(open.value().parts.leds.size() == make::test_parts().leds.size());
    const Outcome<OpenCard> none = open_card(folder.at("none.card.json"), make::test_parts());
    REQUIRE_FALSE(none.ok());
    CHECK_THAT(none.problem().sentence(), Contains("none.card.json"));
}

TEST_CASE("What a card's builds are named after", "[desk]") {
    CHECK(name_of_card_file("a/b/harbour.card.json") == "harbour");
    CHECK(name_of_card_file("harbour.json") == "harbour");
    CHECK(name_of_card_file("harbour") == "harbour");
    CHECK(name_of_card_file("/x/.card.json") == ".card"); // never empty
    CHECK(name_of_card_file("Grün.card.json") == "Grün");
}
