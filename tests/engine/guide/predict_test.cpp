#include "find_moves.h"
#include "guide/change.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

// copper-5: 0.0005 ohm per square, 5 mm wide; a 5 x 5 mm joint has 3.2 / 25 ohm.
constexpr double kOhmPerMm = 0.0005 / 5.0;
constexpr double kJoint_ohm = 3.2 / 25.0;

// Bed - N1 - joint - N2 - joint - N3 with L1- on it: a chain with two joints.
Card chain_card() {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L1", "carrier-white", {110, 20}, 0));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}}));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{27.5, 47.5}, {80, 47.5}}));
    card.laid.emplace_back(make::strip("N3", Side::negative, {{77.5, 50}, {77.5, 20}, {108, 20}}));
    return card;
}

} // namespace

TEST_CASE("one strip: the resistance is its squares", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Check& check = look::check(look::step(steps, StepId::lay_negative), "bed-to-L1-");
    CHECK(check.kind == CheckKind::resistance);
    // 115 mm from the strip's start to the pad, less what lies on the bed before the contact (at most 10 mm).
    CHECK(check.expected <= 115 * kOhmPerMm + 1e-9);
    CHECK(check.expected >= 105 * kOhmPerMm - 1e-9);
    CHECK(check.low == Approx(0.0).margin(1e-12));
    CHECK(check.high == Approx(0.4));
    CHECK(check.expect_text == "0–0.4 Ω");
    CHECK(check.title == "bed to L1−");
    CHECK(check.needed);
}

TEST_CASE("a chain of two joints, worked by hand", "[guide]") {
    const std::vector<Step> steps = make_steps(chain_card(), make::kParts);
    const Check& check = look::check(look::step(steps, StepId::lay_negative), "bed-to-L1-");
    // N1: contact about 5 mm along, joint about 32.5; N2: 2.5 to 50; N3: 2.5 to 57.5: 130 mm in all, within
    // 10 mm.
    const double tape_ohm = 130 * kOhmPerMm;
    CHECK(check.expected == Approx(2 * kJoint_ohm + tape_ohm).margin(10 * kOhmPerMm));
    // Joints from 0.4 to 4 times, tape from 0.4 to 2 times, 0.05 off and 0.3 on, outwards to 0.1 ohm.
    CHECK(check.low == Approx(0.0).margin(1e-12));
    CHECK(check.high == Approx(1.4)); // 8 x 0.128 + 2 x 0.013 + 0.3 = 1.35
    CHECK(check.expect_text == "0–1.4 Ω");
}

TEST_CASE("fabric tape moves the range off zero", "[guide]") {
    Card card = make::sample_card();
    for (Laid& item : card.laid) {
        if (Strip* strip = std::get_if<Strip>(&item)) {
            strip->tape = "fabric-5";
        }
    }
    const std::vector<Step> steps = make_steps(card, make::kParts);
    const Check& check = look::check(look::step(steps, StepId::lay_negative), "bed-to-L1-");
    // 0.05 / 5 ohm per mm x about 110 mm.
    CHECK(check.expected == Approx(1.1).margin(0.06));
    CHECK(check.low == Approx(0.3).margin(0.051));
    CHECK(check.high == Approx(2.5).margin(0.11));
}

TEST_CASE("a check sits on the run that passes the pad and again in the proof", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Move& run = look::move(look::step(steps, StepId::lay_negative), "3/N1/run-2");
    REQUIRE(run.check.has_value());
    CHECK(run.check->id == "bed-to-L1-");
    CHECK_FALSE(run.check->needed);
    CHECK_FALSE(look::move(look::step(steps, StepId::lay_negative), "3/N1/run-1").check.has_value());
}

TEST_CASE("no check before the strip is joined to anything", "[guide]") {
    // N2 is laid from its far end back to N1: L2- comes before the joint, so nothing can be measured on the
    // way.
    Card card = make::sample_card();
    card.leds.push_back(make::led("L2", "carrier-white", {100, 65}, 270));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{118, 70}, {80, 70}, {80, 45}}));
    const Step step = look::step(make_steps(card, make::kParts), StepId::lay_negative);
    CHECK_FALSE(look::move(step, "3/N2/run-1").check.has_value());
    CHECK(look::has_check(step, "bed-to-L2-"));
    CHECK(look::has_move(step, "3/N2/joint-1"));
}

TEST_CASE("flap to bed must read open at steps 4 and 5", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    for (const StepId id : {StepId::lay_positive, StepId::insulate}) {
        const Check& check = look::check(look::step(steps, id), "flap-to-bed");
        CHECK(check.kind == CheckKind::open);
        CHECK(check.needed);
        CHECK(check.without_meter.find("dark") != std::string::npos);
    }
    CHECK_FALSE(look::has_check(look::step(steps, StepId::lay_positive), "flap-to-L1+"));
    CHECK(look::has_check(look::step(steps, StepId::insulate), "flap-to-L1+"));
}

