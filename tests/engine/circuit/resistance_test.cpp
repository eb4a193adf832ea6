#include "circuit/solve.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

#include <limits>
#include <random>

using namespace lanternleaf;

namespace {

Circuit of_resistors(int nodes, std::vector<ResistorElement> resistors) {
    Circuit circuit;
    circuit.node_count = nodes;
    circuit.resistors = std::move(resistors);
    return circuit;
}

} // namespace

TEST_CASE("Ladders worked by hand", "[circuit]") {
    // Series and parallel: 1 + (2 || (3 + 4)) = 1 + 14/9.
    const Circuit mixed = of_resistors(4, {{0, 1, 1.0}, {1, 2, 2.0}, {1, 3, 3.0}, {3, 2, 4.0}});
    CHECK(resistance_between(mixed, 0, 2) == Approx(1.0 + 14.0 / 9.0).epsilon(1e-14));
    CHECK(resistance_between(mixed, 2, 0) == Approx(1.0 + 14.0 / 9.0).epsilon(1e-14));
    CHECK(resistance_between(mixed, 1, 1) == 0.0);

    // A ladder of unit resistors closed by one: series, rung, series, rung ... Its resistances are ratios of
    // Fibonacci numbers (textbook): 2, 5/3, 13/8, 34/21, towards the golden ratio.
    const double expected[] = {2.0, 5.0 / 3.0, 13.0 / 8.0, 34.0 / 21.0};
    Circuit ladder = of_resistors(2, {{0, 1, 1.0}}); // node 0 is the common rail
    for (int section = 1; section <= 4; ++section) {
        const int last = ladder.node_count - 1;
        ladder.resistors.push_back({last, last + 1, 1.0});
        ++ladder.node_count;
        CHECK(resistance_between(ladder, 0, last + 1) == Approx(expected[section - 1]).epsilon(1e-14));
        ladder.resistors.push_back({last + 1, 0, 1.0});
    }

    // Across the diagonal of a cube of unit resistors: 5/6 (textbook).
    std::vector<ResistorElement> cube;
    for (int corner = 0; corner < 8; ++corner) {
        for (const int bit : {1, 2, 4}) {
            if ((corner & bit) == 0) {
                cube.push_back({corner, corner | bit, 1.0});
            }
        }
    }
    CHECK(resistance_between(of_resistors(8, cube), 0, 7) == Approx(5.0 / 6.0).epsilon(1e-14));

    // A balanced bridge: the middle resistor counts for nothing.
    for (const double middle : {1e-6, 1.0, 1e9}) {
        const Circuit bridge =
            of_resistors(4, {{0, 1, 1.0}, {0, 2, 2.0}, {1, 3, 3.0}, {2, 3, 6.0}, {1, 2, middle}});
        CHECK(resistance_between(bridge, 0, 3) == Approx(4.0 * 8.0 / 12.0).epsilon(1e-13));
    }
}

TEST_CASE("What nothing joins is infinitely far, whatever LEDs and cells lie between", "[circuit]") {
    Circuit circuit = make::with_cell(5, 3.0, 15.0);
    circuit.diodes.push_back(make::red(1, 2));
    circuit.resistors.push_back({2, 3, 4.7});
    circuit.resistors.push_back({3, 4, std::numeric_limits<double>::infinity()});
    CHECK(resistance_between(circuit, 0, 1) == std::numeric_limits<double>::infinity());
    CHECK(resistance_between(circuit, 1, 2) == std::numeric_limits<double>::infinity());
    CHECK(resistance_between(circuit, 3, 4) == std::numeric_limits<double>::infinity());
    CHECK(resistance_between(circuit, 2, 3) == Approx(4.7).epsilon(1e-15));
}

TEST_CASE("A dead joint takes nothing from what lies beside it", "[circuit]") {
    const Circuit circuit = of_resistors(4, {{0, 1, 1e-6}, {1, 2, 1e7}, {2, 3, 0.0}});
    CHECK(resistance_between(circuit, 0, 3) == Approx(1e7 + 2e-6).epsilon(1e-15));
    CHECK(resistance_between(circuit, 0, 1) == Approx(1e-6).epsilon(1e-15));
    CHECK(resistance_between(circuit, 2, 3) == Approx(1e-6).epsilon(1e-15));
}

TEST_CASE("More metal never makes more resistance", "[circuit]") {
    // Rayleigh's monotonicity law (Lord Rayleigh, Theory of Sound, section 305; P. G. Doyle and J. L. Snell,
    // Random Walks and Electric Networks, 1984).
    std::mt19937 random(11);
    std::uniform_real_distribution<double> ohm(0.01, 10.0);
    for (int round = 0; round < 50; ++round) {
        Circuit circuit = of_resistors(20, {});
        std::uniform_int_distribution<int> any(0, 19);
        for (int i = 1; i < 20; ++i) {
            circuit.resistors.push_back(
                {i, std::uniform_int_distribution<int>(0, i - 1)(random), ohm(random)});
        }
        double before = resistance_between(circuit, 0, 19);
        for (int more = 0; more < 10; ++more) {
            circuit.resistors.push_back({any(random), any(random), ohm(random)});
            const double after = resistance_between(circuit, 0, 19);
            REQUIRE(after <= before * (1.0 + 1e-13));
            before = after;
        }
    }
}
