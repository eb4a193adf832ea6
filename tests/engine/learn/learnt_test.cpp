// What a maker's own tests say of a part, against figures worked by hand and a contact law from outside.
#include "learn/learnt.h"

#include "circuit/lights.h"
#include "conductors/conductors.h"
#include "guide/sequence.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

const std::string kDay = "2026-05-04T10:00:00Z";

TwoStripTest strips(const std::string& tape, double reading_ohm, double leads_ohm) {
    TwoStripTest test;
    test.type = tape;
    test.overlap_mm = 5.0;
    test.between_mm = 120.0;
    test.reading_ohm = reading_ohm;
    test.leads_ohm = leads_ohm;
    return test;
}

TapeType tape_of(const Outcome<Learnt>& learnt, const std::string& id) {
    INFO((learnt ? std::string() : learnt.problem().sentence()));
    REQUIRE(learnt.ok());
    return learnt.value().parts.tapes.at(id);
}

const Move& placing(const std::vector<Step>& steps) {
    for (const Move& move : steps[5].moves) {
        if (move.kind == MoveKind::place_led) {
            return move;
        }
    }
    throw std::logic_error("no light is placed");
}

} // namespace

TEST_CASE("A joint's figure is the reading less leads and tape, times the overlap", "[learn]") {
    Parts known = make::test_parts();
    known.tapes["fabric-5"] = make::detail::tape(5, 0.05, Adhesive::conductive, 32);
    // By hand: 120 mm of 5 mm tape are 24 squares; at 0.05 ohm each 1.2 ohm. 4.2 - 0.2 - 1.2 = 2.8 ohm in the
    // joint; over 5 x 5 = 25 mm2 that is 70 ohm mm2: above the 50 of a good joint, below the 500 of an open
    // one.
    const TapeType tape = tape_of(learn_tape(strips("fabric-5", 4.2, 0.2), known, kDay), "fabric-5");
    CHECK(tape.joint_ohm_mm2 == Approx(70.0));
    CHECK(tape.adhesive == Adhesive::conductive);
    CHECK(glue_of(tape) == Glue::weakly);
    CHECK(tape.measured_at == kDay);
    CHECK_THAT(tape.source, Contains("2026-05-04: 4.2 Ω over 5 × 5 mm"));
    CHECK(tape.ohm_per_square == 0.05);
}

TEST_CASE("The lap of two sheets, read at its ends, gives back its contact resistance", "[learn]") {
    // Two equal sheets lapped over L, width w, contact resistance rc x area, sheet resistance Rs (the contact
    // line of Berger 1972 and Murrmann-Widmann, form from memory):
    // R = Rs L / 2w + Rs / (w a) coth(a L / 2), a = sqrt(2 Rs / rc).
    Parts known = make::test_parts();
    known.tapes["fabric-5"] = make::detail::tape(5, 0.05, Adhesive::conductive, 100);
    const double rc = 32.0;
    const double a = std::sqrt(2 * 0.05 / rc);
    TwoStripTest test = strips("fabric-5", 0.05 * 10 / 10 + 0.05 / (5 * a) / std::tanh(a * 5), 0.0);
    test.overlap_mm = 10;
    test.between_mm = 10;
    CHECK(tape_of(learn_tape(test, known, kDay), "fabric-5").joint_ohm_mm2 == Approx(rc).epsilon(0.06));
}

TEST_CASE("Open, dim and dark joints are glue that does not conduct; lit says only that it does", "[learn]") {
    const Parts known = make::test_parts();
    TwoStripTest test = strips("copper-5", 0, 0.2);
    for (const JointAnswer answer : {JointAnswer::open, JointAnswer::dim, JointAnswer::dark}) {
        test.answer = answer;
        CHECK(glue_of(tape_of(learn_tape(test, known, kDay), "copper-5")) == Glue::not_at_all);
    }
    test.answer = JointAnswer::lit;
    const TapeType lit = tape_of(learn_tape(test, known, kDay), "copper-5");
    CHECK(lit.adhesive == Adhesive::conductive);
    CHECK(lit.joint_ohm_mm2 == known.tapes.at("copper-5").joint_ohm_mm2);
    CHECK_THAT(lit.source, Contains("no figure"));
    // 25 ohm over 25 mm2 is 625 ohm mm2: as good as open.
    const TapeType bad = tape_of(learn_tape(strips("copper-5", 25.3, 0.3), known, kDay), "copper-5");
    CHECK(bad.adhesive == Adhesive::non_conductive);
    // A joint too good to be read counts as half the meter's last digit: 0.05 x 25 mm2.
    const TapeType best = tape_of(learn_tape(strips("copper-5", 0.3, 0.3), known, kDay), "copper-5");
    CHECK(best.joint_ohm_mm2 == Approx(1.25));
}

