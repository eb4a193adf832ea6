// Solve: the operating point of a circuit: Newton on the diodes, sparse symmetric factorisation, line search.
// The co-content of a network of monotone two-terminal elements is convex (W. Millar, "Some general theorems
// for non-linear systems possessing resistance", Phil. Mag. 42 (1951) 1150-1160), so a damped Newton step
// always goes downhill and the method converges from anywhere; diode limiting only saves steps.
#pragma once

#include "circuit/circuit.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// kT/q at 25 C in volts: k = 1.380649e-23 J/K and q = 1.602176634e-19 C are exact in the SI; T = 298.15 K.
inline constexpr double kThermal_V = 0.025692579121085847;

/// Every way a solve can end. The first is success; the others are named so that a screen can say what
/// happened.
enum class SolveExit { converged, iteration_limit, line_search_stuck, singular };

struct SolveOptions {
    int most_iterations = 200;
    double thermal_V = kThermal_V;
    /// Stop when every diode's current is on its curve to within residual_A (and the rounding of its
    /// voltage), and bringing it there would move no LED's voltage by more than step_V.
    double residual_A = 1e-14;
    double step_V = 1e-12;
    /// Start from these node voltages (a nearby solution); empty: start cold.
    std::vector<double> start_V;
};

struct Solution {
    SolveExit exit = SolveExit::converged;
    int iterations = 0;
    /// Largest current imbalance at a node. Through a dead joint of 1e-6 ohm the last digit of a voltage
    /// alone is some 1e-10 A; it circles within the joint and reaches no LED.
    double residual_A = 0.0;
    std::vector<double> node_V;  ///< against node 0
    std::vector<double> diode_A; ///< per Circuit::diodes, positive from anode to cathode
    std::vector<double> cell_A;  ///< per Circuit::cells, positive when it delivers

    [[nodiscard]] bool ok() const { return exit == SolveExit::converged; }
};

[[nodiscard]] Solution solve_operating_point(const Circuit& circuit, const SolveOptions& options = {});

/// A circuit prepared once and solved many times with other cell states or diodes: same topology, so the
/// ordering and the pattern of the factors are kept. `solve` is what Life's slider and Mend call thousands of
/// times.
class PreparedSolver {
public:
    explicit PreparedSolver(const Circuit& circuit);
    ~PreparedSolver();
    PreparedSolver(PreparedSolver&&) noexcept;
    PreparedSolver& operator=(PreparedSolver&&) noexcept;
    /// `circuit` must have the topology it was prepared with; values may differ, and LEDs may be turned
    /// round. Results go into `out`, whose vectors are reused; with options.start_V empty it starts cold,
    /// with `warm` from out.node_V.
    void solve(const Circuit& circuit, const SolveOptions& options, bool warm, Solution& out);

private:
    struct Workspace;
    Workspace* workspace_; // owned; a plain pointer keeps the header free of the matrix code
};

/// Resistance between two nodes with cells and diodes left out; infinity when nothing joins them.
[[nodiscard]] double resistance_between(const Circuit& circuit, int from, int to);

/// Current through one LED on an ideal source behind `ohm` (closed form by Newton on one unknown): for parts
/// pictures and resistor suggestions. `source_V` may be anything; result in amperes.
[[nodiscard]] double diode_current_A(const DiodeElement& diode, double source_V, double ohm,
                                     double thermal_V = kThermal_V);
/// Forward voltage of a diode at a current (its own series resistance included).
[[nodiscard]] double diode_voltage_V(const DiodeElement& diode, double current_A,
                                     double thermal_V = kThermal_V);

} // namespace lanternleaf
