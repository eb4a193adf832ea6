// Contacts: areas worked by hand, resistances by the rules of the card file's description.
#include "conductors/conductors.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lanternleaf;

namespace {

const Contact* contact_with(const Conductors& found, Piece other) {
    for (const Contact& contact : found.contacts) {
        if (contact.b == other) {
            return &contact;
        }
    }
    return nullptr;
}

constexpr Piece kBed{PieceKind::terminal, 0, 0};
constexpr Piece kFlap{PieceKind::terminal, 0, 1};
constexpr Piece kMinusPad{PieceKind::led_pad, 0, 0};

/// Antiderivative of sqrt(100 - x^2): the area under a circle of radius 10 (any table of integrals).
double under_circle(double x) {
    return 0.5 * (x * std::sqrt(100 - x * x) + 100 * std::asin(x / 10));
}

} // namespace

TEST_CASE("the sample's contacts, worked by hand", "[contacts]") {
    const Conductors found = find_conductors(make::sample_card(), make::test_parts());
    CHECK(found.contacts.size() == 4);
    const Contact* pad = contact_with(found, kMinusPad);
    REQUIRE(pad != nullptr);
    CHECK(pad->a == Piece{PieceKind::strip, 0, 0});
    CHECK(pad->area_mm2 == Approx(4 * 7)); // the pad is 4 mm across the 5 mm strip, 7 mm along it
    CHECK(pad->ohm == Approx(2.0 / 28));
    CHECK(pad->along_a_mm == Approx(35 + 80));
    CHECK(pad->at_mm.y == Approx(45));
    // N1 starts at the bed's centre and leaves it: half of a 5 mm band through a disc of radius 10.
    const Contact* bed = contact_with(found, kBed);
    REQUIRE(bed != nullptr);
    CHECK(bed->area_mm2 == Approx(under_circle(2.5) - under_circle(-2.5)));
    CHECK(bed->ohm == 0.3);
    CHECK(bed->at_mm.x == Approx(30));
    // S1: 8.5 x 5 up to its corner's outer edge, then the upward run between 3.5 and 8.5 right of the flap's
    // centre, from 2.5 above it to the circle.
    const Contact* flap = contact_with(found, kFlap);
    REQUIRE(flap != nullptr);
    CHECK(flap->area_mm2 == Approx(8.5 * 5 + under_circle(8.5) - under_circle(3.5) - 5 * 2.5));
}

TEST_CASE("a strip meets a disc from 20 mm2 on", "[contacts]") {
    // A strip along the bed's middle that ends d inside its edge covers 5 (d - 10) + under_circle(2.5) -
    // under_circle(-2.5) of it; 20 mm2 at this d.
    const double limit = 10 + (20 - under_circle(2.5) + under_circle(-2.5)) / 5;
    const auto reaches = [&](double d) {
        Card card = make::bare_card();
        card.laid.emplace_back(make::strip("N1", Side::negative, {{5, 80}, {20 + d, 80}}));
        return find_conductors(card, make::test_parts()).net_of_strip[0] == 0;
    };
    CHECK(reaches(limit + 0.001));
    CHECK_FALSE(reaches(limit - 0.001));
    // Wholly inside: 4 mm of 5 mm tape is 20 mm2 exactly and counts.
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{28, 80}, {32, 80}}));
    CHECK(find_conductors(card, make::test_parts()).net_of_strip[0] == 0);
}

TEST_CASE("a patch over the strip keeps the cell off it", "[contacts]") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {118, 45}}));
    card.laid.emplace_back(make::patch("P1", {30, 75}, {22, 22}));
    const Conductors covered = find_conductors(card, make::test_parts());
    CHECK(contact_with(covered, kBed) == nullptr);
    std::swap(card.laid[0], card.laid[1]); // under the strip it keeps nothing off
    const Conductors under = find_conductors(card, make::test_parts());
    CHECK(contact_with(under, kBed) != nullptr);
}

TEST_CASE("a strip from bed to flap shorts the cell", "[contacts]") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("S1", Side::positive, {{30, 80}, {54, 80}}));
    const Conductors found = find_conductors(card, make::test_parts());
    CHECK(found.contacts.size() == 2);
    CHECK(found.nets.size() == 1);
    CHECK(found.nets[0].side == NetSide::both);
}

