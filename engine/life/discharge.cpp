#include "life/discharge.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <memory>

namespace lanternleaf {

double settled_after(Use use, double hours) {
    return use == Use::press ? 0.0 : 1.0 - std::exp(-hours / kSettling_h);
}

double Discharge::drawn_mAh(double hours) const {
    assert(!steps.empty());
    if (hours <= steps.front().hours) {
        return steps.front().drawn_mAh;
    }
    if (hours >= steps.back().hours) {
        return steps.back().drawn_mAh;
    }
    const auto above = std::upper_bound(steps.begin(), steps.end(), hours,
                                        [](double h, const DischargeStep& s) { return h < s.hours; });
    const DischargeStep& b = *above;
    const DischargeStep& a = *(above - 1);
    const double h = b.hours - a.hours;
    const double t = (hours - a.hours) / h;
    const double u = 1.0 - t;
    return u * u * ((1.0 + 2.0 * t) * a.drawn_mAh + t * h * a.mA) +
           t * t * ((1.0 + 2.0 * u) * b.drawn_mAh - u * h * b.mA);
}

Discharge discharge(const CellModel& cell, const Load& load, const DischargeOptions& options) {
    Discharge result;
    const auto rate = [&](double hours, double drawn_mAh) {
        ++result.evaluations;
        return std::fmax(load(cell.at(drawn_mAh, settled_after(options.use, hours))), 0.0);
    };
    double t = 0.0;
    double q = 0.0;
    double k1 = rate(t, q);
    result.steps.push_back({t, q, k1});
    double h = std::min(options.use == Use::left_on ? 0.25 * kSettling_h : 0.5, options.most_h);
    constexpr int kMostSteps = 4000;
    while (t < options.most_h && k1 > options.dark_mA && result.evaluations < kMostSteps) {
        h = std::min(h, options.most_h - t);
        const double k2 = rate(t + 0.5 * h, q + 0.5 * h * k1);
        const double k3 = rate(t + 0.75 * h, q + 0.75 * h * k2);
        const double next = q + h * (2.0 * k1 + 3.0 * k2 + 4.0 * k3) / 9.0;
        const double k4 = rate(t + h, next);
        const double error = h * std::fabs(-5.0 / 72.0 * k1 + k2 / 12.0 + k3 / 9.0 - k4 / 8.0);
        const double allowed = options.tolerance_mAh + 1e-3 * next;
        const double ratio = error / allowed;
        constexpr double kLeastStep_h = 1e-4;
        if (ratio <= 1.0 || h <= kLeastStep_h) {
            t += h;
            q = next;
            k1 = k4;
            result.steps.push_back({t, q, k1});
        }
        const double factor = ratio > 0.0 ? 0.9 * std::pow(ratio, -1.0 / 3.0) : 4.0;
        h = std::max(h * std::clamp(factor, 0.2, 4.0), kLeastStep_h);
    }
    return result;
}

Load solved_load(const Circuit& circuit, PreparedSolver& solver) {
    struct Held {
        Circuit circuit;
        Solution solution;
        bool warm = false;
    };

    auto held = std::make_shared<Held>();
    held->circuit = circuit;
    return [held, &solver](const CellState& cell) {
        if (held->circuit.cells.empty()) {
            return 0.0;
        }
        held->circuit.cells.front().open_V = cell.open_V;
        held->circuit.cells.front().ohm = cell.ohm;
        solver.solve(held->circuit, {}, held->warm, held->solution);
        held->warm = held->solution.ok();
        return 1e3 * held->solution.cell_A.front();
    };
}

} // namespace lanternleaf
