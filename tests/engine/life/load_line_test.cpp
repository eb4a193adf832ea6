// The load line against the solver it was made with, and the discharge against itself at a finer step.
#include "life/discharge.h"
#include "life/load_line.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lanternleaf;

namespace {

struct Made {
    Card card;
    Parts parts;
    Circuit circuit;
};

Made made(Card card) {
    Made m{std::move(card), make::test_parts(), {}};
    m.circuit = build_circuit(m.card, m.parts, find_conductors(m.card, m.parts), fresh_cell(m.card, m.parts));
    return m;
}

Card mixed_card() {
    Card card = make::row_card(6);
    card.leds[1].type = "carrier-red";
    card.leds[3].type = "carrier-green";
    card.leds[5].turn_deg += 180; // the wrong way round
    return card;
}

} // namespace

TEST_CASE("A load line gives what the solver gives", "[life][line]") {
    for (const Card& card : {make::row_card(1), make::row_card(12), mixed_card()}) {
        const Made m = made(card);
        for (const Spread spread : {Spread::least, Spread::typical, Spread::most}) {
            const LedCondition condition{5.0, spread, -1};
            PreparedSolver solver(m.circuit);
            const LoadLine line(m.circuit, m.card, m.parts, condition, 3.2, solver);
            REQUIRE(line.ok());
            Circuit circuit = m.circuit;
            apply_condition(circuit, m.card, m.parts, condition);
            for (double open_V = 1.6; open_V < 3.15; open_V += 0.0437) {
                for (const double ohm : {14.3, 113.0, 2000.0}) {
                    circuit.cells.front().open_V = open_V;
                    circuit.cells.front().ohm = ohm;
                    const Solution solution = solve_operating_point(circuit);
                    REQUIRE(solution.ok());
                    const LoadLine::Point point = line.meet({open_V, ohm});
                    CHECK(point.cell_V == Approx(open_V - ohm * solution.cell_A[0]).margin(2e-5));
                    for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
                        const double mA = 1e3 * solution.diode_A[i];
                        CHECK(line.led_mA(circuit.diodes[i].led, point.cell_V) ==
                              Approx(mA).epsilon(1e-3).margin(1e-6));
                    }
                }
            }
        }
    }
}

TEST_CASE("A cell without voltage gives nothing", "[life][line]") {
    const Made m = made(make::row_card(2));
    PreparedSolver solver(m.circuit);
    const LoadLine line(m.circuit, m.card, m.parts, {}, 3.2, solver);
    CHECK(line.meet({0.0, 100.0}).cell_mA == Approx(0.0).margin(1e-9));
    CHECK(line.meet({0.5, 100.0}).cell_V == Approx(0.5).margin(1e-6));
}

TEST_CASE("A discharge is the same on the line, with the solver, and stepped finer", "[life][discharge]") {
    const Made m = made(make::row_card(12));
    PreparedSolver solver(m.circuit);
    const LoadLine line(m.circuit, m.card, m.parts, {}, 3.2, solver);
    for (const Use use : {Use::press, Use::left_on}) {
        const CellModel cell(m.parts.cells.at("CR2032"), 1, 1, 23);
        DischargeOptions options;
        options.use = use;
        const Discharge table = discharge(
            cell, [&](const CellState& s) { return line.meet(s).cell_mA; }, options);
        PreparedSolver other(m.circuit);
        const Discharge solved = discharge(cell, solved_load(m.circuit, other), options);
        options.tolerance_mAh = 1e-4;
        const Discharge fine = discharge(cell, solved_load(m.circuit, other), options);
        CHECK(table.steps.size() < 60);
        CHECK(fine.steps.size() > table.steps.size());
        for (const double hours : {0.1, 0.5, 2.0, 10.0, 30.0, 60.0}) {
            INFO(hours);
            CHECK(table.drawn_mAh(hours) == Approx(solved.drawn_mAh(hours)).epsilon(1e-3));
            CHECK(table.drawn_mAh(hours) == Approx(fine.drawn_mAh(hours)).epsilon(0.01).margin(0.05));
        }
        for (std::size_t i = 1; i < table.steps.size(); ++i) {
            CHECK(table.steps[i].hours > table.steps[i - 1].hours);
            CHECK(table.steps[i].drawn_mAh >= table.steps[i - 1].drawn_mAh);
        }
    }
}

TEST_CASE("A discharge with a known answer", "[life][discharge]") {
    // A constant 2 mA: the charge is 2 mA times the hours, exactly.
    const CellModel cell(make::test_parts().cells.at("CR2032"), 1, 0, 23);
    DischargeOptions options;
    options.most_h = 50.0;
    const Discharge run = discharge(
        cell, [](const CellState&) { return 2.0; }, options);
    CHECK(run.steps.back().hours == Approx(50.0));
    CHECK(run.drawn_mAh(50.0) == Approx(100.0).epsilon(1e-12));
    CHECK(run.drawn_mAh(12.3) == Approx(24.6).epsilon(1e-12));
    // Nothing drawn, nothing to step.
    CHECK(discharge(
              cell, [](const CellState&) { return 0.0; }, options)
              .steps.size() == 1);
    CHECK(settled_after(Use::press, 100.0) == 0.0);
    CHECK(settled_after(Use::left_on, kSettling_h) == Approx(1.0 - std::exp(-1.0)));
}
