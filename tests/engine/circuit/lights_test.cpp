#include "circuit/lights.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace lanternleaf;

TEST_CASE("States follow the card file's limits", "[circuit]") {
    CHECK(state_of(1.0) == LightState::lit);
    CHECK(state_of(0.9999) == LightState::dim);
    CHECK(state_of(0.05) == LightState::dim);
    CHECK(state_of(0.0499) == LightState::dark);
    CHECK(state_of(-3.0) == LightState::dark);
    CHECK(std::string(name_of(LightState::lit)) == "lit");
    CHECK(std::string(name_of(LightState::dim)) == "dim");
    CHECK(std::string(name_of(LightState::dark)) == "dark");
}

TEST_CASE("Intensity runs through the table's points", "[circuit]") {
    LedType type;
    type.mcd = {{1, 60}, {5, 300}, {20, 1000}};
    for (const auto& [mA, mcd] : type.mcd) {
        CHECK(intensity_mcd(type, mA) == Approx(mcd));
    }
    CHECK(intensity_mcd(type, 2.0) == Approx(120.0));                      // 60 to 300 over 1 to 5: slope 1
    CHECK(intensity_mcd(type, 10.0) == Approx(std::sqrt(300.0 * 1000.0))); // halfway by logarithm
    CHECK(intensity_mcd(type, 0.1) == Approx(6.0));
    CHECK(intensity_mcd(type, 50.0) == Approx(1000.0));
    CHECK(intensity_mcd(type, 0.0) == 0.0);
    CHECK(intensity_mcd(type, -1.0) == 0.0);
    // OSRAM LW TWTG (data sheet v1.2, 2018): 10 mA gives 0.545 of what 20 mA gives; the table between 5 and
    // 20 mA alone must come within 2 %.
    LedType white;
    white.mcd = {{2, 0.120}, {5, 0.289}, {20, 0.998}};
    CHECK(intensity_mcd(white, 10.0) / intensity_mcd(white, 20.0) == Approx(0.545).margin(0.02));
    CHECK(intensity_mcd({}, 4.0) / intensity_mcd({}, 2.0) == Approx(2.0)); // no table: proportional
    LedType from_zero;
    from_zero.mcd = {{0, 0}, {10, 100}};
    CHECK(intensity_mcd(from_zero, 5.0) == Approx(50.0));
}

TEST_CASE("A row of LEDs is read off", "[circuit]") {
    Card card = make::row_card(3);
    Parts parts = make::test_parts();
    card.leds[1].turn_deg = 90; // turned round
    card.leds[2].type = "carrier-red";
    const Conductors conductors = find_conductors(card, parts);
    const Lighting lighting = light_up(card, parts, conductors, fresh_cell(card, parts));
    REQUIRE(lighting.exit == SolveExit::converged);
    REQUIRE(lighting.lights.size() == 3);
    const auto& [white, turned, red] = std::tie(lighting.lights[0], lighting.lights[1], lighting.lights[2]);
    // The red one holds the cell down to where white hardly conducts.
    CHECK(red.state == LightState::lit);
    CHECK(white.state == LightState::dark);
    CHECK(white.current_mA > 0.0);
    CHECK(white.mcd == 0.0);
    CHECK(turned.state == LightState::dark);
    CHECK(turned.current_mA <= 0.0);
    CHECK(turned.volts < -1.5);
    CHECK(turned.brightness == 0.0);
    CHECK(red.volts == Approx(1e-3 * red.current_mA * 5.036 +
                              diode_voltage_V({0, 0, 1.33e-18, 2.0465, 0.0, -1}, 1e-3 * red.current_mA)));
    CHECK(red.mcd == Approx(intensity_mcd(parts.leds["carrier-red"], red.current_mA)));
    CHECK(red.brightness == Approx(red.mcd / 1625.0));
    CHECK(lighting.cell_mA == Approx(white.current_mA + turned.current_mA + red.current_mA).epsilon(1e-9));
    CHECK(lighting.cell_V == Approx(3.096 - 1e-3 * lighting.cell_mA * 14.3).epsilon(1e-9));
}

TEST_CASE("Nothing is claimed of a circuit that was not solved", "[circuit]") {
    const Card card = make::row_card(2);
    const Parts parts = make::test_parts();
    const Circuit circuit = build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts));
    Solution unsolved;
    unsolved.exit = SolveExit::singular;
    const Lighting lighting = read_lights(card, parts, circuit, unsolved);
    CHECK(lighting.exit == SolveExit::singular);
    REQUIRE(lighting.lights.size() == 2);
    CHECK(lighting.lights[1].led == 1);
    CHECK(lighting.lights[1].state == LightState::dark);
    CHECK(lighting.cell_mA == 0.0);
}
