#include "circuit/diode_law.h"

#include "circuit/circuit.h"
#include "circuit/solve.h"
#include "numeric/wright_omega.h"

#include <cmath>
#include <limits>

namespace lanternleaf {

DiodeLaw diode_law(const DiodeElement& diode, double thermal_V) {
    DiodeLaw law;
    law.saturation_A = diode.saturation_A;
    law.slope_V = diode.ideality * thermal_V;
    law.series_ohm = diode.series_ohm;
    law.ratio = diode.series_ohm * diode.saturation_A / law.slope_V;
    law.log_ratio = law.ratio > 0.0 ? std::log(law.ratio) : 0.0;
    return law;
}

DiodePoint at_voltage(const DiodeLaw& law, double volts) {
    if (!(law.saturation_A > 0.0)) {
        return {volts, 0.0, 0.0};
    }
    const double x = volts / law.slope_V;
    if (!(law.ratio > 0.0)) {
        const double straight_x = std::log1p(kStraight_A / law.saturation_A);
        const double amps = law.saturation_A * std::expm1(std::fmin(x, straight_x));
        const double siemens = (amps + law.saturation_A) / law.slope_V;
        return {volts, amps + std::fmax(x - straight_x, 0.0) * law.slope_V * siemens, siemens};
    }
    const double w = wright_omega(x + law.ratio + law.log_ratio);
    // Near and below zero current the "- 1" would cancel; there the junction's own voltage is the better
    // variable.
    const double amps = w > 2.0 * law.ratio ? law.saturation_A * (w / law.ratio - 1.0)
                                            : law.saturation_A * std::expm1(x + (law.ratio - w));
    return {volts, amps, w / ((1.0 + w) * law.series_ohm)};
}

DiodePoint at_current(const DiodeLaw& law, double amps) {
    const double above = amps + law.saturation_A;
    // Above the saturation current ln(1 + I/Is) needs no care for small arguments, and log is the quicker
    // one.
    const double junction =
        amps > law.saturation_A ? std::log(above / law.saturation_A) : std::log1p(amps / law.saturation_A);
    return {law.slope_V * junction + amps * law.series_ohm, amps,
            above / (law.slope_V + above * law.series_ohm)};
}

double co_content_W(const DiodeLaw& law, const DiodePoint& point) {
    if (!(law.saturation_A > 0.0)) {
        return 0.0;
    }
    // By parts: with j the junction's voltage, integral of I dV = a I - Is j + Rs I^2 / 2. For the straight
    // continuation without series resistance the same with the triangle added.
    if (!(law.ratio > 0.0)) {
        const double bend_V = law.slope_V * std::log1p(kStraight_A / law.saturation_A);
        if (point.volts > bend_V) {
            return law.slope_V * kStraight_A - law.saturation_A * bend_V +
                   0.5 * (kStraight_A + point.amps) * (point.volts - bend_V);
        }
    }
    const double junction_V = point.volts - point.amps * law.series_ohm;
    return law.slope_V * point.amps - law.saturation_A * junction_V +
           0.5 * law.series_ohm * point.amps * point.amps;
}

double diode_current_A(const DiodeElement& diode, double source_V, double ohm, double thermal_V) {
    DiodeElement behind = diode;
    behind.series_ohm += ohm;
    return at_voltage(diode_law(behind, thermal_V), source_V).amps;
}

double diode_voltage_V(const DiodeElement& diode, double current_A, double thermal_V) {
    if (!(current_A > -diode.saturation_A)) {
        // No voltage drives more than the saturation current backwards.
        return current_A < 0.0 ? -std::numeric_limits<double>::infinity()
                               : std::numeric_limits<double>::infinity();
    }
    if (!(diode.saturation_A > 0.0)) {
        return std::numeric_limits<double>::infinity();
    }
    return at_current(diode_law(diode, thermal_V), current_A).volts;
}

} // namespace lanternleaf
