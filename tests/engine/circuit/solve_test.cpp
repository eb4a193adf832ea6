#include "circuit/newton.h"
#include "circuit/solve.h"
#include "engine/circuit/dense_newton.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace lanternleaf;

namespace {

/// Nets of tape, joints, resistors and LEDs either way round, on one or two cells; every node on a tree of
/// resistors and LEDs from node 0.
Circuit random_circuit(unsigned seed, int nodes) {
    std::mt19937 random(seed);
    const auto any = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    const auto power = [&](double low, double high) {
        return std::pow(10.0, std::uniform_real_distribution<double>(low, high)(random));
    };
    Circuit circuit = make::with_cell(nodes, any(1, 2) * 3.0, power(0.5, 2.0));
    DiodeElement (*const kinds[])(int, int) = {make::red, make::yellow_green, make::blue, make::white};
    const auto add = [&](int a, int b) {
        if (any(0, 2) == 0) {
            circuit.diodes.push_back(kinds[any(0, 3)](any(0, 3) == 0 ? b : a, 0));
            circuit.diodes.back().cathode = circuit.diodes.back().anode == a ? b : a;
        } else {
            circuit.resistors.push_back({a, b, power(-3.0, 3.0)});
        }
    };
    for (int i = 2; i < nodes; ++i) {
        add(any(0, i - 1), i);
    }
    for (int i = 0; i < nodes; ++i) {
        const int a = any(0, nodes - 1);
        const int b = any(0, nodes - 1);
        if (a != b) {
            add(a, b);
        }
    }
    return circuit;
}

/// Largest imbalance of a solution, every current worked out afresh, less what rounding the voltages
/// explains.
double imbalance_A(const Circuit& circuit, const Solution& solution) {
    std::vector<long double> into(static_cast<std::size_t>(circuit.node_count), 0.0L);
    const auto volts = [&](int n) {
        return static_cast<long double>(solution.node_V[static_cast<std::size_t>(n)]);
    };
    double rounding_A = 0.0;
    const auto carry = [&](int from, int to, long double amps, double siemens) {
        into[static_cast<std::size_t>(from)] -= amps;
        into[static_cast<std::size_t>(to)] += amps;
        rounding_A += 1e-15 * siemens * 6.0;
    };
    for (const ResistorElement& r : circuit.resistors) {
        carry(r.a, r.b, (volts(r.a) - volts(r.b)) / r.ohm, 1.0 / r.ohm);
    }
    for (const CellElement& c : circuit.cells) {
        carry(c.minus, c.plus, (c.open_V - (volts(c.plus) - volts(c.minus))) / c.ohm, 1.0 / c.ohm);
    }
    for (const DiodeElement& d : circuit.diodes) {
        const DiodePoint p =
            at_voltage(diode_law(d, kThermal_V), static_cast<double>(volts(d.anode) - volts(d.cathode)));
        carry(d.anode, d.cathode, p.amps, p.siemens);
    }
    long double worst = 0.0L;
    for (const long double amps : into) {
        worst = std::max(worst, std::fabs(amps));
    }
    return std::fmax(static_cast<double>(worst) - rounding_A, 0.0);
}

} // namespace

TEST_CASE("Random networks balance and agree with a dense Newton", "[circuit]") {
    int compared = 0;
    for (unsigned seed = 0; seed < 120; ++seed) {
        INFO("seed " << seed);
        const Circuit circuit = random_circuit(seed, 3 + static_cast<int>(seed % 11));
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        REQUIRE(imbalance_A(circuit, solution) < 1e-14);
        const DenseAnswer dense = dense_newton(circuit);
        if (!dense.converged) {
            continue;
        }
        ++compared;
        for (std::size_t i = 0; i < solution.diode_A.size(); ++i) {
            REQUIRE(solution.diode_A[i] == Approx(dense.diode_A[i]).epsilon(1e-9).margin(1e-16));
        }
    }
    CHECK(compared >= 110); // the slow one gives up on few
}

TEST_CASE("Large random networks balance", "[circuit]") {
    for (unsigned seed = 0; seed < 40; ++seed) {
        INFO("seed " << seed);
        const Circuit circuit = random_circuit(1000 + seed, 20 + 10 * static_cast<int>(seed));
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        CHECK(imbalance_A(circuit, solution) < 1e-14);
        CHECK(solution.iterations <= 25);
    }
}

TEST_CASE("Any start leads to the same answer", "[circuit]") {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> exponent(-3.0, 4.0);
    for (unsigned seed = 0; seed < 60; ++seed) {
        const Circuit circuit = random_circuit(seed, 12);
        const Solution cold = solve_operating_point(circuit);
        REQUIRE(cold.ok());
        for (int start = 0; start < 5; ++start) {
            INFO("seed " << seed << ", start " << start);
            SolveOptions options;
            for (int n = 0; n < circuit.node_count; ++n) {
                options.start_V.push_back((random() % 2 == 0 ? 1.0 : -1.0) *
                                          std::pow(10.0, exponent(random)));
            }
            const Solution wild = solve_operating_point(circuit, options);
            REQUIRE(wild.ok());
            // The sure iteration alone, without the quick one before it.
            Newton newton(circuit);
            newton.load(circuit, kThermal_V);
            int iterations = 0;
            REQUIRE(newton.descend(circuit, {}, options.start_V, 1000, iterations) == SolveExit::converged);
            Solution sure;
            newton.read_off(circuit, sure);
            for (std::size_t i = 0; i < cold.diode_A.size(); ++i) {
                REQUIRE(wild.diode_A[i] == Approx(cold.diode_A[i]).epsilon(1e-9).margin(1e-16));
                REQUIRE(sure.diode_A[i] == Approx(cold.diode_A[i]).epsilon(1e-9).margin(1e-16));
            }
        }
    }
}

