// What is joined to what on the sample card of the card file's description, and on variations of it. The
// rules are those of its part "How conductors are found".
#include "conductors/conductors.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

#include <set>

using namespace lanternleaf;

namespace {

std::set<std::string> members(const Card& card, const Conductors& found, int net) {
    std::set<std::string> names;
    for (const Piece piece : found.nets[static_cast<std::size_t>(net)].members) {
        names.insert(name_of(card, found, piece));
    }
    return names;
}

using Names = std::set<std::string>;

Strip& strip_at(Card& card, std::size_t place) {
    return std::get<Strip>(card.laid[place]);
}

} // namespace

TEST_CASE("the sample card has a minus net and a plus net", "[conductors]") {
    const Card card = make::sample_card();
    const Conductors found = find_conductors(card, make::test_parts());
    REQUIRE(found.nets.size() == 2);
    CHECK(found.nets[0].id == 0);
    CHECK(found.nets[0].side == NetSide::negative);
    CHECK(members(card, found, 0) == Names{"holder-", "N1", "L1-"});
    CHECK(found.nets[1].side == NetSide::positive);
    CHECK(members(card, found, 1) == Names{"holder+", "S1", "L1+"});
    // In order: terminals, strips, pads.
    CHECK(found.nets[0].members[0].kind == PieceKind::terminal);
    CHECK(found.nets[0].members[1].kind == PieceKind::strip);
    CHECK(found.nets[0].members[2].kind == PieceKind::led_pad);
    CHECK(found.net_of_strip == std::vector<int>{0, 1});
    CHECK(found.net_of_led_pad == std::vector<int>{0, 1});
    CHECK(found.net_of_terminal[0] == 0);
    CHECK(found.net_of_terminal[1] == 1);
}

TEST_CASE("the patched crossing of the sample does not conduct", "[conductors]") {
    const Conductors found = find_conductors(make::sample_card(), make::test_parts());
    REQUIRE(found.overlaps.size() == 1);
    const Overlap& crossing = found.overlaps[0];
    CHECK(crossing.lower == 0);
    CHECK(crossing.upper == 1);
    CHECK(crossing.area_mm2 == Approx(25));
    CHECK(crossing.bare_mm2 == 0);
    CHECK_FALSE(crossing.conducts);
    CHECK(crossing.patches == std::vector<int>{0});
    CHECK(crossing.at_mm.x == Approx(60));
    CHECK(crossing.at_mm.y == Approx(45));
    CHECK(crossing.along_lower_mm == Approx(35 + 30));
    CHECK(crossing.along_upper_mm == Approx(6 + 35));
}

TEST_CASE("without its patch the sample is one net from face to face", "[conductors]") {
    Card card = make::sample_card();
    card.laid.erase(card.laid.begin() + 1);
    const Conductors found = find_conductors(card, make::test_parts());
    REQUIRE(found.nets.size() == 1);
    CHECK(found.nets[0].side == NetSide::both);
    CHECK(members(card, found, 0) == Names{"holder-", "holder+", "N1", "S1", "L1-", "L1+"});
}

TEST_CASE("a patch separates only what lies below it from what lies above it", "[conductors]") {
    Card card = make::sample_card();
    SECTION("laid first, it separates nothing") {
        std::swap(card.laid[0], card.laid[1]);
    }
    SECTION("laid last, it separates nothing") {
        std::swap(card.laid[1], card.laid[2]);
    }
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(found.nets.size() == 1);
    CHECK(found.overlaps[0].conducts);
    CHECK(found.overlaps[0].patches.empty());
}

