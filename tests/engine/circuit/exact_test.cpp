// Closed-form cases: I = (nVt/R) W0((Is R/nVt) exp((V + Is R)/nVt)) - Is (T. C. Banwell and A. Jayakumar,
// Electron. Lett. 36 (2000) 291-292), evaluated outside this project to 60 digits in two ways (mpmath's
// lambertw, and Newton in decimal arithmetic); the coupled ones are roots of a sum of such terms. Figures
// agree to all printed digits.
#include "circuit/solve.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

constexpr double kExact = 1e-9;

struct Single {
    const char* name;
    DiodeElement led;
    double open_V;
    double ohm; ///< in series, the LED's own left out
    double current_mA;
    double junction_V;
};

const Single kSingles[] = {
    {"1 red on 3 V", make::red(1, 0), 3.0, 0.0, 183.64786474525, 2.075149353143},
    {"2 red, 15 ohm", make::red(1, 0), 3.0, 15.0, 49.59495779381, 2.006315425643},
    {"3 red, 100 + 15 ohm", make::red(1, 0), 3.0, 115.0, 9.0246028391792, 1.916722773596},
    {"4 yellow-green, 15 ohm", make::yellow_green(1, 0), 3.0, 15.0, 37.222815880582, 1.978792046316},
    {"5 blue, 15 ohm", make::blue(1, 0), 3.0, 15.0, 5.4981790751446, 2.849542329609},
    {"6 white, 15 ohm", make::white(1, 0), 3.0, 15.0, 8.0174646518053, 2.82154727178},
    {"7 white, 2.6 V behind 40 ohm", make::white(1, 0), 2.6, 40.0, 0.48531275262263, 2.577065089937},
    {"8 red, 2.6 V behind 40 ohm", make::red(1, 0), 2.6, 40.0, 14.609400151718, 1.942051054767},
    {"9 blue, two cells", make::blue(1, 0), 6.0, 130.0, 21.360655157014, 2.958990328572},
};

} // namespace

TEST_CASE("One LED on a cell has its closed-form current", "[circuit][exact]") {
    for (const Single& c : kSingles) {
        INFO(c.name);
        CHECK(1e3 * diode_current_A(c.led, c.open_V, c.ohm) == Approx(c.current_mA).epsilon(kExact));
        // The junction's voltage is given to 1e-12 V.
        DiodeElement junction = c.led;
        junction.series_ohm = 0.0;
        CHECK(diode_voltage_V(junction, 1e-3 * c.current_mA) == Approx(c.junction_V).margin(2e-12));
        if (c.ohm > 0.0) { // a cell in a circuit has at least 1e-6 ohm
            Circuit circuit = make::with_cell(2, c.open_V, c.ohm);
            circuit.diodes.push_back(c.led);
            const Solution solution = solve_operating_point(circuit);
            REQUIRE(solution.ok());
            CHECK(1e3 * solution.diode_A[0] == Approx(c.current_mA).epsilon(kExact));
            CHECK(1e3 * solution.cell_A[0] == Approx(c.current_mA).epsilon(kExact));
            CHECK(solution.residual_A < 1e-14);
        }
    }
}

TEST_CASE("A published diode example", "[circuit][exact]") {
    // Boost.Math, example/lambert_w_diode.cpp: k = 1.38e-23, q = 1.6e-19, 298 K; it prints 0.00108485.
    const DiodeElement diode{1, 0, 25e-15, 1.0, 249.3, -1};
    const double thermal_V = 1.38e-23 * 298.0 / 1.6e-19;
    CHECK(diode_current_A(diode, 0.9, 0.0, thermal_V) == Approx(0.00108485).epsilon(5e-6));
    CHECK(diode_current_A(diode, 0.9, 0.0, thermal_V) == Approx(1.08485173860983e-3).epsilon(1e-12));
}

