#include "find_moves.h"
#include "guide/change.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Card with_change(const Card& card, const Change& change) {
    const Outcome<Card> made = apply_change(card, make::kParts, change);
    REQUIRE(made.ok());
    return made.value();
}

// The steps at which a card is stopped.
std::vector<int> stops(const Card& card) {
    std::vector<int> out;
    for (int number = 1; number <= kStepCount; ++number) {
        if (judge_step(card, make::kParts, static_cast<StepId>(number), {}).state == VerdictState::stopped) {
            out.push_back(number);
        }
    }
    return out;
}

Reading ohms(const std::string& check, double value) {
    Reading reading;
    reading.check = check;
    reading.value = value;
    return reading;
}

} // namespace

TEST_CASE("the sample card is proved at every step", "[guide]") {
    CHECK(stops(make::sample_card()).empty());
    CHECK(stops(make::row_card(7)).empty());
    const StepVerdict verdict = judge_step(make::row_card(7), make::kParts, StepId::lay_negative, {});
    CHECK(verdict.sentence == "Proved: all 7 negative pads are reached.");
    REQUIRE(verdict.pads.size() == 7);
    CHECK(verdict.pads[6].pad == "L7-");
    CHECK(verdict.pads[6].reached);
    CHECK(verdict.to_do.empty());
}

TEST_CASE("a missed joint is caught when the negative trace is laid", "[guide]") {
    const Card card = with_change(make::row_card(7), {ChangeKind::tear, "N1", {146, 45}, 1.5, "", 0});
    // L7 is at x = 152; 80 + 12 x 6.
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::lay_negative, {});
    CHECK(verdict.state == VerdictState::stopped);
    CHECK(verdict.sentence == "One pad is not reached: L7−.");
    CHECK(look::has_rule(verdict, "led-not-reached"));
    REQUIRE_FALSE(verdict.findings.empty());
    CHECK(verdict.findings[0].text == "N1b misses N1 by 1.5 mm.");
    CHECK(verdict.findings[0].at_mm.x == Approx(146));
    REQUIRE(verdict.to_do.size() == 3);
    CHECK(verdict.to_do[0] == "Cut 15 mm of the same tape.");
    CHECK(verdict.pads.back().pad == "L7-");
    CHECK_FALSE(verdict.pads.back().reached);
    CHECK(verdict.pads.front().reached);
    // The other trace is not to blame.
    CHECK(judge_step(card, make::kParts, StepId::lay_positive, {}).state == VerdictState::proved);
    CHECK(judge_step(card, make::kParts, StepId::insulate, {}).state == VerdictState::proved);
    CHECK(judge_step(card, make::kParts, StepId::place_leds, {}).state == VerdictState::stopped);
    // Bridged, it is proved.
    CHECK(stops(with_change(card, {ChangeKind::bridged, "N1", {146, 45}, 15, "", 0})).empty());
}

TEST_CASE("several pads beyond one gap are one cause", "[guide]") {
    const Card card = with_change(make::row_card(7), {ChangeKind::tear, "N1", {110, 45}, 2, "", 0});
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::lay_negative, {});
    CHECK(verdict.sentence == "4 pads are not reached: L4−, L5−, L6− and L7−.");
    CHECK(std::count_if(verdict.findings.begin(), verdict.findings.end(),
                        [](const Finding& one) { return one.rule == "led-not-reached"; }) == 1);
}

TEST_CASE("a torn positive strip is caught at step 4 or, past the crossing, at step 5", "[guide]") {
    Card card = make::sample_card();
    card.leds.push_back(make::led("L2", "carrier-white", {80, 70}, 180)); // + at (75,70), - at (85,70)
    card.laid.emplace_back(make::strip("S2", Side::positive, {{60, 70}, {78, 70}}));
    card.laid.emplace_back(make::strip("N2", Side::negative, {{85, 73}, {85, 45}}));
    REQUIRE(stops(card).empty());
    CHECK(stops(with_change(card, {ChangeKind::tear, "S2", {66, 70}, 1, "", 0})) ==
          std::vector<int>{4, 5, 6});
    CHECK(stops(with_change(card, {ChangeKind::tear, "S1", {90, 35}, 1, "", 0})) == std::vector<int>{5, 6});
}

TEST_CASE("a forgotten patch is caught at step 5, not before", "[guide]") {
    const Card card = with_change(make::sample_card(), {ChangeKind::patch_missing, "P1", {}, 0, "", 0});
    CHECK(judge_step(card, make::kParts, StepId::lay_negative, {}).state == VerdictState::proved);
    const StepVerdict before = judge_step(card, make::kParts, StepId::lay_positive, {});
    CHECK(before.state == VerdictState::proved);
    CHECK_FALSE(look::has_rule(before, "short-circuit"));
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::insulate, {});
    CHECK(verdict.state == VerdictState::stopped);
    CHECK(look::has_rule(verdict, "crossing-bare"));
    CHECK(look::has_rule(verdict, "short-circuit"));
    CHECK_FALSE(verdict.to_do.empty());
}

