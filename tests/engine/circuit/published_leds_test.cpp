// The diode law with figures fitted to data sheets, against the sheets' curves; and published SPICE models,
// against what ngspice 39 gives for them. Voltages are typed from the sheets.
#include "circuit/solve.h"
#include "support/circuits.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

struct Row {
    double mA;
    double volts;
};

void follows(const DiodeElement& led, std::initializer_list<Row> curve, double margin_V) {
    for (const Row& row : curve) {
        INFO(row.mA << " mA");
        CHECK(diode_voltage_V(led, 1e-3 * row.mA) == Approx(row.volts).margin(margin_V));
    }
}

// Fitted sets: saturation current, ideality, series resistance.
constexpr DiodeElement kDeepRed{1, 0, 1.8499e-18, 1.8504, 2.421, -1};
constexpr DiodeElement kRedLamp{1, 0, 2.6090e-21, 1.6032, 17.821, -1};
constexpr DiodeElement kYellowLamp{1, 0, 3.2707e-21, 1.7374, 9.180, -1};
constexpr DiodeElement kGreenLamp{1, 0, 6.2873e-23, 1.6333, 14.144, -1};

} // namespace

TEST_CASE("Fitted LEDs follow the curves of their sheets", "[circuit][leds]") {
    // OSRAM LG R971 (GaP 570 nm), v1.0 2012.
    follows(make::yellow_green(1, 0), {{0.001, 1.589}, {0.01, 1.671}, {0.1, 1.753}, {1, 1.850}, {20, 2.208}},
            0.015);
    // OSRAM LH R974 (GaAlAs 645 nm), v1.0 2012.
    follows(kDeepRed, {{0.01, 1.394}, {1, 1.619}, {20, 1.800}}, 0.015);
    // OSRAM LW TWTG (white), v1.2 2018.
    follows(make::white(1, 0), {{2, 2.720}, {5, 2.819}, {10, 2.918}, {20, 3.050}}, 0.020);
    // "LED I-V Curves", bench data of an unknown white part, 2021-12-25.
    follows(make::white(1, 0), {{0.2, 2.53}, {1.0, 2.656}}, 0.060);
    // Avago HLMP-EG (red 626 nm, 5 mm), AV02-3139EN 2014.
    follows(make::red(1, 0), {{1, 1.810}, {20, 2.061}, {50, 2.255}}, 0.020);
    // Avago ASMT-YTD7 (green and blue), AV02-3873EN 2012; the sheet prints 3.1 V typical at 20 mA beside it.
    follows(make::blue(1, 0), {{5, 2.902}, {20, 3.204}}, 0.020);
    // Avago HLMP-4700 / -4719 / -4740, 5989-4256EN 2006: printed typicals at 2 mA.
    follows(kRedLamp, {{2, 1.7}}, 0.050);
    follows(kYellowLamp, {{2, 1.8}}, 0.050);
    follows(kGreenLamp, {{2, 1.9}}, 0.050);
}

TEST_CASE("A good LED holds back at 0.1 mA", "[circuit][leds]") {
    // Every Lite-On LTST-C170 sheet: more than 2.0 V (InGaN), more than 1.4 V (AlInGaP).
    CHECK(diode_voltage_V(make::blue(1, 0), 1e-4) > 2.0);
    CHECK(diode_voltage_V(make::white(1, 0), 1e-4) > 2.0);
    CHECK(diode_voltage_V(make::red(1, 0), 1e-4) > 1.4);
}

TEST_CASE("Published SPICE models give what ngspice gives", "[circuit][leds]") {
    // ngspice 39 at 27 C with its own constants; its k and q are older, so 1 mV.
    const double thermal_V = 0.025864925786;
    const auto volts = [&](double is_A, double n, double rs_ohm, double mA) {
        return diode_voltage_V({1, 0, is_A, n, rs_ohm, -1}, 1e-3 * mA, thermal_V);
    };
    // LTspice standard.dio: QTLP690C D(Is=1e-22 Rs=6 N=1.5), red.
    CHECK(volts(1e-22, 1.5, 6.0, 10) == Approx(1.8467).margin(1e-3));
    // Wuerth WL-SMCW 150060RS75000: IS=981.11E-18 N=2.4704 RS=2.6193, red 0603.
    CHECK(volts(981.11e-18, 2.4704, 2.6193, 20) == Approx(2.0106).margin(1e-3));
    // Wuerth WL-SMCW 150120AS75000: IS=2.0577E-18 N=2.0906 RS=3.7169, amber 1206.
    CHECK(volts(2.0577e-18, 2.0906, 3.7169, 2) == Approx(1.8735).margin(1e-3));
    CHECK(volts(2.0577e-18, 2.0906, 3.7169, 20) == Approx(2.0649).margin(1e-3));
}
