#include "circuit/newton.h"

#include "base/at.h"
#include "base/tolerance.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace lanternleaf {

namespace {

/// What one step may leave of a diode's current: beyond this the difference it comes from is rounding.
constexpr double kDeepestFall = 1e-12;
/// And the most by which a current below the knee may grow: parallel LEDs on a net that is going dark would
/// otherwise take turns at holding it up. Both figures were tuned on random networks; others only cost steps.
constexpr double kTopRise = 10.0;

int without_reference(int node) {
    return node == 0 ? kGround : node - 1;
}

ConductanceNetwork network_of(const Circuit& circuit) {
    std::vector<NodeLink> links;
    links.reserve(circuit.resistors.size() + circuit.cells.size() + circuit.diodes.size());
    for (const ResistorElement& r : circuit.resistors) {
        links.push_back({without_reference(r.a), without_reference(r.b)});
    }
    for (const CellElement& c : circuit.cells) {
        links.push_back({without_reference(c.plus), without_reference(c.minus)});
    }
    const int first_moving = static_cast<int>(links.size());
    for (const DiodeElement& d : circuit.diodes) {
        links.push_back({without_reference(d.anode), without_reference(d.cathode)});
    }
    return ConductanceNetwork(std::max(circuit.node_count - 1, 0), links, first_moving);
}

double siemens_of(double ohm) {
    const double no_less = ohm < tolerance::kLeastResistance_ohm ? tolerance::kLeastResistance_ohm : ohm;
    const double siemens = 1.0 / no_less;
    return siemens < kLeak_S ? kLeak_S
                             : siemens; // written so that a resistance that is not a number stays so
}

bool same_type(const DiodeElement& one, const DiodeElement& other) {
    return one.saturation_A == other.saturation_A && one.ideality == other.ideality &&
           one.series_ohm == other.series_ohm;
}

} // namespace

Newton::Newton(const Circuit& circuit)
    : network_(network_of(circuit)), diodes_(circuit.diodes.size()), per_diode_(3 * circuit.diodes.size()),
      fixed_(circuit.resistors.size() + circuit.cells.size() + at(network_.node_count())) {
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        diodes_[i].prepared_anode = circuit.diodes[i].anode;
    }
}

void Newton::load(const Circuit& circuit, double thermal_V) {
    assert(circuit.diodes.size() == diodes_.size() &&
           fixed_.size() ==
               circuit.resistors.size() + circuit.cells.size() + at(std::max(circuit.node_count - 1, 0)));
    const std::size_t fixed_count = circuit.resistors.size() + circuit.cells.size();
    double* siemens = fixed_.data();
    double* const injected = fixed_.data() + fixed_count;
    std::fill(injected, fixed_.data() + fixed_.size(), 0.0);
    for (const ResistorElement& r : circuit.resistors) {
        *siemens++ = siemens_of(r.ohm);
    }
    for (const CellElement& c : circuit.cells) {
        *siemens = siemens_of(c.ohm);
        const double amps = c.open_V * *siemens++; // Norton's form of the cell
        if (c.plus > 0) {
            injected[c.plus - 1] += amps;
        }
        if (c.minus > 0) {
            injected[c.minus - 1] -= amps;
        }
    }
    network_.set_fixed({fixed_.data(), fixed_count}, {injected, at(network_.node_count())});
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        const DiodeElement& d = circuit.diodes[i];
        assert(d.anode == diodes_[i].prepared_anode || d.cathode == diodes_[i].prepared_anode);
        // Cards carry many LEDs of one type: what the last one's logarithm said holds for this one too.
        diodes_[i].law =
            i > 0 && same_type(d, circuit.diodes[i - 1]) ? diodes_[i - 1].law : diode_law(d, thermal_V);
        diodes_[i].way = d.anode == diodes_[i].prepared_anode ? 1.0 : -1.0;
    }
}

void Newton::find_knees(double amps) {
    knee_A_ = amps;
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        Diode& d = diodes_[i];
        const DiodeLaw& before = diodes_[i > 0 ? i - 1 : 0].law;
        if (i > 0 && d.law.saturation_A == before.saturation_A && d.law.slope_V == before.slope_V &&
            d.law.series_ohm == before.series_ohm) {
            d.knee = diodes_[i - 1].knee;
        } else {
            d.knee = d.law.saturation_A > 0.0 ? at_current(d.law, amps) : DiodePoint{};
        }
    }
}

// The start decides only how many steps are taken. The cells are taken as loaded by all LEDs side by side,
// each dropping what the first one drops at 1 mA.
void Newton::start_cold(const Circuit& circuit) {
    double short_A = 0.0;
    double open_V = 0.0;
    for (const CellElement& c : circuit.cells) {
        short_A += c.open_V * siemens_of(c.ohm);
        open_V += c.open_V;
    }
    double guess_A = 1e-3;
    if (!diodes_.empty() && diodes_[0].law.saturation_A > 0.0 && open_V > 0.0) {
        const double drop_V = at_current(diodes_[0].law, 1e-3).volts;
        guess_A = short_A * std::fmax(1.0 - drop_V / open_V, 0.01) / static_cast<double>(diodes_.size());
    }
    find_knees(std::clamp(guess_A, 1e-6, 0.02));
    for (Diode& d : diodes_) {
        d.point = d.knee;
    }
}

