// The card as a value: looking things up by id, and the names that stand in files (the card file's
// description).
#include "card/card.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("strips and patches are found by their ids", "[card]") {
    const Card card = make::sample_card();
    REQUIRE(card.laid.size() == 3);
    CHECK(id_of(card.laid[0]) == "N1");
    CHECK(id_of(card.laid[1]) == "P1");
    REQUIRE(find_strip(card, "S1") != nullptr);
    CHECK(find_strip(card, "S1")->side == Side::positive);
    CHECK(find_strip(card, "P1") == nullptr); // a patch is no strip
    CHECK(find_strip(card, "") == nullptr);
    REQUIRE(find_led(card, "L1") != nullptr);
    CHECK(find_led(card, "L1")->turn_deg == 270.0);
    CHECK(find_led(card, "L2") == nullptr);
}

TEST_CASE("names are those of the card file", "[card]") {
    CHECK(std::string(name_of(Side::negative)) == "negative");
    CHECK(std::string(name_of(Side::positive)) == "positive");
    CHECK(std::string(name_of(Side::link)) == "link");
    CHECK(std::string(name_of(Audience::adults)) == "adults");
    CHECK(std::string(name_of(Audience::children)) == "children");
    CHECK(std::string(name_of(Audience::small_children)) == "small-children");
    CHECK(std::string(name_of(Audience::school_class)) == "class");
    CHECK(std::string(name_of(Audience::sale)) == "sale");
    CHECK(std::string(name_of(Edge::top)) == "top");
    CHECK(std::string(name_of(Edge::right)) == "right");
    CHECK(std::string(name_of(Edge::bottom)) == "bottom");
    CHECK(std::string(name_of(Edge::left)) == "left");
    CHECK(std::string(name_of(CellFace::negative)) == "negative");
    CHECK(std::string(name_of(CellFace::positive)) == "positive");
    CHECK(other_face(CellFace::negative) == CellFace::positive);
    CHECK(other_face(CellFace::positive) == CellFace::negative);
}

TEST_CASE("a card's audience is the careful one until it is given", "[card]") {
    const Card card;
    CHECK(card.audience == Audience::small_children);
    CHECK_FALSE(card.audience_given);
}
