#include "circuit/lights.h"

#include "base/tolerance.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace lanternleaf {

namespace {

/// The current that brightness is measured against (format: "as a fraction of that LED's at 5 mA").
constexpr double kFull_mA = 5.0;

} // namespace

LightState state_of(double current_mA) {
    if (current_mA >= tolerance::kLit_mA) {
        return LightState::lit;
    }
    return current_mA >= tolerance::kDim_mA ? LightState::dim : LightState::dark;
}

const char* name_of(LightState state) {
    switch (state) {
    case LightState::lit:
        return "lit";
    case LightState::dim:
        return "dim";
    case LightState::dark:
        break;
    }
    return "dark";
}

double intensity_mcd(const LedType& type, double current_mA) {
    if (!(current_mA > 0.0)) {
        return 0.0;
    }
    if (type.mcd.empty()) {
        return current_mA; // nothing known: proportional, and only ratios mean anything
    }
    const auto above = std::find_if(type.mcd.begin(), type.mcd.end(),
                                    [&](const auto& point) { return point.first > current_mA; });
    if (above == type.mcd.begin()) {
        return above->second * current_mA / above->first;
    }
    const auto below = above - 1;
    if (above == type.mcd.end()) {
        return below->second;
    }
    if (!(below->first > 0.0) || !(below->second > 0.0) || !(above->second > 0.0)) {
        // A point at zero has no logarithm: straight between the two.
        const double part = (current_mA - below->first) / (above->first - below->first);
        return below->second + part * (above->second - below->second);
    }
    const double part = std::log(current_mA / below->first) / std::log(above->first / below->first);
    return below->second * std::pow(above->second / below->second, part);
}

Lighting read_lights(const Card& card, const Parts& parts, const Circuit& circuit, const Solution& solution) {
    Lighting lighting;
    lighting.exit = solution.exit;
    lighting.lights.resize(card.leds.size());
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        lighting.lights[i].led = static_cast<int>(i);
    }
    if (!solution.ok()) {
        return lighting; // all dark: nothing is claimed that was not solved
    }
    for (std::size_t i = 0; i < circuit.cells.size(); ++i) {
        lighting.cell_mA += 1e3 * solution.cell_A[i];
    }
    if (!circuit.cells.empty()) {
        const CellElement& cell = circuit.cells.front();
        lighting.cell_V = solution.node_V[static_cast<std::size_t>(cell.plus)] -
                          solution.node_V[static_cast<std::size_t>(cell.minus)];
    }
    for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
        const DiodeElement& diode = circuit.diodes[i];
        if (diode.led < 0 || static_cast<std::size_t>(diode.led) >= card.leds.size()) {
            continue;
        }
        const auto led = static_cast<std::size_t>(diode.led);
        Light& light = lighting.lights[led];
        light.current_mA = 1e3 * solution.diode_A[i];
        light.volts = solution.node_V[static_cast<std::size_t>(diode.anode)] -
                      solution.node_V[static_cast<std::size_t>(diode.cathode)];
        light.state = state_of(light.current_mA);
        const auto type = parts.leds.find(card.leds[led].type);
        assert(type != parts.leds.end());
        if (type != parts.leds.end()) {
            const double mcd = intensity_mcd(type->second, light.current_mA);
            const double full = intensity_mcd(type->second, kFull_mA);
            light.mcd = light.state == LightState::dark ? 0.0 : mcd;
            light.brightness = full > 0.0 ? mcd / full : 0.0;
        }
    }
    return lighting;
}

Lighting light_up(const Card& card, const Parts& parts, const Conductors& conductors, const CellState& cell) {
    const Circuit circuit = build_circuit(card, parts, conductors, cell);
    return read_lights(card, parts, circuit, solve_operating_point(circuit));
}

} // namespace lanternleaf