TEST_CASE("predictions follow the card as built", "[guide]") {
    const Card card = make::sample_card();
    const Change lap{ChangeKind::joint_cut, "N1", {30, 45}, 5.0, "", 0};
    const Outcome<Card> lapped = apply_change(card, make::kParts, lap);
    REQUIRE(lapped.ok());
    const Check planned =
        look::check(look::step(make_steps(card, make::kParts), StepId::lay_negative), "bed-to-L1-");
    const Check built =
        look::check(look::step(make_steps(lapped.value(), make::kParts), StepId::lay_negative), "bed-to-L1-");
    CHECK(built.expected - planned.expected == Approx(kJoint_ohm).margin(0.002));
    // A gap: the meter will show OL.
    const Outcome<Card> missed =
        apply_change(card, make::kParts, {ChangeKind::joint_cut, "N1", {30, 45}, -1.5, "", 0});
    REQUIRE(missed.ok());
    const Check open =
        look::check(look::step(make_steps(missed.value(), make::kParts), StepId::lay_negative), "bed-to-L1-");
    CHECK(open.kind == CheckKind::open);
}

TEST_CASE("behind a resistor readings start at its pad", "[guide]") {
    // Bed - N1 - R1 - N2 - L1-: before step 6 no current passes R1's place.
    Card card = make::sample_card();
    card.laid[0] = make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {38, 45}});
    card.laid.insert(card.laid.begin() + 1, make::strip("N2", Side::negative, {{43, 45}, {118, 45}}));
    card.resistors.push_back(make::resistor("R1", 47, {40.5, 45}, 0));
    const Step step = look::step(make_steps(card, make::kParts), StepId::lay_negative);
    CHECK(look::has_check(step, "bed-to-R1.1"));
    CHECK(look::has_check(step, "R1.2-to-L1-"));
    CHECK(judge_step(card, make::kParts, StepId::lay_negative, {}).state == VerdictState::proved);
}

TEST_CASE("two lights in series: the link is read from pad to pad", "[guide]") {
    Card card = make::bare_card();
    card.cell.count = 2;
    card.leds.push_back(make::led("L1", "carrier-white", {100, 30}, 180));
    card.leds.push_back(make::led("L2", "carrier-white", {125, 30}, 180));
    card.laid.emplace_back(
        make::strip("N1", Side::negative, {{30, 80}, {30, 95}, {135, 95}, {135, 30}, {130, 30}}));
    card.laid.emplace_back(make::strip("S1", Side::positive, {{54, 80}, {60, 80}, {60, 30}, {95, 30}}));
    card.laid.emplace_back(make::strip("M1", Side::link, {{104, 30}, {121, 30}}));
    // L1: + at (95,30), - at (105,30). L2: + at (120,30), - at (130,30).
    const std::vector<Step> steps = make_steps(card, make::kParts);
    const Step& negative = look::step(steps, StepId::lay_negative);
    CHECK(look::has_check(negative, "bed-to-L2-"));
    CHECK_FALSE(look::has_check(negative, "bed-to-L1-"));
    const Step& positive = look::step(steps, StepId::lay_positive);
    CHECK(look::has_move(positive, "4/M1/start"));
    CHECK(look::has_check(positive, "flap-to-L1+"));
    CHECK(look::has_check(positive, "L1--to-L2+"));
    for (int number = 1; number <= kStepCount; ++number) {
        INFO(number);
        const StepVerdict verdict = judge_step(card, make::kParts, static_cast<StepId>(number), {});
        CHECK_FALSE(verdict.sentence.empty());
        if (number <= 6) {
            CHECK(verdict.state == VerdictState::proved);
        }
    }
    // A link torn in two is caught when it is laid.
    const Outcome<Card> torn =
        apply_change(card, make::kParts, {ChangeKind::tear, "M1", {112, 30}, 1, "", 0});
    REQUIRE(torn.ok());
    CHECK(judge_step(torn.value(), make::kParts, StepId::lay_positive, {}).state == VerdictState::stopped);
}

TEST_CASE("lights, volts and foam of the sample card", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Check& lights = look::check(look::step(steps, StepId::place_leds), "lights");
    REQUIRE(lights.lights.size() == 1);
    CHECK(lights.lights[0].led == "L1");
    CHECK(lights.lights[0].state == "lit");
    CHECK(lights.expect_text == "1 of 1 lit");
    const Check& volts = look::check(look::step(steps, StepId::place_leds), "cell-volts");
    CHECK(volts.high == Approx(volts.expected + 0.15));
    CHECK(volts.low < volts.expected - 0.15);
    CHECK(volts.expected < 3.096);
    const Check& height = look::check(look::step(steps, StepId::pad_edges), "foam-height");
    // 3.2 + 2 x 0.3 = 3.8 mm; the flap travels 1.5 mm more; three layers of 1.5 mm.
    CHECK(height.low == Approx(3.8));
    CHECK(height.high == Approx(5.3));
    CHECK(height.expected == Approx(4.5));
    CHECK(height.expect_text == "3.8–5.3 mm");
}