TEST_CASE("a pad conducts to every strip it overlaps, less what patches cover", "[contacts]") {
    // The pad, 4 x 7 at 100, 40, lies on the last 2 mm of A (up to x = 100) and 1 mm deep on B (from x =
    // 101).
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-red", {105, 40}));
    card.laid.emplace_back(make::strip("A", Side::negative, {{80, 40}, {100, 40}}));
    card.laid.emplace_back(make::strip("B", Side::negative, {{103.5, 20}, {103.5, 60}}));
    SECTION("bare") {
        const Conductors found = find_conductors(card, make::test_parts());
        REQUIRE(found.contacts.size() == 2);
        CHECK(found.contacts[0].area_mm2 == Approx(2 * 5));
        CHECK(found.contacts[0].ohm == Approx(0.2));
        CHECK(found.contacts[1].area_mm2 == Approx(1 * 7));
        CHECK(found.contacts[1].along_a_mm == Approx(20));
        CHECK(found.net_of_strip[0] == found.net_of_strip[1]);
    }
    SECTION("a patch over A's upper half") {
        card.laid.emplace_back(make::patch("P1", {100, 30}, {20, 20}));
        const Conductors found = find_conductors(card, make::test_parts());
        REQUIRE(found.contacts.size() == 2);
        CHECK(found.contacts[0].area_mm2 == Approx(2 * 2.5));
        CHECK(found.contacts[0].at_mm.y == Approx(41.25));
        CHECK(found.contacts[1].area_mm2 == Approx(3.5));
    }
    SECTION("a patch over all of it") {
        card.laid.emplace_back(make::patch("P1", {100, 40}, {20, 20}));
        CHECK(find_conductors(card, make::test_parts()).contacts.empty());
    }
    SECTION("a shared edge is no contact") {
        std::get<Strip>(card.laid[0]).path_mm = {{80, 40}, {98, 40}};
        std::get<Strip>(card.laid[1]).path_mm = {{120, 20}, {120, 60}};
        CHECK(find_conductors(card, make::test_parts()).contacts.empty());
    }
}

TEST_CASE("resistor pads", "[contacts]") {
    Card card = make::bare_card();
    card.resistors.push_back(make::resistor("R1", 47, {60, 45}, 90)); // from pad 1 above to pad 2 below
    card.laid.emplace_back(make::strip("A", Side::link, {{40, 40}, {80, 40}}));
    const Conductors found = find_conductors(card, make::test_parts());
    REQUIRE(found.contacts.size() == 1);
    CHECK(found.contacts[0].b == Piece{PieceKind::resistor_pad, 0, 0});
    CHECK(found.contacts[0].area_mm2 == Approx(28));
    CHECK(name_of(card, found, found.contacts[0].b) == "R1.1");
}

TEST_CASE("a ready-made holder meets strips with its two pads", "[contacts]") {
    Card card = make::bare_card();
    card.holder.type = "slide-20"; // pads at 16, 80 and 44, 80, 6 x 6
    card.laid.emplace_back(make::strip("N1", Side::negative, {{16, 80}, {16, 40}}));
    card.laid.emplace_back(
        make::strip("S1", Side::positive, {{46.4, 60}, {46.4, 78}})); // on the pad by 3.1 x 1
    const auto on = [&] { return find_conductors(card, make::test_parts()); };
    Conductors found = on();
    REQUIRE(found.contacts.size() == 1); // 3.1 mm2 is less than 4 mm2
    CHECK(found.contacts[0].b == kBed);
    CHECK(found.contacts[0].area_mm2 == Approx(15));
    CHECK(found.contacts[0].ohm == 0.1);
    std::get<Strip>(card.laid[1]).path_mm[1].y = 80;
    found = on();
    CHECK(found.contacts.size() == 2);
    CHECK(found.nets[1].side == NetSide::positive);
    CHECK(found.net_of_strip[1] == 1);
    card.laid.emplace_back(make::patch("P1", {44, 80})); // the holder lies on top: a patch keeps it off
    CHECK(on().contacts.size() == 1);
}

TEST_CASE("holder shapes follow the holder's turn", "[contacts]") {
    Card card = make::bare_card();
    card.holder.turn_deg = 90;
    const HolderShape flap = holder_shape(card, make::test_parts());
    CHECK(flap.flap);
    CHECK(flap.disc_at_mm[1] == Vec2{30, 104});
    CHECK(flap.disc_radius_mm[0] == 10);
    CHECK(flap.body.empty());
    card.holder.type = "screw-20";
    const HolderShape pads = holder_shape(card, make::test_parts());
    CHECK_FALSE(pads.flap);
    CHECK(pads.at_mm[0] == Vec2{30, 66}); // "-" is pad 0
    CHECK(pads.at_mm[1] == Vec2{30, 94});
    CHECK(area(pads.pad[0]) == Approx(36));
    CHECK(area(pads.body) == Approx(34 * 22));
    CHECK(bounds(pads.body).max.y == Approx(97));
    Parts silent = make::test_parts();
    silent.holders["screw-20"].body_mm = {};
    CHECK(area(holder_shape(card, silent).body) == Approx(34 * 20)); // pad to pad, as deep as the cell
}

TEST_CASE("bodies of parts", "[contacts]") {
    Card card = make::sample_card();
    card.resistors.push_back(make::resistor("R1", 47, {60, 20}));
    const Convex led = led_body(card, make::test_parts(), 0); // turned 270: 7 wide, 14 high
    CHECK(bounds(led).min == Vec2{106.5, 33});
    CHECK(bounds(led).max == Vec2{113.5, 47});
    CHECK(area(resistor_body(card, make::test_parts(), 0)) == Approx(98));
}
