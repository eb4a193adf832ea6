// How a card's lights fade. Parts here are the test ones with the spread, temperature and phases of the
// shipped file's kind.
#include "life/life.h"

#include "base/tolerance.h"
#include "circuit/lights.h"
#include "support/make_card.h"
#include "support/ngspice_run.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lanternleaf;

namespace {

constexpr RunChoice kPressed{Use::press, false, {}};
constexpr RunChoice kLeftOn{Use::left_on, false, {}};

Parts full_parts() {
    Parts parts = make::test_parts();
    for (auto& [id, led] : parts.leds) {
        const bool red = led.colour == "red";
        led.forward = red ? ForwardSpread{20, 1.8, 2.1, 2.4, {}} : ForwardSpread{20, 2.8, 3.2, 3.6, {}};
        led.forward_mV_per_K = red ? -2.0 : -2.1;
    }
    const LedType& red = parts.leds["carrier-red"];
    const LedType& green = parts.leds["carrier-green"];
    LedType cycle = green;
    cycle.colour = "cycle";
    for (const LedType* chip : {&red, &green}) {
        cycle.phases.push_back({chip->colour,
                                chip->saturation_A,
                                chip->ideality,
                                chip->series_ohm + 20.0,
                                chip->dominant_nm,
                                chip->mcd,
                                {}});
    }
    cycle.driver_least_V = 2.0;
    parts.leds["carrier-cycle"] = cycle;
    return parts;
}

Life life_of(const Card& card, const Parts& parts, const LifeOptions& options = {}) {
    return live(card, parts, find_conductors(card, parts), options);
}

Life life_of(const Card& card, const LifeOptions& options = {}) {
    return life_of(card, full_parts(), options);
}

} // namespace

TEST_CASE("At the first moment life says what a press on a fresh cell says", "[life]") {
    const Card card = make::row_card(3);
    const Parts parts = full_parts();
    LifeOptions options;
    options.celsius = 25.0; // where the LEDs' figures hold
    const Life life = life_of(card, parts, options);
    REQUIRE(life.solved);
    LifeMoment moment;
    moment_at(life, life.typical(Use::press, 0), card, parts, 0.0, moment);
    const Conductors conductors = find_conductors(card, parts);
    const Lighting fresh = light_up(card, parts, conductors, fresh_cell(card, parts));
    CHECK(moment.cell_mA == Approx(fresh.cell_mA).epsilon(0.03)); // the cell is 2 C warmer than FDK's
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(moment.lights[i].mA == Approx(fresh.lights[i].current_mA).epsilon(0.03));
        CHECK(moment.lights[i].brightness == Approx(fresh.lights[i].brightness).epsilon(0.03));
    }
    CHECK(moment.lights[0].seen == Approx(1.0).epsilon(0.01));
}

TEST_CASE("Lights fade, the brighter mark first, and more lights fade sooner", "[life]") {
    double before_h = 1e9;
    for (const int lights : {1, 3, 12}) {
        const Life life = life_of(make::row_card(lights));
        for (const LifeRun& run : life.runs) {
            for (const MarkHours& marks : run.marks) {
                CHECK(marks[0] <= marks[1]);
                CHECK(marks[1] <= marks[2]);
            }
        }
        const HourRange dim = range_of(life, kPressed, Mark::plainly_dim);
        CHECK(dim.low_h > 0.0);
        CHECK(dim.low_h < dim.high_h); // two makers, a range
        CHECK(dim.high_h < before_h);
        before_h = dim.low_h;
        const HourRange band = range_of(life, {Use::press, true, {}}, Mark::plainly_dim);
        CHECK(band.low_h <= dim.low_h);
        CHECK(band.high_h >= dim.high_h);
        // Through the slower, higher resistance a light left on is dimmer after an hour than one pressed.
        LifeMoment pressed;
        LifeMoment left_on;
        const Card card = make::row_card(lights);
        const Parts parts = full_parts();
        moment_at(life, life.typical(Use::press, 0), card, parts, 1.0, pressed);
        moment_at(life, life.typical(Use::left_on, 0), card, parts, 1.0, left_on);
        CHECK(left_on.lights[0].mA < 0.7 * pressed.lights[0].mA);
    }
}