TEST_CASE("LEDs in series have their closed-form current", "[circuit][exact]") {
    SECTION("10: two red, 6 V, 30 + 100 ohm") {
        Circuit circuit = make::with_cell(4, 6.0, 30.0);
        circuit.resistors.push_back({1, 2, 100.0});
        circuit.diodes = {make::red(2, 3), make::red(3, 0)};
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        CHECK(1e3 * solution.diode_A[0] == Approx(15.081891434288).epsilon(kExact));
        CHECK(1e3 * solution.diode_A[1] == Approx(15.081891434288).epsilon(kExact));
    }
    SECTION("11: two red on one cell, 3.26 microamperes") {
        Circuit circuit = make::with_cell(3, 3.0, 15.0);
        circuit.diodes = {make::red(1, 2), make::red(2, 0)};
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        CHECK(1e3 * solution.diode_A[0] == Approx(0.0032589741369827).epsilon(kExact));
        CHECK(1e3 * solution.cell_A[0] == Approx(0.0032589741369827).epsilon(kExact));
    }
}

TEST_CASE("LEDs that share a cell have their closed-form currents", "[circuit][exact]") {
    const auto check = [](const Circuit& circuit, double cell_V, const std::vector<double>& led_mA,
                          double all_mA) {
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        CHECK(solution.node_V[1] == Approx(cell_V).epsilon(1e-12));
        for (std::size_t i = 0; i < led_mA.size(); ++i) {
            CHECK(1e3 * solution.diode_A[i] == Approx(led_mA[i]).epsilon(kExact));
        }
        CHECK(1e3 * solution.cell_A[0] == Approx(all_mA).epsilon(kExact));
    };
    SECTION("A: red takes everything from blue") {
        Circuit circuit = make::with_cell(2, 3.0, 15.0);
        circuit.diodes = {make::red(1, 0), make::blue(1, 0)};
        check(circuit, 2.2560604648905, {49.59246965827, 0.003499349028056}, 49.59596900730);
    }
    SECTION("B: 100 ohm at the red brings blue back") {
        Circuit circuit = make::with_cell(3, 3.0, 15.0);
        circuit.resistors.push_back({1, 2, 100.0});
        circuit.diodes = {make::red(2, 0), make::blue(1, 0)};
        check(circuit, 2.8281434539101, {8.695800888979, 2.761302183682}, 11.45710307266);
    }
    SECTION("C: three red") {
        Circuit circuit = make::with_cell(2, 3.0, 15.0);
        circuit.diodes = {make::red(1, 0), make::red(1, 0), make::red(1, 0)};
        check(circuit, 2.0651776856278, {20.77382920827, 20.77382920827, 20.77382920827}, 62.32148762481);
    }
    SECTION("D: two white") {
        Circuit circuit = make::with_cell(2, 3.0, 15.0);
        circuit.diodes = {make::white(1, 0), make::white(1, 0)};
        check(circuit, 2.8313805089439, {5.62064970187, 5.62064970187}, 11.24129940374);
    }
    SECTION("E: red, white and yellow-green") {
        Circuit circuit = make::with_cell(2, 2.9, 20.0);
        circuit.diodes = {make::red(1, 0), make::white(1, 0), make::yellow_green(1, 0)};
        check(circuit, 2.1059505384807, {26.37689980804, 0.002181927136862, 13.32339134078}, 39.70247307596);
    }
    SECTION("F: four red along two rails, 0.25 ohm in each between neighbours") {
        Circuit circuit = make::with_cell(8, 3.0, 15.0);
        circuit.diodes.push_back(make::red(1, 0));
        for (int i = 1; i < 4; ++i) {
            circuit.resistors.push_back({i == 1 ? 1 : 2 * i - 2, 2 * i, 0.25});
            circuit.resistors.push_back({i == 1 ? 0 : 2 * i - 1, 2 * i + 1, 0.25});
            circuit.diodes.push_back(make::red(2 * i, 2 * i + 1));
        }
        const std::vector<double> across = {2.050889397657, 2.028709976435, 2.014608940415, 2.007753927983};
        const std::vector<double> mA = {18.91519771153, 16.15677040567, 14.49204717428, 13.71002486473};
        const Solution solution = solve_operating_point(circuit);
        REQUIRE(solution.ok());
        for (std::size_t i = 0; i < 4; ++i) {
            const DiodeElement& d = circuit.diodes[i];
            CHECK(1e3 * solution.diode_A[i] == Approx(mA[i]).epsilon(kExact));
            CHECK(solution.node_V[static_cast<std::size_t>(d.anode)] -
                      solution.node_V[static_cast<std::size_t>(d.cathode)] ==
                  Approx(across[i]).epsilon(1e-12));
        }
        CHECK(1e3 * solution.cell_A[0] == Approx(63.27404015621).epsilon(kExact));
    }
}
