#include "guide/verdict.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace lanternleaf;

namespace {

Check ohm_check() {
    Check check;
    check.id = "flap-to-L3+";
    check.kind = CheckKind::resistance;
    check.low = 0.1;
    check.high = 0.6;
    check.expect_text = "0.1–0.6 Ω";
    return check;
}

Reading value(double v) {
    Reading reading;
    reading.check = "flap-to-L3+";
    reading.value = v;
    return reading;
}

Reading meter_open() {
    Reading reading;
    reading.open = true;
    return reading;
}

Reading answer(bool yes) {
    Reading reading;
    reading.yes = yes;
    reading.meter = false;
    return reading;
}

} // namespace

TEST_CASE("a resistance is judged by its range and half a digit", "[guide]") {
    const Check check = ohm_check();
    const ReadingVerdict good = judge_reading(check, value(0.3));
    CHECK(good.fit == ReadingFit::as_expected);
    CHECK(good.text == "0.3 Ω, expected 0.1–0.6 Ω");
    CHECK(good.check == "flap-to-L3+");
    CHECK(judge_reading(check, value(0.6)).fit == ReadingFit::as_expected);
    CHECK(judge_reading(check, value(0.7)).fit == ReadingFit::off);
    CHECK(judge_reading(check, value(0.0)).fit == ReadingFit::off);
    const ReadingVerdict open = judge_reading(check, meter_open());
    CHECK(open.fit == ReadingFit::off);
    CHECK(open.text == "OL, expected 0.1–0.6 Ω");
    CHECK(judge_reading(check, value(-1)).fit == ReadingFit::unreadable);
    CHECK(judge_reading(check, value(std::numeric_limits<double>::quiet_NaN())).fit ==
          ReadingFit::unreadable);
    CHECK(judge_reading(check, Reading{}).fit == ReadingFit::unreadable);
    CHECK(judge_reading(check, answer(true)).fit == ReadingFit::as_expected);
    CHECK(judge_reading(check, answer(false)).fit == ReadingFit::off);
}

TEST_CASE("no path means OL or more than a megohm", "[guide]") {
    Check check = ohm_check();
    check.kind = CheckKind::open;
    check.expect_text = "OL (no path)";
    CHECK(judge_reading(check, meter_open()).fit == ReadingFit::as_expected);
    CHECK(judge_reading(check, value(2e6)).fit == ReadingFit::as_expected);
    CHECK(judge_reading(check, value(50e3)).fit == ReadingFit::off); // damp glue (common practice)
    const ReadingVerdict joined = judge_reading(check, value(0.4));
    CHECK(joined.fit == ReadingFit::off);
    CHECK(joined.text == "0.4 Ω, expected OL (no path)");
    CHECK(judge_reading(check, Reading{}).fit == ReadingFit::unreadable);
}

TEST_CASE("volts and heights are read in their own units", "[guide]") {
    Check check = ohm_check();
    check.kind = CheckKind::volts;
    check.low = 2.7;
    check.high = 3.05;
    check.expect_text = "2.7–3.05 V";
    CHECK(judge_reading(check, value(2.85)).text == "2.85 V, expected 2.7–3.05 V");
    CHECK(judge_reading(check, value(2.5)).fit == ReadingFit::off);
    check.kind = CheckKind::height;
    check.low = 3.8;
    check.high = 5.3;
    check.expect_text = "3.8–5.3 mm";
    CHECK(judge_reading(check, value(4.5)).text == "4.5 mm, expected 3.8–5.3 mm");
    CHECK(judge_reading(check, value(6)).fit == ReadingFit::off);
}

TEST_CASE("lights are compared one by one", "[guide]") {
    Check check;
    check.id = "lights";
    check.kind = CheckKind::lights;
    check.expect_text = "1 of 2 lit, 1 dim";
    check.lights = {{"L1", "lit", 1.0}, {"L2", "dim", 0.1}};
    Reading reading;
    reading.seen = {{"L1", "lit", 0}, {"L2", "dim", 0}};
    CHECK(judge_reading(check, reading).fit == ReadingFit::as_expected);
    reading.seen[1].state = "lit"; // brighter than expected is no fault
    CHECK(judge_reading(check, reading).fit == ReadingFit::as_expected);
    reading.seen[0].state = "dim";
    CHECK(judge_reading(check, reading).fit == ReadingFit::off);
    reading.seen = {{"L1", "lit", 0}};
    CHECK(judge_reading(check, reading).fit == ReadingFit::unreadable);
    CHECK(judge_reading(check, Reading{}).fit == ReadingFit::unreadable);
}

TEST_CASE("something looked at is yes or no", "[guide]") {
    Check check;
    check.kind = CheckKind::look;
    check.expect_text = "it stays put";
    CHECK(judge_reading(check, answer(true)).fit == ReadingFit::as_expected);
    CHECK(judge_reading(check, answer(false)).fit == ReadingFit::off);
    CHECK(judge_reading(check, Reading{}).fit == ReadingFit::unreadable);
}
