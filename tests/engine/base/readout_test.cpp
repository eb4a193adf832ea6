// Numbers as a maker reads them: one rounding rule, worked by hand.
#include "base/outcome.h"
#include "base/readout.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("Lengths keep at most one decimal", "[base]") {
    CHECK(readout_mm(12.0) == "12 mm");
    CHECK(readout_mm(1.54) == "1.5 mm");
    CHECK(readout_mm(-0.01) == "0 mm");
}

TEST_CASE("Resistance reads as a hand meter shows it", "[base]") {
    CHECK(readout_ohm(0.04) == "0 Ω");
    CHECK(readout_ohm(0.129) == "0.1 Ω");
    CHECK(readout_ohm(9.96) == "10 Ω");
    CHECK(readout_ohm(470.0) == "470 Ω");
    CHECK(readout_ohm(999.6) == "1 kΩ");
    CHECK(readout_ohm(2.2e6) == "2.2 MΩ");
    CHECK(readout_ohm_range(0.1, 0.62) == "0.1–0.6 Ω");
}

TEST_CASE("Currents change to microamperes where milliamperes would read as nothing", "[base]") {
    CHECK(readout_mA(4.21) == "4.2 mA");
    CHECK(readout_mA(11.7) == "12 mA");
    CHECK(readout_mA(0.0035) == "3.5 µA");
    CHECK(readout_mA(0.0) == "0 mA");
}

TEST_CASE("Volts, hours and shares", "[base]") {
    CHECK(readout_volts(2.846) == "2.85 V");
    CHECK(readout_hours(22.4) == "22 h");
    CHECK(readout_hours(0.68) == "about 40 min");
    CHECK(readout_percent(0.684) == "68 %");
}

TEST_CASE("A problem is one line whatever it quotes", "[base]") {
    const Problem problem{"card\nfile.json", "/leds/0", "expected two\tnumbers"};
    CHECK(problem.sentence() == "card file.json: /leds/0: expected two numbers");
}
