// A repair offered by a verdict cures the card it was offered for. Places worked by hand.
#include "guide/repair.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Card changed(const Card& card, const Parts& parts, const Change& change) {
    const Outcome<Card> outcome = apply_change(card, parts, change);
    REQUIRE(outcome.ok());
    return outcome.value();
}

Change tear_of(const char* strip, Vec2 at_mm, double gap_mm) {
    Change change;
    change.kind = ChangeKind::tear;
    change.part = strip;
    change.at_mm = at_mm;
    change.mm = gap_mm;
    return change;
}

// Whether the repair of a stopped step proves it.
bool cured(const Card& broken, const Parts& parts, StepId step) {
    const StepVerdict before = judge_step(broken, parts, step, {});
    REQUIRE(before.state == VerdictState::stopped);
    const std::optional<Repair> repair = repair_for(broken, parts, before);
    REQUIRE(repair.has_value());
    const StepVerdict after = judge_step(changed(broken, parts, repair->change), parts, step, {});
    INFO(after.sentence);
    return after.state == VerdictState::proved;
}

} // namespace

TEST_CASE("A torn strip is bridged, and the close-up shows the gap and the piece", "[guide]") {
    const Parts parts = make::test_parts();
    // N1 of the sample runs up at x = 30 from 80 to 45; torn at y = 60 by 2 mm.
    const Card torn = changed(make::sample_card(), parts, tear_of("N1", {30, 60}, 2.0));
    CHECK(cured(torn, parts, StepId::lay_negative));

    const StepVerdict verdict = judge_step(torn, parts, StepId::lay_negative, {});
    const std::optional<CloseUp> close_up = close_up_for(torn, parts, verdict);
    REQUIRE(close_up.has_value());
    CHECK(close_up->gap_mm == Approx(2.0).margin(0.01));
    CHECK(close_up->bridge_length_mm == Approx(15.0));
    REQUIRE(close_up->bridge_mm.size() == 2);
    CHECK(close_up->bridge_mm[0].x == Approx(30.0).margin(0.01));
    CHECK((close_up->bridge_mm[0].y + close_up->bridge_mm[1].y) / 2 == Approx(60.0).margin(0.6));
}

TEST_CASE("A turned light is turned back", "[guide]") {
    const Parts parts = make::test_parts();
    Change turn;
    turn.kind = ChangeKind::led_turned;
    turn.part = "L1";
    CHECK(cured(changed(make::sample_card(), parts, turn), parts, StepId::place_leds));
}

TEST_CASE("A forgotten patch is put between", "[guide]") {
    const Parts parts = make::test_parts();
    Change forgotten;
    forgotten.kind = ChangeKind::patch_missing;
    forgotten.part = "P1";
    CHECK(cured(changed(make::sample_card(), parts, forgotten), parts, StepId::insulate));
}

TEST_CASE("Foam of the wrong height gets the layers that fit", "[guide]") {
    const Parts parts = make::test_parts();
    Change layers;
    layers.kind = ChangeKind::foam_layers;
    layers.count = 2; // 3.0 mm under 3.8 mm of holder and cell
    CHECK(cured(changed(make::sample_card(), parts, layers), parts, StepId::pad_edges));
}

TEST_CASE("A sound card needs no repair", "[guide]") {
    const Parts parts = make::test_parts();
    const StepVerdict verdict = judge_step(make::sample_card(), parts, StepId::lay_negative, {});
    CHECK_FALSE(repair_for(make::sample_card(), parts, verdict).has_value());
    CHECK_FALSE(close_up_for(make::sample_card(), parts, verdict).has_value());
}

TEST_CASE("A tear said to be at a fold parts the strip all the same", "[guide]") {
    const Parts parts = make::test_parts();
    // N1 of the sample folds at (30, 45); torn exactly there by 1 mm.
    const Card torn = changed(make::sample_card(), parts, tear_of("N1", {30, 45}, 1.0));
    CHECK(judge_step(torn, parts, StepId::lay_negative, {}).state == VerdictState::stopped);
    CHECK(cured(torn, parts, StepId::lay_negative));
}