TEST_CASE("LEDs without series resistance converge too", "[circuit]") {
    // Ideal diodes on a stiff source: the hardest curve for a full Newton step.
    for (const double ohm : {1e-3, 1.0, 100.0}) {
        Circuit circuit = make::with_cell(4, 6.0, ohm);
        for (int i = 0; i < 3; ++i) {
            circuit.diodes.push_back({i == 0 ? 1 : i + 1, i == 2 ? 0 : i + 2, 1e-14, 1.0, 0.0, -1});
        }
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        // One loop: 6 V = I ohm + 3 n Vt ln(1 + I/Is).
        const double amps = solution.diode_A[0];
        CHECK(amps * ohm + 3.0 * kThermal_V * std::log1p(amps / 1e-14) == Approx(6.0).epsilon(1e-12));
        Newton newton(circuit);
        newton.load(circuit, kThermal_V);
        int iterations = 0;
        CHECK(newton.descend(circuit, {}, std::vector<double>{0.0, 90.0, -90.0, 1e4}, 1000, iterations) ==
              SolveExit::converged);
    }
}

TEST_CASE("Nets that hang free do no harm", "[circuit]") {
    Circuit circuit = make::with_cell(9, 3.0, 15.0);
    circuit.diodes.push_back(make::white(1, 0));
    circuit.resistors.push_back({2, 3, 0.1});           // a strip nobody reaches
    circuit.diodes.push_back(make::red(4, 5));          // an LED on nothing
    circuit.diodes.push_back(make::red(0, 6));          // reversed, in series with
    circuit.diodes.push_back(make::yellow_green(6, 1)); // another that is reversed
    circuit.resistors.push_back({7, 1, 5.0});           // a tail
    const Solution solution = solve_operating_point(circuit);
    REQUIRE(solution.ok());
    CHECK(1e3 * solution.diode_A[0] == Approx(8.0174646518053).epsilon(1e-9)); // as alone: case 6
    CHECK(solution.diode_A[1] == Approx(0.0).margin(1e-12));
    // What two reversed LEDs in series let through is the smaller saturation current, 4.4e-25 A.
    CHECK(std::fabs(solution.diode_A[2]) < 1e-17);
    CHECK(std::fabs(solution.diode_A[3]) < 1e-17);
    CHECK(solution.node_V[7] == Approx(solution.node_V[1]).epsilon(1e-12));
    for (const double volts : solution.node_V) {
        CHECK(std::fabs(volts) < 3.01);
    }
}

TEST_CASE("A reversed LED carries its saturation current and no more", "[circuit]") {
    Circuit circuit = make::with_cell(2, 3.0, 15.0);
    circuit.diodes.push_back({0, 1, 1e-9, 2.0, 5.0, -1});
    const Solution solution = solve_operating_point(circuit);
    REQUIRE(solution.ok());
    CHECK(solution.diode_A[0] == Approx(-1e-9).epsilon(1e-9));
    CHECK(solution.cell_A[0] == Approx(1e-9).epsilon(1e-6));
}

TEST_CASE("A shorted cell converges to its short-circuit current", "[circuit]") {
    Circuit circuit = make::with_cell(3, 3.2, 12.0);
    circuit.resistors.push_back({1, 2, 0.004});
    circuit.resistors.push_back({2, 0, 0.0}); // taken as 1e-6 ohm
    circuit.diodes.push_back(make::white(1, 0));
    Solution solution = solve_operating_point(circuit);
    REQUIRE(solution.ok());
    CHECK(solution.cell_A[0] == Approx(3.2 / 12.004001).epsilon(1e-12));
    CHECK(solution.diode_A[0] < 1e-12);
    circuit.cells[0].ohm = 0.0; // no cell is like that, and nothing may break
    solution = solve_operating_point(circuit);
    REQUIRE(solution.ok());
    CHECK(solution.cell_A[0] - solution.diode_A[0] == Approx(solution.node_V[1] / 0.004001).epsilon(1e-9));
    CHECK(solution.cell_A[0] == Approx(3.2 / 0.004002).epsilon(1e-4));
}

TEST_CASE("The ends that are not success have their names", "[circuit]") {
    Circuit circuit = make::ladder(3, make::red);
    SolveOptions options;
    options.most_iterations = 1;
    CHECK(solve_operating_point(circuit, options).exit == SolveExit::iteration_limit);
    circuit.resistors[0].ohm = std::nan("");
    CHECK(solve_operating_point(circuit).exit == SolveExit::singular);
    circuit.resistors[0].ohm = std::numeric_limits<double>::infinity(); // a broken joint is no error
    const Solution open = solve_operating_point(circuit);
    CHECK(open.ok());
    CHECK(open.diode_A[0] < 1e-15);
    CHECK(solve_operating_point({}).ok());
    Circuit lone;
    lone.node_count = 1;
    CHECK(solve_operating_point(lone).ok());
}
