#include "find_moves.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("the sample card becomes seven steps with the moves worked out by hand", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    REQUIRE(steps.size() == 7);
    for (int i = 0; i < kStepCount; ++i) {
        CHECK(static_cast<int>(steps[static_cast<std::size_t>(i)].id) == i + 1);
        CHECK(steps[static_cast<std::size_t>(i)].title == title_of(static_cast<StepId>(i + 1)));
        CHECK_FALSE(steps[static_cast<std::size_t>(i)].goal.empty());
        CHECK_FALSE(steps[static_cast<std::size_t>(i)].proof.empty());
    }
    // N1: 30,80 -> 30,45 -> 118,45. Up 35 mm, a right turn, right 88 mm past L1- at 110,45.
    using K = MoveKind;
    CHECK(look::kinds(look::step(steps, StepId::lay_negative)) ==
          std::vector<K>{K::start_strip, K::run, K::fold, K::run, K::cut});
    // S1: 54,80 -> 60,80 -> 60,35 -> 118,35. The patch begins at y = 52, 34 mm along; the tape stops 12 mm
    // before.
    CHECK(look::kinds(look::step(steps, StepId::lay_positive)) ==
          std::vector<K>{K::start_strip, K::run, K::fold, K::run, K::leave_tail});
    CHECK(look::kinds(look::step(steps, StepId::insulate)) ==
          std::vector<K>{K::patch, K::press, K::carry_across, K::fold, K::run, K::cut});
    CHECK(look::kinds(look::step(steps, StepId::place_leds)) ==
          std::vector<K>{K::place_led, K::adult_notice, K::cell_in, K::light_test});
    CHECK(look::kinds(look::step(steps, StepId::pad_edges)) ==
          std::vector<K>{K::foam, K::foam, K::foam, K::foam, K::close, K::close, K::label, K::label});
}

TEST_CASE("lengths of the sample card", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Step& negative = look::step(steps, StepId::lay_negative);
    CHECK(look::move(negative, "3/N1/run-1").length_mm == Approx(35));
    CHECK(look::move(negative, "3/N1/run-2").length_mm == Approx(88));
    CHECK(look::move(negative, "3/N1/start").sentence.find("123 mm") != std::string::npos);
    const Step& positive = look::step(steps, StepId::lay_positive);
    CHECK(look::move(positive, "4/S1/run-1").length_mm == Approx(6));
    CHECK(look::move(positive, "4/S1/run-2").length_mm == Approx(16));
    CHECK(look::move(positive, "4/S1/tail").length_mm == Approx(87));
    CHECK(look::move(positive, "4/S1/tail").path_mm.at(0).y == Approx(64));
    CHECK(look::move(positive, "4/S1/tail").sentence.find("12 mm") != std::string::npos);
    const Step& crossing = look::step(steps, StepId::insulate);
    CHECK(look::move(crossing, "5/S1/carry-2").length_mm == Approx(29));
    CHECK(look::move(crossing, "5/S1/run-3").length_mm == Approx(58));
    // Top and bottom 148 mm, the sides between two 5 mm strips: 95 mm; three layers.
    const Step& edges = look::step(steps, StepId::pad_edges);
    CHECK(look::move(edges, "7/foam/top").length_mm == Approx(444));
    CHECK(look::move(edges, "7/foam/left").length_mm == Approx(285));
}

TEST_CASE("runs and tail add up to each strip's length", "[guide]") {
    const int lights = GENERATE(1, 3, 12);
    const Card card = make::row_card(lights);
    const std::vector<Step> steps = make_steps(card, make::kParts);
    for (const Laid& item : card.laid) {
        const Strip* strip = std::get_if<Strip>(&item);
        if (strip == nullptr) {
            continue;
        }
        double whole_mm = 0.0;
        for (std::size_t i = 1; i < strip->path_mm.size(); ++i) {
            whole_mm += distance(strip->path_mm[i - 1], strip->path_mm[i]);
        }
        double laid_mm = 0.0;
        double tail_mm = 0.0;
        double later_mm = 0.0;
        for (const Step& step : steps) {
            for (const Move& move : step.moves) {
                if (move.parts.at(0) != strip->id) {
                    continue;
                }
                (move.kind == MoveKind::leave_tail ? tail_mm
                 : step.id == StepId::insulate     ? later_mm
                                                   : laid_mm) += move.length_mm;
            }
        }
        CHECK(laid_mm + tail_mm == Approx(whole_mm));
        CHECK(later_mm == Approx(tail_mm));
    }
}

TEST_CASE("a strip names where it starts", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    CHECK(look::move(look::step(steps, StepId::lay_negative), "3/N1/start").title == "Start N1 on the bed");
    CHECK(look::move(look::step(steps, StepId::lay_positive), "4/S1/start").title ==
          "Start S1 inside the flap");
}

TEST_CASE("the flap opens the way the holder is turned", "[guide]") {
    const auto [turn_deg, words] =
        GENERATE(table<double, std::string>({{0, "The flap opens to the right"},
                                             {90, "The flap opens to the bottom"},
                                             {180, "The flap opens to the left"},
                                             {270, "The flap opens to the top"},
                                             {45, "The flap opens to the bottom right"}}));
    Card card = make::bare_card();
    card.holder.turn_deg = turn_deg;
    const std::vector<Step> steps = make_steps(card, make::kParts);
    CHECK(look::move(steps[0], "1/holder/flap").title == words);
}

