// Snapping: rough places become places a ruler finds. Checked against what the rule says, over whole ranges.
#include "drawing/snap.h"

#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

SnapQuestion from(Side side, Vec2 at) {
    SnapQuestion ask;
    ask.side = side;
    ask.from_mm = at;
    return ask;
}

} // namespace

TEST_CASE("angles go to the nearest 15 degrees and stay within one turn") {
    for (double deg = -720; deg <= 720; deg += 0.7) {
        const double snapped = snap_turn(deg);
        CHECK(snapped >= 0.0);
        CHECK(snapped < 360.0);
        const double steps = snapped / 15.0;
        CHECK(steps == Approx(std::round(steps)));
        const double off = std::abs(std::remainder(snapped - deg, 360.0));
        CHECK(off <= 7.5 + 1e-9);
    }
}

TEST_CASE("a run keeps to 15 degree steps and whole millimetres") {
    const Vec2 start{40, 50};
    for (double deg = 0; deg < 360; deg += 3.3) {
        for (double far = 0.6; far < 60; far += 7.1) {
            const Vec2 at = snap_run(start, start + direction(deg) * far);
            const double length_mm = distance(start, at);
            CHECK(length_mm == Approx(std::round(length_mm)).margin(1e-9));
            CHECK(length_mm >= 1.0 - 1e-9);
            const double turn = degrees(std::atan2(at.y - start.y, at.x - start.x)) / 15.0;
            CHECK(turn == Approx(std::round(turn)).margin(1e-6));
            CHECK(std::abs(length_mm - far) <= 0.5 + far * (1.0 - std::cos(radians(7.5))) + 0.5);
        }
    }
    CHECK(snap_run(start, start + Vec2{0.2, 0.2}) == start);
}

TEST_CASE("a strip finds pads and contacts of its own side only") {
    const Card card = make::sample_card(); // L1 at 110, 40 turned 270: + at 110, 35, - at 110, 45
    const Parts parts = make::test_parts();
    SnapQuestion ask;
    ask.side = Side::positive;
    ask.ignore = "S1";
    Snap snap = snap_corner(card, parts, ask, {111.8, 37});
    CHECK(snap.kind == SnapKind::pad);
    CHECK(snap.on == "L1+");
    CHECK(distance(snap.at_mm, {110, 35}) < 1e-9);
    CHECK(snap.length_mm == 0.0);
    ask.side = Side::negative;
    ask.ignore = "N1";
    snap = snap_corner(card, parts, ask, {111.8, 37});
    CHECK(snap.kind == SnapKind::grid);
    CHECK(snap.at_mm == Vec2{112, 37});
    // The holder at 30, 80: its bed carries - and its flap, at 54, 80, carries +.
    CHECK(snap_corner(card, parts, ask, {32, 78}).on == "holder-");
    ask.side = Side::positive;
    ask.ignore = "S1";
    CHECK(snap_corner(card, parts, ask, {53, 82}).on == "holder+");
}

TEST_CASE("a run that heads for a pad ends under it; nearly straight on is straight on") {
    const Card card = make::sample_card();
    const Parts parts = make::test_parts();
    SnapQuestion ask = from(Side::positive, {60, 35});
    ask.ignore = "S1";
    Snap snap = snap_corner(card, parts, ask, {108, 37});
    CHECK(snap.on == "L1+");
    CHECK(distance(snap.at_mm, {110, 35}) < 1e-9);
    CHECK(snap.length_mm == Approx(50));
    ask.from_mm = Vec2{60, 60};
    ask.before_mm = Vec2{60, 80};
    snap = snap_corner(card, parts, ask, {61.5, 47.2});
    CHECK(snap.kind == SnapKind::straight);
    CHECK(snap.at_mm.x == Approx(60));
    CHECK(snap.at_mm.y == Approx(47));
}

TEST_CASE("a corner stops level with the pad it will turn towards") {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-white", {110, 40}, 270)); // + at 110, 35
    const Snap snap = snap_corner(card, make::test_parts(), from(Side::positive, {54, 80}), {54.4, 36.6});
    CHECK(snap.kind == SnapKind::in_line);
    CHECK(snap.on == "L1+");
    CHECK(snap.at_mm.x == Approx(54));
    CHECK(snap.at_mm.y == Approx(35));
}

TEST_CASE("a branch ends on the centre line of the strip it reaches") {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("S1", Side::positive, {{54, 30}, {140, 30}}));
    const Snap snap = snap_corner(card, make::test_parts(), from(Side::positive, {90, 70}), {91, 32});
    CHECK(snap.kind == SnapKind::strip);
    CHECK(snap.on == "S1");
    CHECK(distance(snap.at_mm, {90, 30}) < 1e-9);
    // The other side's strip is no goal.
    CHECK(snap_corner(card, make::test_parts(), from(Side::negative, {90, 70}), {91, 32}).kind !=
          SnapKind::strip);
}

TEST_CASE("an LED stands across two runs the right way round") {
    Card card = make::sample_card();
    const Parts parts = make::test_parts();
    const PartSnap snap = snap_led(card, parts, "carrier-white", {88.2, 43}, 0);
    CHECK(snap.across);
    CHECK(snap.at_mm.x == Approx(88));
    CHECK(snap.at_mm.y == Approx(40));
    CHECK(snap.turn_deg == Approx(270)); // from the - run at y 45 up to the + run at y 35
    const PartSnap away = snap_led(card, parts, "carrier-white", {88.2, 78.7}, 100);
    CHECK_FALSE(away.across);
    CHECK(away.at_mm == Vec2{88, 79});
    CHECK(away.turn_deg == 105);
    // A small chip cannot reach over a gap that wide.
    Parts with_chip = parts;
    with_chip.leds["chip"] = parts.leds.at("carrier-white");
    with_chip.leds["chip"].package = "chip-1206";
    CHECK_FALSE(snap_led(card, with_chip, "chip", {88.2, 43}, 0).across);
}
