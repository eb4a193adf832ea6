// A second solver for tests, made to share nothing with the engine's: an inner node in every LED, the
// exponential as it stands, a dense LU in long double (Eigen), and steps so short that nothing can overshoot.
#pragma once

#include "circuit/solve.h"

#include <eigen3/Eigen/Dense>

#include <cmath>
#include <vector>

namespace lanternleaf {

struct DenseAnswer {
    bool converged = false;
    std::vector<double> node_V;
    std::vector<double> diode_A;
};

inline DenseAnswer dense_newton(const Circuit& circuit) {
    using Real = long double;
    using Matrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
    using Vector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;
    const int nodes = circuit.node_count;
    const int size = nodes + static_cast<int>(circuit.diodes.size());
    Vector volts = Vector::Zero(size);
    const auto inner = [&](std::size_t diode) { return nodes + static_cast<int>(diode); };
    DenseAnswer answer;
    for (int step = 0; step < 4000 && !answer.converged; ++step) {
        Matrix slope = Matrix::Zero(size, size);
        Vector out_A = Vector::Zero(size);
        const auto add = [&](int a, int b, Real amps, Real siemens) {
            out_A(a) += amps;
            out_A(b) -= amps;
            slope(a, a) += siemens;
            slope(b, b) += siemens;
            slope(a, b) -= siemens;
            slope(b, a) -= siemens;
        };
        for (const ResistorElement& r : circuit.resistors) {
            add(r.a, r.b, (volts(r.a) - volts(r.b)) / r.ohm, 1.0L / r.ohm);
        }
        for (const CellElement& c : circuit.cells) {
            add(c.plus, c.minus, (volts(c.plus) - volts(c.minus) - c.open_V) / c.ohm, 1.0L / c.ohm);
        }
        for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
            const DiodeElement& d = circuit.diodes[i];
            const Real a = static_cast<Real>(d.ideality) * kThermal_V;
            const Real junction = volts(inner(i)) - volts(d.cathode);
            const Real rising = d.saturation_A * std::exp(junction / a);
            add(inner(i), d.cathode, rising - d.saturation_A, rising / a + 1e-18L);
            add(d.anode, inner(i), (volts(d.anode) - volts(inner(i))) / d.series_ohm, 1.0L / d.series_ohm);
        }
        out_A(0) = volts(0);
        slope.row(0).setZero();
        slope(0, 0) = 1.0L;
        const Vector change = slope.partialPivLu().solve(-out_A);
        const Real longest = change.cwiseAbs().maxCoeff();
        volts += change * (longest > 0.05L ? 0.05L / longest : 1.0L);
        answer.converged = longest < 1e-15L;
    }
    for (int i = 0; i < nodes; ++i) {
        answer.node_V.push_back(static_cast<double>(volts(i)));
    }
    for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
        const DiodeElement& d = circuit.diodes[i];
        answer.diode_A.push_back(static_cast<double>((volts(d.anode) - volts(inner(i))) / d.series_ohm));
    }
    return answer;
}

} // namespace lanternleaf