TEST_CASE("A mark is where it says it is", "[life]") {
    const Card card = make::row_card(2);
    const Parts parts = full_parts();
    const Life life = life_of(card, parts);
    LifeMoment fresh;
    moment_at(life, life.typical(Use::press, 0), card, parts, 0.0, fresh);
    for (const Use use : {Use::press, Use::left_on}) {
        const LifeRun& run = life.typical(use, 1);
        LifeMoment moment;
        moment_at(life, run, card, parts, run.marks[0][1], moment);
        // Half as bright to the eye: 0.122 of the intensity (Stevens, exponent 0.33: Bauer 2009).
        CHECK(moment.lights[0].mcd / fresh.lights[0].mcd == Approx(0.1224).epsilon(0.02));
        CHECK(seen_ratio(moment.lights[0].mcd / fresh.lights[0].mcd) == Approx(0.5).epsilon(0.01));
        moment_at(life, run, card, parts, run.marks[0][2], moment);
        CHECK(moment.lights[0].mA == Approx(tolerance::kDim_mA).epsilon(0.02));
        moment_at(life, run, card, parts, run.marks[0][0], moment);
        CHECK(moment.lights[0].mcd / fresh.lights[0].mcd == Approx(tolerance::kPlainlyDimmer).epsilon(0.02));
    }
}

TEST_CASE("What comes out of the cell is what is in it", "[life]") {
    // Red lights draw until the cell is empty: the charge drawn is the capacity at their current, 205 mAh
    // (FDK) and 164 (Panasonic) through 1 kohm, to 240 and 220 through 15 kohm.
    const Life life = life_of(make::row_card(1, "carrier-red"));
    for (const int maker : {0, 1}) {
        const double mAh = life.typical(Use::left_on, maker).discharge.steps.back().drawn_mAh;
        CHECK(mAh > 160.0);
        CHECK(mAh < 260.0);
    }
    CHECK(presses_of({}, 1.0) == Approx(720.0)); // an hour in presses of 5 s
}

TEST_CASE("Red beside blue: the starved light is dark from the start", "[life]") {
    Card card = make::row_card(2, "carrier-green");
    card.leds[0].type = "carrier-red";
    const Life life = life_of(card);
    CHECK(dark_from_start(life) == std::vector<int>{1});
    CHECK(range_of(life, kPressed, Mark::plainly_dim, 1).high_h == 0.0);
    CHECK(range_of(life, kPressed, Mark::plainly_dim).low_h > 0.0); // of those that shine
}

TEST_CASE("Storing and cold shorten a card's life", "[life]") {
    LifeOptions stored;
    stored.stored_years = 10.0;
    LifeOptions cold;
    cold.celsius = -5.0;
    const HourRange now = range_of(life_of(make::row_card(2)), kLeftOn, Mark::plainly_dim);
    const Life later = life_of(make::row_card(2), stored);
    CHECK(later.stored_loss == Approx(1.0 - std::pow(0.99, 10.0)));
    CHECK(range_of(later, kLeftOn, Mark::plainly_dim).low_h < now.low_h);
    LifeMoment warm_moment;
    LifeMoment cold_moment;
    const Card card = make::row_card(2);
    const Parts parts = full_parts();
    const Life warm_life = life_of(card, parts);
    const Life cold_life = life_of(card, parts, cold);
    moment_at(warm_life, warm_life.typical(Use::press, 0), card, parts, 0.0, warm_moment);
    moment_at(cold_life, cold_life.typical(Use::press, 0), card, parts, 0.0, cold_moment);
    CHECK(cold_moment.lights[0].mA < 0.8 * warm_moment.lights[0].mA);
}

TEST_CASE("Temperature and spread shift the forward voltage as the sheets say", "[life][leds]") {
    const Card card = make::row_card(1);
    Parts parts = full_parts();
    parts.leds["carrier-white"].forward = ForwardSpread{20, 2.7, 3.05, 3.4, {}};
    const Circuit typical = build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts));
    const auto volts = [&](const LedCondition& condition) {
        Circuit circuit = typical;
        apply_condition(circuit, card, parts, condition);
        return diode_voltage_V(circuit.diodes[0], 0.020);
    };
    // OSRAM LW TWTG: +57 mV from 25 down to 0 C at 20 mA; 2.7 / 3.05 / 3.4 V at 20 mA.
    CHECK(volts({0.0, Spread::typical, -1}) - volts({25.0, Spread::typical, -1}) ==
          Approx(0.057).margin(0.010));
    CHECK(volts({25.0, Spread::least, -1}) == Approx(2.7).margin(1e-6));
    CHECK(volts({25.0, Spread::most, -1}) == Approx(3.4).margin(1e-6));
    CHECK(volts({25.0, Spread::typical, -1}) == Approx(3.05).margin(0.02));
}