TEST_CASE("a patch put beside the crossing is caught at step 5", "[guide]") {
    const Card card = with_change(make::sample_card(), {ChangeKind::patch_moved, "P1", {90, 60}, 0, "", 0});
    CHECK(stops(card).front() == 5);
}

TEST_CASE("a turned LED is caught at step 6 and nowhere else", "[guide]") {
    const Card card = with_change(make::row_card(3), {ChangeKind::led_turned, "L2", {}, 0, "", 0});
    CHECK(stops(card) == std::vector<int>{6});
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::place_leds, {});
    CHECK(verdict.sentence == "One light stays dark: L2.");
    CHECK(look::has_rule(verdict, "led-reversed"));
    const Check lights =
        look::check(look::step(make_steps(card, make::kParts), StepId::place_leds), "lights");
    CHECK(lights.lights[1].state == "dark");
    CHECK(lights.expect_text == "2 of 3 lit");
    // Earlier steps still name the places as marked.
    CHECK(look::has_check(look::step(make_steps(card, make::kParts), StepId::lay_negative), "bed-to-L2-"));
    // The guide still says how it should lie.
    CHECK(look::move(look::step(make_steps(card, make::kParts), StepId::place_leds), "6/L2/place").title ==
          "Place L2 with + towards the top edge");
}

TEST_CASE("an upside-down cell is caught at step 6 and does not touch the traces", "[guide]") {
    const Card card = with_change(make::sample_card(), {ChangeKind::cell_upside_down, "", {}, 0, "", 0});
    CHECK(stops(card) == std::vector<int>{6});
    CHECK(look::move(look::step(make_steps(card, make::kParts), StepId::place_leds), "6/cell/in").title ==
          "Put the cell in, − face down");
}

TEST_CASE("stacked cells are a caution at step 6", "[guide]") {
    const Card card = with_change(make::sample_card(), {ChangeKind::cells_stacked, "", {}, 0, "", 2});
    CHECK(look::has_rule(judge_step(card, make::kParts, StepId::place_leds, {}), "cells-stacked"));
    const Check volts =
        look::check(look::step(make_steps(card, make::kParts), StepId::place_leds), "cell-volts");
    CHECK(volts.expected > 3.5);
    // Two cells stand 7 mm high: the foam no longer does.
    CHECK(judge_step(card, make::kParts, StepId::pad_edges, {}).state == VerdictState::stopped);
}

TEST_CASE("foam too low is caught at step 7", "[guide]") {
    const Card card = with_change(make::sample_card(), {ChangeKind::foam_layers, "", {}, 0, "", 2});
    CHECK(stops(card) == std::vector<int>{7});
    CHECK(look::has_rule(judge_step(card, make::kParts, StepId::pad_edges, {}), "foam-low"));
    const Card high = with_change(make::sample_card(), {ChangeKind::foam_layers, "", {}, 0, "", 4});
    CHECK(look::has_rule(judge_step(high, make::kParts, StepId::pad_edges, {}), "foam-high"));
}

TEST_CASE("a holder that does not suit is caught when it is mounted or when the traces miss it", "[guide]") {
    Card homely = make::sample_card();
    homely.audience = Audience::small_children;
    CHECK(stops(homely) == std::vector<int>{1});
    CHECK(look::has_rule(judge_step(homely, make::kParts, StepId::mount_holder, {}), "cell-in-reach"));
    // The pads of a ready-made holder lie elsewhere than bed and flap: the negative strip misses them.
    const Card other =
        with_change(make::sample_card(), {ChangeKind::holder_swapped, "", {}, 0, "screw-20", 0});
    CHECK(judge_step(other, make::kParts, StepId::lay_negative, {}).state == VerdictState::stopped);
    Card off = make::sample_card();
    off.holder.at_mm = {5, 80};
    CHECK(judge_step(off, make::kParts, StepId::mount_holder, {}).state == VerdictState::stopped);
    CHECK(judge_step(off, make::kParts, StepId::mark_pads, {}).state == VerdictState::proved);
}

TEST_CASE("a pad off the sheet is caught when it is marked", "[guide]") {
    Card card = make::sample_card();
    card.leds.push_back(make::led("L2", "carrier-white", {146, 20}, 0));
    CHECK(judge_step(card, make::kParts, StepId::mark_pads, {}).state == VerdictState::stopped);
    CHECK(judge_step(card, make::kParts, StepId::mount_holder, {}).state == VerdictState::proved);
}

