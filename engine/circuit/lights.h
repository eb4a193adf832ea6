// Lights: what a solved circuit means for each LED: current, state, luminous intensity.
#pragma once

#include "circuit/solve.h"

namespace lanternleaf {

enum class LightState { lit, dim, dark };

struct Light {
    int led = 0;
    double current_mA = 0.0;
    double volts = 0.0; ///< anode to cathode, at the pads; negative when reversed
    LightState state = LightState::dark;
    double mcd = 0.0;        ///< luminous intensity from the part's table, 0 when dark
    double brightness = 0.0; ///< intensity as a fraction of that LED's at 5 mA
};

struct Lighting {
    SolveExit exit = SolveExit::converged;
    double cell_mA = 0.0;
    double cell_V = 0.0;       ///< loaded, at the cell
    std::vector<Light> lights; ///< one per Card::leds
};

/// Solves and reads off. The usual one-call path from conductors to lights.
[[nodiscard]] Lighting light_up(const Card& card, const Parts& parts, const Conductors& conductors,
                                const CellState& cell);
/// From a circuit already built and solved.
[[nodiscard]] Lighting read_lights(const Card& card, const Parts& parts, const Circuit& circuit,
                                   const Solution& solution);

[[nodiscard]] LightState state_of(double current_mA);
/// Luminous intensity at a current: log-log between the table's points; below the first point proportional to
/// current (the low-current slope is not in the data sheets: stated, not hidden), above the last one level.
[[nodiscard]] double intensity_mcd(const LedType& type, double current_mA);
[[nodiscard]] const char* name_of(LightState state);

} // namespace lanternleaf