TEST_CASE("plain adhesive leaves an overlap open, a folded end closes it", "[conductors]") {
    // Two strips in line lap by 10 mm: N1 from the bed, N2 on it to the light.
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-red", {110, 40}, 270));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {70, 45}}));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{60, 45}, {118, 45}}, "copper-5-plain"));
    Parts parts = make::test_parts();
    SECTION("plain: open") {
        const Conductors found = find_conductors(card, parts);
        CHECK(found.net_of_strip[0] != found.net_of_strip[1]);
        CHECK(found.overlaps[0].area_mm2 == Approx(50));
        CHECK(found.overlaps[0].bare_mm2 == Approx(50));
        CHECK_FALSE(found.overlaps[0].conducts);
        CHECK(found.nets[static_cast<std::size_t>(found.net_of_strip[1])].side == NetSide::none);
    }
    SECTION("the end that lies there is folded: joined") {
        strip_at(card, 1).ends[0] = EndStyle::folded;
        const Conductors found = find_conductors(card, parts);
        CHECK(found.overlaps[0].folded_end);
        CHECK(found.net_of_strip[0] == found.net_of_strip[1]);
    }
    SECTION("the other end is folded: open") {
        strip_at(card, 1).ends[1] = EndStyle::folded;
        const Conductors found = find_conductors(card, parts);
        CHECK_FALSE(found.overlaps[0].folded_end);
        CHECK(found.net_of_strip[0] != found.net_of_strip[1]);
    }
    SECTION("the lower strip's end is folded: still open") {
        strip_at(card, 0).ends[1] = EndStyle::folded;
        CHECK_FALSE(find_conductors(card, parts).overlaps[0].conducts);
    }
    SECTION("it is the upper strip's adhesive that counts") {
        strip_at(card, 0).tape = "copper-5-plain";
        strip_at(card, 1).tape = "copper-5";
        CHECK(find_conductors(card, parts).overlaps[0].conducts);
    }
    SECTION("folded onto a patch: open") {
        strip_at(card, 1).ends[0] = EndStyle::folded;
        card.laid.insert(card.laid.begin() + 1, make::patch("P1", {65, 45}));
        const Conductors found = find_conductors(card, parts);
        CHECK(found.overlaps[0].folded_end);
        CHECK_FALSE(found.overlaps[0].conducts);
    }
}

TEST_CASE("the cell turned over swaps the sides, whatever the strips are called", "[conductors]") {
    Card card = make::sample_card();
    card.cell.face_down = CellFace::positive;
    const Conductors found = find_conductors(card, make::test_parts());
    REQUIRE(found.nets.size() == 2);
    CHECK(found.nets[0].side == NetSide::negative);
    CHECK(members(card, found, 0) == Names{"holder-", "S1", "L1+"});
    CHECK(members(card, found, 1) == Names{"holder+", "N1", "L1-"});
    CHECK(terminal_face(card, 0) == CellFace::positive);
    CHECK(terminal_of(card, CellFace::negative) == 1);
    CHECK(found.net_of_terminal[0] == 1);
}

TEST_CASE("with nothing laid each holder contact is a net of its own", "[conductors]") {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-red", {100, 40}));
    card.resistors.push_back(make::resistor("R1", 47, {60, 20}));
    const Conductors found = find_conductors(card, make::test_parts());
    REQUIRE(found.nets.size() == 6);
    CHECK(members(card, found, 0) == Names{"holder-"});
    CHECK(members(card, found, 1) == Names{"holder+"});
    CHECK(members(card, found, 2) == Names{"L1-"});
    CHECK(members(card, found, 4) == Names{"R1.1"});
    CHECK(members(card, found, 5) == Names{"R1.2"});
    CHECK(found.nets[2].side == NetSide::none);
    CHECK(found.contacts.empty());
}

TEST_CASE("LEDs and resistors do not join nets", "[conductors]") {
    // A strip to R1.1, a strip from R1.2: two nets, since a resistor is no metal joint.
    Card card = make::bare_card();
    card.resistors.push_back(make::resistor("R1", 47, {60, 45}));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {58, 45}}));
    card.laid.emplace_back(make::strip("K1", Side::link, {{63, 45}, {118, 45}}));
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(found.net_of_resistor_pad[0] == found.net_of_strip[0]);
    CHECK(found.net_of_resistor_pad[1] == found.net_of_strip[1]);
    CHECK(found.net_of_strip[0] != found.net_of_strip[1]);
    CHECK(members(card, found, found.net_of_strip[1]) == Names{"K1", "R1.2"});
}

TEST_CASE("every piece is in exactly one net", "[conductors]") {
    const Card card = make::row_card(12);
    const Conductors found = find_conductors(card, make::test_parts());
    std::multiset<std::string> names;
    for (const Net& net : found.nets) {
        CHECK(net.id == &net - found.nets.data());
        for (const Piece piece : net.members) {
            names.insert(name_of(card, found, piece));
        }
    }
    CHECK(names.size() == 2 + 2 + 24);
    CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());
    CHECK(found.nets.size() == 2);
}

TEST_CASE("net sides have words", "[conductors]") {
    CHECK(std::string(name_of(NetSide::negative)) == "negative");
    CHECK(std::string(name_of(NetSide::positive)) == "positive");
    CHECK(std::string(name_of(NetSide::both)) == "short");
    CHECK(std::string(name_of(NetSide::none)) == "none");
}
