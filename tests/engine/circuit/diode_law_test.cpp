#include "circuit/diode_law.h"
#include "circuit/solve.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace lanternleaf;

namespace {

/// The current by bisection on the law as it is written, in long double: slow, and with nothing to go wrong.
double by_bisection(const DiodeElement& d, double volts) {
    const long double slope = static_cast<long double>(d.ideality) * kThermal_V;
    const long double saturation = d.saturation_A;
    long double low = -saturation;
    long double high = volts > 0.0 ? volts / d.series_ohm + 1.0L : 0.0L;
    // f rises with the current: voltage needed minus voltage there. In terms of the junction's logarithm.
    for (int i = 0; i < 400; ++i) {
        const long double middle = low + (high - low) / 2;
        const long double needs = slope * std::log1p(middle / saturation) + middle * d.series_ohm;
        (needs < volts ? low : high) = middle;
    }
    return static_cast<double>(low + (high - low) / 2);
}

} // namespace

TEST_CASE("The current is right to 1e-12 at any voltage", "[circuit]") {
    for (const DiodeElement& d :
         {make::red(1, 0), make::yellow_green(1, 0), make::blue(1, 0), make::white(1, 0),
          DiodeElement{1, 0, 1e-9, 1.0, 0.5, -1}, DiodeElement{1, 0, 1e-6, 5.0, 1e4, -1}}) {
        const DiodeLaw law = diode_law(d, kThermal_V);
        for (double volts = 0.01; volts < 30.0; volts *= 1.07) {
            const DiodePoint p = at_voltage(law, volts);
            REQUIRE(p.amps == Approx(by_bisection(d, volts)).epsilon(1e-12));
            const DiodePoint back = at_current(law, p.amps);
            REQUIRE(back.volts == Approx(volts).epsilon(1e-12));
            REQUIRE(back.siemens == Approx(p.siemens).epsilon(1e-11));
        }
        for (double volts = -0.001; volts > -0.3; volts *= 1.3) {
            REQUIRE(at_voltage(law, volts).amps == Approx(by_bisection(d, volts)).epsilon(1e-12));
        }
        CHECK(at_voltage(law, -5.0).amps == Approx(-d.saturation_A).epsilon(1e-12));
        CHECK(at_voltage(law, 0.0).amps == Approx(0.0).margin(1e-15 * d.saturation_A));
    }
}

TEST_CASE("Slope and co-content belong to the curve", "[circuit]") {
    for (const double series_ohm : {0.0, 0.5, 12.0}) {
        const DiodeElement d{1, 0, 1e-12, 2.0, series_ohm, -1};
        const DiodeLaw law = diode_law(d, kThermal_V);
        // Simpson's rule over the current, from 0 V up.
        double integral_W = 0.0;
        const double step = 1e-4;
        for (int i = 0; i < 20000; ++i) {
            const double v = i * step;
            integral_W += step / 6.0 *
                          (at_voltage(law, v).amps + 4.0 * at_voltage(law, v + step / 2).amps +
                           at_voltage(law, v + step).amps);
            if (i % 1999 == 0) {
                const DiodePoint p = at_voltage(law, v + step);
                REQUIRE(co_content_W(law, p) == Approx(integral_W).epsilon(1e-8).margin(1e-18));
                const double h = 1e-6;
                const double slope =
                    (at_voltage(law, p.volts + h).amps - at_voltage(law, p.volts - h).amps) / (2 * h);
                REQUIRE(p.siemens == Approx(slope).epsilon(1e-6));
            }
        }
    }
    CHECK(co_content_W(diode_law(make::red(1, 0), kThermal_V), {}) == Approx(0.0).margin(1e-30));
}

TEST_CASE("Extremes give numbers", "[circuit]") {
    for (const double series_ohm : {0.0, 1e-6, 12.0}) {
        const DiodeElement d{1, 0, 1e-20, 1.0, series_ohm, -1};
        const DiodeLaw law = diode_law(d, kThermal_V);
        double last = -1.0;
        for (const double volts : {-1e12, -100.0, 0.0, 1.0, 10.0, 1e3, 1e9}) {
            const DiodePoint p = at_voltage(law, volts);
            CHECK(std::isfinite(p.amps));
            CHECK(std::isfinite(p.siemens));
            CHECK(std::isfinite(co_content_W(law, p)));
            CHECK(p.amps >= last);
            last = p.amps;
        }
    }
    CHECK(at_voltage(diode_law({1, 0, 0.0, 2.0, 5.0, -1}, kThermal_V), 3.0).amps == 0.0);
}

TEST_CASE("Forward voltage at a current", "[circuit]") {
    // OSRAM LG R971, typical at 20 mA: 2.20 V (data sheet v1.0, 2012); the fit is good to 11 mV.
    CHECK(diode_voltage_V(make::yellow_green(1, 0), 0.020) == Approx(2.20).margin(0.015));
    // OSRAM LW TWTG, typical at 20 mA: 3.05 V (data sheet v1.2, 2018).
    CHECK(diode_voltage_V(make::white(1, 0), 0.020) == Approx(3.05).margin(0.015));
    // Avago HLMP-EG, curve at 1 mA and 50 mA: 1.810 and 2.255 V.
    CHECK(diode_voltage_V(make::red(1, 0), 0.001) == Approx(1.810).margin(0.020));
    CHECK(diode_voltage_V(make::red(1, 0), 0.050) == Approx(2.255).margin(0.020));
    CHECK(diode_voltage_V(make::red(1, 0), 0.0) == 0.0);
    CHECK(diode_voltage_V(make::red(1, 0), -1e-3) == -std::numeric_limits<double>::infinity());
    CHECK(diode_voltage_V({1, 0, 0.0, 2.0, 5.0, -1}, 1e-3) == std::numeric_limits<double>::infinity());
}