void Newton::start_from(const Circuit& circuit, std::span<const double> node_V,
                        std::span<const double> diode_A) {
    assert(node_V.size() == at(circuit.node_count));
    find_knees(1e-3);
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        const DiodeElement& d = circuit.diodes[i];
        const DiodeLaw& law = diodes_[i].law;
        // A lit LED keeps its current rather than its voltage: that is what a change elsewhere changes least.
        const bool lit = i < diode_A.size() && law.saturation_A > 0.0 && diode_A[i] > law.saturation_A;
        diodes_[i].point =
            lit ? at_current(law, diode_A[i]) : at_voltage(law, node_V[at(d.anode)] - node_V[at(d.cathode)]);
    }
}

bool Newton::linear_solve() {
    const std::size_t n = diodes_.size();
    double* const siemens = per_diode_.data();
    double* const drawn = siemens + n;
    for (std::size_t i = 0; i < n; ++i) {
        const DiodePoint& p = diodes_[i].point;
        siemens[i] = p.siemens + kLeak_S;
        drawn[i] = diodes_[i].way * (p.amps - p.siemens * p.volts); // the tangent's current at 0 V
    }
    double* const across_V = drawn + n;
    if (!network_.solve({siemens, n}, {drawn, n}, {across_V, n})) {
        return false;
    }
    for (std::size_t i = 0; i < n; ++i) {
        across_V[i] *= diodes_[i].way;
    }
    return true;
}

double Newton::rounding_A(double siemens, double volts, double amps) {
    return 16.0 * std::numeric_limits<double>::epsilon() * (siemens * std::fabs(volts) + std::fabs(amps));
}

bool Newton::move_diode(Diode& diode, double across_V, const SolveOptions& options) {
    const DiodeLaw& law = diode.law;
    const DiodePoint old = diode.point;
    if (!(law.saturation_A > 0.0)) {
        diode.point.volts = across_V;
        return true;
    }
    const double tangent_A = old.amps + old.siemens * (across_V - old.volts);
    double off_A = 0.0; // how far the curve is from the tangent there
    double off_V = 0.0;
    const bool rises = across_V > old.volts;
    if (rises ? across_V > diode.knee.volts : across_V > 0.0 && old.amps > law.saturation_A) {
        // Along the current axis the curve is a logarithm: an LED that must go dark falls there by decades,
        // where along the voltage axis each step would divide its current by e only. Rising from the dark it
        // starts at the knee; falling it goes no further than the tangent's current can be told from
        // rounding.
        const double least_A = rises ? knee_A_ : kDeepestFall * old.amps;
        diode.point = at_current(law, std::fmax(tangent_A, least_A));
        off_V = std::fabs(across_V - diode.point.volts);
        off_A = std::fmax(off_V * diode.point.siemens, std::fabs(diode.point.amps - tangent_A));
    } else {
        diode.point = at_voltage(law, across_V);
        off_A = std::fabs(diode.point.amps - tangent_A);
        off_V = off_A / (diode.point.siemens + kLeak_S);
        const double most_A = std::fmax(kTopRise * std::fmax(old.amps, law.saturation_A), tangent_A);
        if (diode.point.amps > most_A) {
            diode.point = at_current(law, most_A);
        }
    }
    mismatch_A_ = std::fmax(mismatch_A_, off_A);
    return off_V <= options.step_V &&
           off_A <= options.residual_A + rounding_A(diode.point.siemens, across_V, tangent_A);
}

SolveExit Newton::limited_newton(const SolveOptions& options, int most, int& iterations) {
    const std::size_t n = diodes_.size();
    const double* const across_V = per_diode_.data() + 2 * n;
    while (iterations < most) {
        ++iterations;
        if (!linear_solve()) {
            return SolveExit::singular;
        }
        mismatch_A_ = 0.0;
        bool settled = true;
        for (std::size_t i = 0; i < n; ++i) {
            settled &= move_diode(diodes_[i], across_V[i], options);
        }
        if (settled) {
            return SolveExit::converged;
        }
    }
    return SolveExit::iteration_limit;
}

void Newton::read_off(const Circuit& circuit, Solution& out) {
    const std::size_t nodes = at(circuit.node_count);
    out.node_V.resize(nodes);
    out.diode_A.resize(diodes_.size());
    out.cell_A.resize(circuit.cells.size());
    if (nodes > 0) {
        out.node_V[0] = 0.0;
        network_.node_voltages({out.node_V.data() + 1, nodes - 1});
    }
    const double* const volts = out.node_V.data();
    node_V_.assign(nodes, 0.0);
    double* const into_A = node_V_.data();
    const double* siemens = fixed_.data();
    double strongest = 0.0;
    for (const ResistorElement& r : circuit.resistors) {
        const double amps = (volts[r.a] - volts[r.b]) * *siemens;
        strongest = std::fmax(strongest, *siemens++);
        into_A[r.a] -= amps;
        into_A[r.b] += amps;
    }
    for (std::size_t i = 0; i < circuit.cells.size(); ++i) {
        const CellElement& c = circuit.cells[i];
        const double amps = (c.open_V - (volts[c.plus] - volts[c.minus])) * *siemens++;
        into_A[c.plus] += amps;
        into_A[c.minus] -= amps;
        out.cell_A[i] = amps;
    }
    for (std::size_t i = 0; i < diodes_.size(); ++i) {
        const DiodeElement& d = circuit.diodes[i];
        const double amps = diodes_[i].point.amps;
        out.diode_A[i] = amps;
        into_A[d.anode] -= amps;
        into_A[d.cathode] += amps;
    }
    out.residual_A = mismatch_A_;
    for (const double amps : node_V_) {
        out.residual_A = std::fmax(out.residual_A, std::fabs(amps));
    }
}

} // namespace lanternleaf