TEST_CASE("A self-cycling light has a life in each of its colours", "[life][phases]") {
    Card card = make::row_card(2);
    card.leds[0].type = "carrier-cycle";
    const Parts parts = full_parts();
    const Life life = life_of(card, parts);
    REQUIRE(life.phases == 2);
    // Red takes more current than green; the white light beside it suffers for that.
    LifeMoment red;
    LifeMoment green;
    for (const LifeRun& run : life.runs) {
        const int phase = life.lines[static_cast<std::size_t>(run.line)].condition().phase;
        if (run.use == Use::press && run.maker == 0 && phase >= 0) {
            moment_at(life, run, card, parts, 0.0, phase == 0 ? red : green);
        }
    }
    CHECK(red.cell_mA > 1.5 * green.cell_mA);
    CHECK(red.lights[1].mA < green.lights[1].mA);
    CHECK(range_of(life, {Use::press, false, 0}, Mark::plainly_dim, 1).high_h <
          range_of(life, {Use::press, false, 1}, Mark::plainly_dim, 1).low_h);
    // Below its least voltage the driver stops: no current in either colour.
    for (const LoadLine& line : life.lines) {
        if (line.condition().phase >= 0) {
            CHECK(line.led_mA(0, 1.95) == Approx(0.0).margin(1e-9));
        }
    }
}

TEST_CASE("Phases and mixed colours, against ngspice", "[life][phases][ngspice]") {
    if (!make::ngspice_installed()) {
        WARN("ngspice is not installed: skipped");
        return;
    }
    Card card = make::row_card(5);
    card.leds[0].type = "carrier-cycle";
    card.leds[2].type = "carrier-red";
    card.leds[4].type = "carrier-green";
    const Parts parts = full_parts();
    const Circuit built = build_circuit(card, parts, find_conductors(card, parts), fresh_cell(card, parts));
    PreparedSolver solver(built);
    const CellState worn = CellModel(parts.cells.at("CR2032"), 1, 1, 25).at(90.0, 1.0);
    for (const int phase : {-1, 0, 1}) {
        for (const Spread spread : {Spread::least, Spread::typical, Spread::most}) {
            const LedCondition condition{25.0, spread, phase};
            const LoadLine line(built, card, parts, condition, 3.2, solver);
            Circuit circuit = built;
            apply_condition(circuit, card, parts, condition);
            circuit.cells[0].open_V = worn.open_V;
            circuit.cells[0].ohm = worn.ohm;
            const std::vector<double> amps = make::ngspice_diodes_A(circuit, "phases");
            REQUIRE(amps.size() == 5);
            const LoadLine::Point point = line.meet(worn);
            if (line.led_V(0, point.cell_V) < 2.0 && phase >= 0) {
                continue; // the driver has stopped, which the deck does not know
            }
            for (std::size_t i = 0; i < amps.size(); ++i) {
                CHECK(line.led_mA(circuit.diodes[i].led, point.cell_V) ==
                      Approx(1e3 * amps[i]).epsilon(2e-3).margin(1e-6));
            }
        }
    }
}

TEST_CASE("Two cells on a turned light pass its reverse limit", "[life]") {
    Card card = make::row_card(3);
    card.leds[1].turn_deg += 180;
    Life life = life_of(card);
    REQUIRE(life.reversed.size() == 1);
    CHECK(life.reversed[0].led == 1);
    CHECK_FALSE(life.reversed[0].beyond()); // 3 V against 5 V
    card.cell.count = 2;
    card.leds.resize(2);
    card.leds[0].turn_deg += 180; // no light left to pull the voltage down
    life = life_of(card);
    REQUIRE(life.reversed.size() == 2);
    // Avago, Lite-On and others: 5 V; two fresh cells stand at 6.2 V.
    CHECK(life.reversed[0].volts == Approx(6.2).margin(0.05));
    CHECK(life.reversed[0].beyond());
}

TEST_CASE("A shorted card and a card without lights have no life to speak of", "[life]") {
    Card shorted = make::row_card(1);
    shorted.laid.erase(shorted.laid.begin() + 1); // the patch at the crossing
    CHECK(life_of(shorted).shorted);
    CHECK(range_of(life_of(shorted), kPressed, Mark::dark).high_h == 0.0);
    const Life none = life_of(make::bare_card());
    CHECK_FALSE(none.shorted);
    CHECK(range_of(none, kPressed, Mark::dark).high_h == 0.0);
}