TEST_CASE("Readings that nobody can have taken are refused in a sentence", "[learn]") {
    const Parts known = make::test_parts();
    CHECK_THAT(learn_tape(strips("copper-5", 0.1, 2.0), known, kDay).problem().sentence(),
               Contains("measure the tips again"));
    CHECK_THAT(learn_tape(strips("copper-5", 1, 9), known, kDay).problem().sentence(), Contains("tips"));
    CHECK_FALSE(learn_tape(strips("copper-5", NAN, 0), known, kDay).ok());
    CHECK_FALSE(learn_tape(strips("string", 1, 0), known, kDay).ok());
    TwoStripTest thin = strips("copper-5", 1, 0);
    thin.overlap_mm = 0.5;
    CHECK_FALSE(learn_tape(thin, known, kDay).ok());
    CHECK_FALSE(learn_foam({0, 4, 0}, kDay).ok());
    CHECK_FALSE(learn_foam({2, 4, 5}, kDay).ok());
    CHECK_FALSE(learn_foam({1, 40, 0}, kDay).ok());
    TouchTest test;
    test.type = "carrier-white";
    CHECK_FALSE(learn_led(test, known, kDay).ok()); // no words for the mark
    test.looks = "line\nbreak";
    CHECK_FALSE(learn_led(test, known, kDay).ok());
    test.looks = "line";
    test.colour = "ultraviolet";
    CHECK_FALSE(learn_led(test, known, kDay).ok());
    test.colour.clear();
    test.forward_V = 1.2; // no white light has that
    CHECK_FALSE(learn_led(test, known, kDay).ok());
}

TEST_CASE("A stack of foam gives the height of its layers", "[learn]") {
    const Outcome<Learnt> learnt = learn_foam({5, 7.2, 5.0}, kDay); // 7.2 / 5 = 1.44, 5.0 / 5 = 1
    REQUIRE(learnt.ok());
    CHECK(learnt.value().id == "foam-1.4");
    CHECK(learnt.value().parts.foams.at("foam-1.4").thickness_mm == Approx(1.44));
    CHECK(learnt.value().parts.foams.at("foam-1.4").squeezed_mm == Approx(1.0));
}

TEST_CASE("A forward voltage moves the light's law onto the point that was read", "[learn]") {
    const Parts known = make::test_parts();
    TouchTest test;
    test.type = "carrier-white";
    test.looks = "green line";
    test.forward_V = 2.75;
    const Outcome<Learnt> learnt = learn_led(test, known, kDay);
    REQUIRE(learnt.ok());
    const LedType& led = learnt.value().parts.leds.at("carrier-white");
    // The law as format version 1 gives it, at 25 C: I = Is (exp((V - I Rs) / (n Vt)) - 1).
    const double amps =
        led.saturation_A * std::expm1((2.75 - 1e-3 * led.series_ohm) / (led.ideality * 0.0256926));
    CHECK(amps == Approx(1e-3).epsilon(1e-3));
}

TEST_CASE("The placing move names the mark once it is learnt, and asks for the test before", "[learn]") {
    const Card card = make::sample_card(); // L1 turned 270 degrees: + to the top
    const Parts known = make::test_parts();
    CHECK_THAT(placing(make_steps(card, known)).sentence, Contains("touch-test"));
    TouchTest test;
    test.type = "carrier-white";
    test.looks = "green line";
    const Parts minus = merged(known, learn_led(test, known, kDay).value().parts);
    CHECK_THAT(placing(make_steps(card, minus)).sentence,
               Contains("green line, its − side, to the bottom") && !Contains("touch-test"));
    test.marked_on_plus = true;
    const Parts plus = merged(known, learn_led(test, known, "2026-05-05T10:00:00Z").value().parts);
    CHECK_THAT(placing(make_steps(card, plus)).sentence, Contains("green line, its + side, to the top"));
    // The newer reading holds, whichever is laid over the other.
    CHECK(merged(minus, plus) == merged(plus, minus));
    CHECK_FALSE(merged(plus, minus).leds.at("carrier-white").mark->negative);
}
