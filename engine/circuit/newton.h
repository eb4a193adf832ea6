// Newton: the two iterations behind an operating point, and the store they work in. Exists apart from solve.h
// so that each can be tested alone: the quick one must be right when it says so, the sure one must get there
// from anywhere.
//
//   limited_newton  full steps, each diode's point moved along its own curve (by current when it rises, by
//   voltage
//                   when it falls): about five solves, no proof.
//   descend         steps cut until the co-content falls enough: convex, so it cannot fail but by rounding.
#pragma once

#include "circuit/diode_law.h"
#include "circuit/solve.h"
#include "numeric/conductance_network.h"

#include <span>
#include <vector>

namespace lanternleaf {

/// A conductance beside every diode and the least of every resistor, in siemens. It keeps a net that hangs
/// between dark LEDs from having no voltage at all; at 6 V it carries 6e-18 A, a millionth of a millionth of
/// what a dim LED takes.
inline constexpr double kLeak_S = 1e-18;

class Newton {
public:
    explicit Newton(const Circuit& circuit);
    /// Takes the values of `circuit`, which must have the topology this was made with; LEDs may be turned
    /// round.
    void load(const Circuit& circuit, double thermal_V);

    /// Diode points for a start with nothing known, near what the cells could give each LED...
    void start_cold(const Circuit& circuit);
    /// ...or from node voltages, and the diodes' currents where they are known (else empty).
    void start_from(const Circuit& circuit, std::span<const double> node_V, std::span<const double> diode_A);

    [[nodiscard]] SolveExit limited_newton(const SolveOptions& options, int most, int& iterations);
    /// Starts at `start_V`, one voltage per node.
    [[nodiscard]] SolveExit descend(const Circuit& circuit, const SolveOptions& options,
                                    std::span<const double> start_V, int most, int& iterations);

    /// Writes voltages, currents and the largest imbalance of the last iteration into `out`.
    void read_off(const Circuit& circuit, Solution& out);
    /// The part of residual that comes from rounding node voltages: what no iteration can remove.
    [[nodiscard]] static double rounding_A(double siemens, double volts, double amps);

private:
    struct Diode {
        DiodeLaw law;
        DiodePoint point;
        DiodePoint knee; ///< at knee_A_
        int prepared_anode = 0;
        double way = 1.0; ///< -1 when it is turned round against how it was prepared
    };

    struct Merit {
        double content_W = 0.0;
        double magnitude_W = 0.0; ///< sum of the sizes of what was added, for judging rounding
        double slope_W = 0.0;
    };

    [[nodiscard]] bool linear_solve();
    /// Moves one diode to where the linear solution puts it; true when it was there already.
    [[nodiscard]] bool move_diode(Diode& diode, double across_V, const SolveOptions& options);
    void find_knees(double amps);
    [[nodiscard]] Merit merit_at(const Circuit& circuit, double fraction);

    ConductanceNetwork network_;
    std::vector<Diode> diodes_;
    std::vector<double> per_diode_; ///< siemens, drawn current, voltage across: three blocks
    std::vector<double>
        fixed_; ///< siemens of resistors, then of cells; then amperes injected, per node but 0
    std::vector<double> node_V_; ///< where descend stands; scratch for read_off
    std::vector<double> step_V_; ///< its direction
    double knee_A_ = 0.0;
    double mismatch_A_ =
        0.0; ///< largest difference between a diode's curve and its tangent at the last solve
};

} // namespace lanternleaf
