#include "life/led_condition.h"

#include "circuit/lights.h"
#include "circuit/solve.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kRated_celsius = 25.0;

double spread_shift_V(const LedType& type, Spread spread) {
    if (!type.forward || spread == Spread::typical) {
        return 0.0;
    }
    DiodeElement diode;
    diode.saturation_A = type.saturation_A;
    diode.ideality = type.ideality;
    diode.series_ohm = type.series_ohm;
    const double curve_V = diode_voltage_V(diode, 1e-3 * type.forward->at_mA);
    const double shift_V = (spread == Spread::least ? type.forward->least_V : type.forward->most_V) - curve_V;
    return spread == Spread::least ? std::fmin(shift_V, 0.0) : std::fmax(shift_V, 0.0);
}

} // namespace

const LedType& type_of(const Card& card, const Parts& parts, int led) {
    const auto found = parts.leds.find(card.leds[static_cast<std::size_t>(led)].type);
    assert(found != parts.leds.end());
    return found->second;
}

const LedPhase* phase_of(const LedType& type, int phase) {
    if (phase < 0 || type.phases.empty()) {
        return nullptr;
    }
    return &type.phases[static_cast<std::size_t>(phase) % type.phases.size()];
}

int phase_count(const Card& card, const Parts& parts) {
    std::size_t most = 0;
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        most = std::max(most, type_of(card, parts, static_cast<int>(i)).phases.size());
    }
    return static_cast<int>(most);
}

void apply_condition(Circuit& circuit, const Card& card, const Parts& parts, const LedCondition& condition) {
    for (DiodeElement& diode : circuit.diodes) {
        if (diode.led < 0) {
            continue;
        }
        const LedType& type = type_of(card, parts, diode.led);
        if (const LedPhase* const phase = phase_of(type, condition.phase)) {
            diode.saturation_A = phase->saturation_A;
            diode.ideality = phase->ideality;
            diode.series_ohm = phase->series_ohm;
        }
        const double shift_V = 1e-3 * type.forward_mV_per_K * (condition.celsius - kRated_celsius) +
                               spread_shift_V(type, condition.spread);
        diode.saturation_A *= std::exp(-shift_V / (diode.ideality * kThermal_V));
    }
}

double condition_mcd(const LedType& type, int phase, double current_mA) {
    if (const LedPhase* const shown = phase_of(type, phase)) {
        LedType as_shown;
        as_shown.mcd = shown->mcd;
        return intensity_mcd(as_shown, current_mA);
    }
    return intensity_mcd(type, current_mA);
}

double condition_mA(const LedType& type, int phase, double mcd) {
    double low = 0.0;
    double high = 1.0;
    while (high < 1e3 && condition_mcd(type, phase, high) < mcd) {
        high *= 2.0;
    }
    for (int i = 0; i < 40; ++i) {
        const double middle = 0.5 * (low + high);
        (condition_mcd(type, phase, middle) < mcd ? low : high) = middle;
    }
    return high;
}

} // namespace lanternleaf