TEST_CASE("a ready-made holder is peeled and pressed", "[guide]") {
    Card card = make::bare_card();
    card.holder.type = "screw-20";
    card.holder.turn_deg = 270;
    const std::vector<Step> steps = make_steps(card, make::kParts);
    CHECK(look::move(steps[0], "1/holder/peel").kind == MoveKind::peel);
    CHECK(look::move(steps[0], "1/holder/way").title == "Turn its + pad to the top");
    CHECK(look::move(steps[0], "1/holder/measure").sentence ==
          "Put a dot 30 mm from the left edge and 80 mm from the top edge.");
    CHECK_FALSE(look::has_check(look::step(steps, StepId::pad_edges), "foam-height"));
}

TEST_CASE("pads are marked from two edges", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Move& mark = look::move(steps[1], "2/L1/pads");
    // carrier pads are 5 mm from the middle; turned 270 degrees, + points to the top edge.
    REQUIRE(mark.path_mm.size() == 2);
    CHECK(mark.path_mm[0].x == Approx(110));
    CHECK(mark.path_mm[0].y == Approx(45));
    CHECK(mark.path_mm[1].y == Approx(35));
    CHECK(mark.sentence.find("45 mm") != std::string::npos);
    CHECK(mark.sentence.find("−") != std::string::npos);
}

TEST_CASE("an LED is placed with its + named by an edge", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    CHECK(look::move(look::step(steps, StepId::place_leds), "6/L1/place").title ==
          "Place L1 with + towards the top edge");
}

TEST_CASE("only adults handle the cell", "[guide]") {
    const std::vector<Step> steps = make_steps(make::sample_card(), make::kParts);
    const Step& parts = look::step(steps, StepId::place_leds);
    CHECK(look::move(parts, "6/cell/notice").adult_only);
    CHECK(look::move(parts, "6/cell/in").adult_only);
    CHECK_FALSE(look::move(parts, "6/L1/place").adult_only);
    CHECK(look::move(parts, "6/cell/in").title == "Put the cell in, − face down");
}

TEST_CASE("a holder wired the other way about takes the cell + face down", "[guide]") {
    // The negative trace starts in the flap, the positive on the bed: the bed must carry +.
    Card card = make::bare_card();
    card.cell.face_down = CellFace::positive;
    card.leds.push_back(make::led("L1", "carrier-white", {110, 40}, 90));
    card.laid.emplace_back(make::strip("S1", Side::positive, {{30, 80}, {30, 45}, {118, 45}}));
    card.laid.emplace_back(make::patch("P1", {60, 45}));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{54, 80}, {60, 80}, {60, 35}, {118, 35}}));
    const std::vector<Step> steps = make_steps(card, make::kParts);
    CHECK(look::move(look::step(steps, StepId::place_leds), "6/cell/in").title ==
          "Put the cell in, + face down");
    // N1 lies on top, so it is the negative one that waits, although it is laid first.
    CHECK(look::has_move(look::step(steps, StepId::lay_negative), "3/N1/tail"));
    CHECK(look::has_move(look::step(steps, StepId::insulate), "5/N1/carry-2"));
    CHECK(look::has_check(look::step(steps, StepId::insulate), "flap-to-L1-"));
    CHECK(look::has_check(look::step(steps, StepId::lay_positive), "bed-to-L1+"));
}

TEST_CASE("a card without crossing or foam says so", "[guide]") {
    Card card = make::sample_card();
    card.foam.reset();
    card.laid.clear();
    card.laid.emplace_back(make::strip("N1", Side::negative, {{30, 80}, {30, 45}, {118, 45}}));
    const std::vector<Step> steps = make_steps(card, make::kParts);
    CHECK(look::step(steps, StepId::insulate).moves.empty());
    CHECK(look::has_check(look::step(steps, StepId::insulate), "no-crossings"));
    CHECK(look::has_check(look::step(steps, StepId::pad_edges), "no-foam"));
    const Step edges = look::step(steps, StepId::pad_edges);
    for (const Move& move : edges.moves) {
        CHECK(move.kind != MoveKind::foam);
    }
}

TEST_CASE("each audience hears its own word on the cell", "[guide]") {
    std::vector<std::string> said;
    for (const Audience audience : {Audience::adults, Audience::children, Audience::small_children,
                                    Audience::school_class, Audience::sale}) {
        Card card = make::sample_card();
        card.audience = audience;
        const std::string sentence =
            look::move(look::step(make_steps(card, make::kParts), StepId::pad_edges), "7/cell/hold").sentence;
        CHECK(std::find(said.begin(), said.end(), sentence) == said.end());
        CHECK(sentence.find("safe") == std::string::npos);
        said.push_back(sentence);
    }
}

TEST_CASE("move and check ids are unique within a step", "[guide]") {
    for (const Step& step : make_steps(make::row_card(5), make::kParts)) {
        std::vector<std::string> ids;
        for (const Move& move : step.moves) {
            ids.push_back(move.id);
        }
        for (const Check& check : step.proof) {
            ids.push_back(check.id);
        }
        std::sort(ids.begin(), ids.end());
        CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
    }
}

TEST_CASE("words keep the tone: a real minus after ids, none of the banned words", "[guide]") {
    for (const Step& step : make_steps(make::row_card(3), make::kParts)) {
        for (const Move& move : step.moves) {
            for (const std::string& text : {move.title, move.sentence, move.why}) {
                INFO(text);
                CHECK_FALSE(text.empty());
                for (const char* banned : {"error", "invalid", "fail", "L1-", "L2-", "safe", "compliant"}) {
                    CHECK(text.find(banned) == std::string::npos);
                }
            }
        }
    }
}