TEST_CASE("non-conductive glue leaves a joint open, and the verdict says turn the end under", "[guide]") {
    Card card = with_change(make::sample_card(), {ChangeKind::joint_cut, "N1", {30, 45}, 5, "", 0});
    card = with_change(card, {ChangeKind::tape_swapped, "N1", {}, 0, "copper-5-plain", 0});
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::lay_negative, {});
    CHECK(verdict.state == VerdictState::stopped);
    CHECK(look::has_rule(verdict, "joint-open"));
    CHECK(verdict.sentence == "One pad is not reached: L1−.");
    CHECK_FALSE(verdict.to_do.empty());
}

TEST_CASE("a positive strip laid along the negative is caught at step 4", "[guide]") {
    Card card = make::sample_card();
    card.laid.erase(card.laid.begin() + 1);
    std::get<Strip>(card.laid[1]).path_mm = {{54, 80}, {60, 80}, {60, 46}, {118, 46}};
    const StepVerdict verdict = judge_step(card, make::kParts, StepId::lay_positive, {});
    CHECK(verdict.state == VerdictState::stopped);
    CHECK(look::has_rule(verdict, "crossing-bare"));
    CHECK(look::has_rule(verdict, "short-circuit"));
    // Moved 8 mm down, S1 still waits behind its patch at step 4; what then lies on N1 and misses L1+ is
    // laid, and told, at step 5.
    const Card moved = with_change(make::sample_card(), {ChangeKind::strip_moved, "S1", {0, 8}, 0, "", 0});
    CHECK(judge_step(moved, make::kParts, StepId::lay_positive, {}).state == VerdictState::proved);
    const StepVerdict later = judge_step(moved, make::kParts, StepId::insulate, {});
    CHECK(later.state == VerdictState::stopped);
    CHECK(look::has_rule(later, "short-circuit"));
    CHECK(look::has_rule(later, "patch-small"));
}

TEST_CASE("a pad that its strip misses is told when that strip is laid", "[guide]") {
    // Both strips end at x = 118. L1's pads are 7 mm wide along them: moved to x = 124 they begin at
    // 120.5, 2.5 mm off. The end of S1 waits for step 5.
    const Card card = with_change(make::sample_card(), {ChangeKind::led_moved, "L1", {124, 40}, 0, "", 0});
    const StepVerdict negative = judge_step(card, make::kParts, StepId::lay_negative, {});
    CHECK(negative.sentence == "One pad is not reached: L1−.");
    CHECK(negative.findings.at(0).text == "L1− misses N1 by 2.5 mm.");
    CHECK(judge_step(card, make::kParts, StepId::lay_positive, {}).state == VerdictState::proved);
    CHECK(judge_step(card, make::kParts, StepId::insulate, {}).state == VerdictState::stopped);
}

TEST_CASE("readings can stop a step that looks right", "[guide]") {
    const Card card = make::sample_card();
    const StepVerdict good = judge_step(card, make::kParts, StepId::lay_negative, {ohms("bed-to-L1-", 0.2)});
    CHECK(good.state == VerdictState::proved);
    REQUIRE(good.readings.size() == 1);
    CHECK(good.readings[0].fit == ReadingFit::as_expected);
    const StepVerdict bad = judge_step(card, make::kParts, StepId::lay_negative, {ohms("bed-to-L1-", 3.2)});
    CHECK(bad.state == VerdictState::stopped);
    CHECK(bad.sentence == "One reading is off: bed to L1−.");
    REQUIRE_FALSE(bad.to_do.empty());
    CHECK(bad.to_do[0].rfind("Rub the joint", 0) == 0);
    // The last word counts.
    CHECK(judge_step(card, make::kParts, StepId::lay_negative,
                     {ohms("bed-to-L1-", 3.2), ohms("bed-to-L1-", 0.3)})
              .state == VerdictState::proved);
    // A path where there must be none.
    CHECK(judge_step(card, make::kParts, StepId::lay_positive, {ohms("flap-to-bed", 0.4)}).state ==
          VerdictState::stopped);
    // A reading of another step is not this step's business.
    CHECK(judge_step(card, make::kParts, StepId::lay_positive, {ohms("bed-to-L1-", 3.2)}).state ==
          VerdictState::proved);
}

TEST_CASE("lights that do not show as predicted stop step 6", "[guide]") {
    Reading seen;
    seen.check = "lights";
    seen.seen = {{"L1", "lit", 0}, {"L2", "dark", 0}};
    const StepVerdict verdict = judge_step(make::row_card(2), make::kParts, StepId::place_leds, {seen});
    CHECK(verdict.state == VerdictState::stopped);
    REQUIRE(verdict.readings.size() == 1);
    CHECK(verdict.readings[0].text == "L2 is dark, expected lit");
    seen.seen[1].state = "lit";
    CHECK(judge_step(make::row_card(2), make::kParts, StepId::place_leds, {seen}).state ==
          VerdictState::proved);
}
