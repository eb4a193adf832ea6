// The chain of contacts that joins two pieces, as numbers and in words.
#include "conductors/conductors.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

/// holder- to N1, N1 to N2 at 60, 45, N2 to L1- at 105, 45; a strip K1 lies apart.
Card chain_card() {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-red", {110, 45}));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {65, 45}}));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{55, 45}, {108, 45}}));
    card.laid.emplace_back(make::strip("K1", Side::link, {{20, 10}, {80, 10}}));
    return card;
}

constexpr Piece kCellBed{PieceKind::terminal, 0, 0};
constexpr Piece kCathode{PieceKind::led_pad, 0, 0};
constexpr Piece kN1{PieceKind::strip, 0, 0};
constexpr Piece kN2{PieceKind::strip, 1, 0};
constexpr Piece kK1{PieceKind::strip, 2, 0};

} // namespace

TEST_CASE("a chain from strip to pad, in words", "[joined_by]") {
    const Card card = chain_card();
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(joined_by_text(card, found, kN1, kCathode) == "N1 to N2 at 60, 45; N2 to L1- at 105, 45");
    CHECK(joined_by_text(card, found, kCathode, kN1) == "L1- to N2 at 105, 45; N2 to N1 at 60, 45");
    CHECK(joined_by(found, kCellBed, kCathode).size() == 3);
    CHECK(joined_by(found, kN1, kN2).size() == 1);
}

TEST_CASE("the chain really leads from one to the other", "[joined_by]") {
    const Card card = chain_card();
    const Conductors found = find_conductors(card, make::test_parts());
    Piece here = kCellBed;
    for (const int index : joined_by(found, kCellBed, kCathode)) {
        const Contact& contact = found.contacts[static_cast<std::size_t>(index)];
        REQUIRE((contact.a == here || contact.b == here));
        here = contact.a == here ? contact.b : contact.a;
    }
    CHECK(here == kCathode);
}

TEST_CASE("no chain between pieces that are not joined, nor from a piece to itself", "[joined_by]") {
    const Card card = chain_card();
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(joined_by(found, kN1, kK1).empty());
    CHECK(joined_by(found, kN1, kN1).empty());
    CHECK(joined_by_text(card, found, kN1, kK1).empty());
}

TEST_CASE("the shortest of two chains is named", "[joined_by]") {
    Card card = chain_card();
    // A third strip straight from N1's upright to the light makes a second way of the same length; one that
    // lies on both N1 and the pad's strip twice does not lengthen the chain.
    card.laid.emplace_back(make::strip("N3", Side::negative, {{50, 60}, {50, 40}, {70, 40}, {70, 60}}));
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(joined_by(found, kN1, kN2).size() == 1);
    CHECK(joined_by(found, kN1, kCathode).size() == 2);
}
