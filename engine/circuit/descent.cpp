// The sure iteration. The co-content of a network is the sum over its elements of the integral of I dV; its
// gradient by node voltage is the current imbalance of the nodes. Every element here has a current that rises
// with its voltage, so each term is convex, the sum too (Millar 1951, see solve.h), and its one minimum is
// the operating point. The Newton direction then always points downhill, and steps cut until the fall is a
// fixed part of what the slope promises (L. Armijo, Pacific J. Math. 16 (1966) 1-3) reach the minimum from
// anywhere.
#include "circuit/newton.h"

#include "base/at.h"

#include <cassert>
#include <cmath>
#include <limits>

namespace lanternleaf {

namespace {

constexpr double kArmijo = 1e-4;
constexpr int kMostCuts = 200;

} // namespace

Newton::Merit Newton::merit_at(const Circuit& circuit, double fraction) {
    Merit merit;
    const double* const v = node_V_.data();
    const double* const d = step_V_.data();
    const double* siemens = fixed_.data();
    const auto add = [&merit](double content_W, double amps, double along_V) {
        merit.content_W += content_W;
        merit.magnitude_W += std::fabs(content_W);
        merit.slope_W += amps * along_V;
    };
    for (const ResistorElement& r : circuit.resistors) {
        const double along = d[r.a] - d[r.b];
        const double volts = v[r.a] - v[r.b] + fraction * along;
        add(0.5 * *siemens * volts * volts, *siemens * volts, along);
        ++siemens;
    }
    for (const CellElement& c : circuit.cells) {
        const double along = d[c.plus] - d[c.minus];
        const double volts = v[c.plus] - v[c.minus] + fraction * along - c.open_V;
        add(0.5 * *siemens * volts * volts, *siemens * volts, along);
        ++siemens;
    }
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        const DiodeElement& e = circuit.diodes[i];
        const double along = d[e.anode] - d[e.cathode];
        const DiodePoint p = at_voltage(diodes_[i].law, v[e.anode] - v[e.cathode] + fraction * along);
        add(co_content_W(diodes_[i].law, p) + 0.5 * kLeak_S * p.volts * p.volts, p.amps + kLeak_S * p.volts,
            along);
    }
    return merit;
}

SolveExit Newton::descend(const Circuit& circuit, const SolveOptions& options,
                          std::span<const double> start_V, int most, int& iterations) {
    const std::size_t nodes = at(circuit.node_count);
    assert(nodes > 0 && start_V.size() == nodes);
    step_V_.assign(nodes, 0.0);
    node_V_.resize(nodes);
    for (std::size_t i = 0; i < nodes; ++i) {
        node_V_[i] = start_V[i] - start_V[0];
    }
    while (iterations < most) {
        ++iterations;
        for (std::size_t i = 0; i < diodes_.size(); ++i) {
            const DiodeElement& d = circuit.diodes[i];
            diodes_[i].point = at_voltage(diodes_[i].law, node_V_[at(d.anode)] - node_V_[at(d.cathode)]);
        }
        if (!linear_solve()) {
            return SolveExit::singular;
        }
        network_.node_voltages({step_V_.data() + 1, nodes - 1});
        double longest_V = 0.0;
        for (std::size_t i = 1; i < nodes; ++i) {
            step_V_[i] -= node_V_[i];
            longest_V = std::fmax(longest_V, std::fabs(step_V_[i]));
        }
        const Merit here = merit_at(circuit, 0.0);
        mismatch_A_ = 0.0;
        bool settled = longest_V <= options.step_V;
        for (std::size_t i = 0; i < diodes_.size() && settled; ++i) {
            const DiodePoint& p = diodes_[i].point;
            const double across_V = per_diode_[2 * diodes_.size() + i];
            const DiodePoint there = at_voltage(diodes_[i].law, across_V);
            const double off_A = std::fabs(p.amps + p.siemens * (across_V - p.volts) - there.amps);
            mismatch_A_ = std::fmax(mismatch_A_, off_A);
            settled = off_A <= options.residual_A + rounding_A(p.siemens, across_V, p.amps);
            diodes_[i].point = there;
        }
        if (settled) {
            return SolveExit::converged;
        }

        double fraction = 1.0;
        int cuts = 0;
        const double rounding_W = 8.0 * std::numeric_limits<double>::epsilon() * here.magnitude_W;
        for (;; ++cuts) {
            const Merit there = merit_at(circuit, fraction);
            if (there.content_W <= here.content_W + kArmijo * fraction * here.slope_W + rounding_W) {
                break;
            }
            if (cuts == kMostCuts) {
                return SolveExit::line_search_stuck;
            }
            // Where a straight line between the two slopes crosses zero, kept within sensible bounds.
            const double crossing = here.slope_W / (here.slope_W - there.slope_W);
            fraction *= crossing > 0.1 && crossing < 0.5 ? crossing : (crossing <= 0.1 ? 0.1 : 0.5);
        }
        for (std::size_t i = 1; i < nodes; ++i) {
            node_V_[i] += fraction * step_V_[i];
        }
    }
    return SolveExit::iteration_limit;
}

} // namespace lanternleaf
