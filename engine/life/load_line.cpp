#include "life/load_line.h"

#include "base/tolerance.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// Below the first no LED of any colour carries a microampere. The step above it is small enough that the
// curve between two rows is within 0.1 % (tested).
constexpr double kDark_V = 1.2;
constexpr int kDarkRows = 12;
constexpr double kStep_V = 0.025;
/// asinh of a current in units of this is straight where an LED is dark and a logarithm where it is lit.
constexpr double kUnit_mA = 1e-6;

} // namespace

LoadLine::LoadLine(const Circuit& given, const Card& card, const Parts& parts, const LedCondition& condition,
                   double most_V, PreparedSolver& solver)
    : condition_(condition), led_count_(static_cast<int>(card.leds.size())), columns_(1 + card.leds.size()) {
    Circuit circuit = given;
    apply_condition(circuit, card, parts, condition);
    const int fine_rows = std::max(1, static_cast<int>(std::ceil((most_V - kDark_V) / kStep_V)));
    coarse_V_ = kDark_V / kDarkRows;
    fine_V_ = kStep_V;
    coarse_rows_ = kDarkRows;
    for (int i = 0; i < kDarkRows; ++i) {
        volts_.push_back(coarse_V_ * i);
    }
    for (int i = 0; i <= fine_rows; ++i) {
        volts_.push_back(kDark_V + kStep_V * i);
    }
    table_.resize(volts_.size() * columns_);
    led_V_.resize(volts_.size() * card.leds.size());
    if (circuit.cells.empty()) {
        return;
    }
    circuit.cells.front().ohm = tolerance::kLeastResistance_ohm;
    // Currents to a millionth are plenty here; the solver's own mark is a thousand times finer.
    SolveOptions options;
    options.residual_A = 1e-11;
    options.step_V = 1e-9;
    Solution solution;
    // From the top down: a warm start has only to fall, and a driver that has stopped stays so.
    for (std::size_t row = volts_.size(); row-- > 0;) {
        circuit.cells.front().open_V = volts_[row];
        bool again = true;
        while (again) {
            solver.solve(circuit, options, row + 1 < volts_.size(), solution);
            again = false;
            for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
                DiodeElement& diode = circuit.diodes[i];
                if (diode.led < 0) {
                    continue;
                }
                const double volts = solution.node_V[static_cast<std::size_t>(diode.anode)] -
                                     solution.node_V[static_cast<std::size_t>(diode.cathode)];
                if (phase_of(type_of(card, parts, diode.led), condition.phase) != nullptr &&
                    volts < type_of(card, parts, diode.led).driver_least_V && diode.saturation_A > 0.0) {
                    diode.saturation_A = 0.0;
                    again = true;
                }
                const auto led = static_cast<std::size_t>(diode.led);
                table_[row * columns_ + 1 + led].y = std::asinh(1e3 * solution.diode_A[i] / kUnit_mA);
                led_V_[row * card.leds.size() + led] = volts;
            }
        }
        ok_ = ok_ && solution.ok();
        table_[row * columns_].y = std::asinh(1e3 * solution.cell_A.front() / kUnit_mA);
    }
    find_slopes();
}

void LoadLine::find_slopes() {
    // Fritsch and Butland's harmonic mean, as in SmoothCurve: no overshoot where a driver stops.
    const std::size_t rows = volts_.size();
    for (std::size_t row = 0; row < rows; ++row) {
        for (std::size_t column = 0; column < columns_; ++column) {
            const auto secant = [&](std::size_t r) {
                return (table_[(r + 1) * columns_ + column].y - table_[r * columns_ + column].y) /
                       (volts_[r + 1] - volts_[r]);
            };
            double& slope = table_[row * columns_ + column].slope;
            if (row == 0 || row + 1 == rows) {
                slope = secant(row == 0 ? 0 : rows - 2);
                continue;
            }
            const double before = secant(row - 1);
            const double after = secant(row);
            if (before * after > 0.0) {
                const double wide = volts_[row + 1] - volts_[row - 1];
                const double near = (wide + volts_[row + 1] - volts_[row]) / (3.0 * wide);
                slope = before * after / (near * after + (1.0 - near) * before);
            }
        }
    }
}

LoadLine::Place LoadLine::place_of(double cell_V) const {
    const double v = std::clamp(cell_V, 0.0, volts_.back());
    const double step =
        v < kDark_V ? v / coarse_V_ : static_cast<double>(coarse_rows_) + (v - kDark_V) / fine_V_;
    const std::size_t row = std::min(static_cast<std::size_t>(step), volts_.size() - 2);
    return {row, std::clamp((v - volts_[row]) / (volts_[row + 1] - volts_[row]), 0.0, 1.0)};
}

double LoadLine::curve(std::size_t column, Place place) const {
    const Cell& a = table_[place.row * columns_ + column];
    const Cell& b = table_[(place.row + 1) * columns_ + column];
    const double h = volts_[place.row + 1] - volts_[place.row];
    const double t = place.part;
    const double u = 1.0 - t;
    const double y =
        u * u * ((1.0 + 2.0 * t) * a.y + t * h * a.slope) + t * t * ((1.0 + 2.0 * u) * b.y - u * h * b.slope);
    return kUnit_mA * std::sinh(y);
}

LoadLine::Point LoadLine::meet(const CellState& cell) const {
    // What the line draws rises with voltage and what the cell can give falls: one crossing. The row by
    // halving, the place in it by the Illinois form of false position.
    const auto excess_V = [&](Place place) {
        const double h = volts_[place.row + 1] - volts_[place.row];
        return volts_[place.row] + place.part * h + 1e-3 * curve(0, place) * cell.ohm - cell.open_V;
    };
    std::size_t low = 0;
    std::size_t high = volts_.size() - 1;
    while (high - low > 1) {
        const std::size_t middle = (low + high) / 2;
        const double mA = kUnit_mA * std::sinh(table_[middle * columns_].y);
        (volts_[middle] + 1e-3 * mA * cell.ohm > cell.open_V ? high : low) = middle;
    }
    double from = 0.0;
    double to = 1.0;
    double at_from = excess_V({low, from});
    double at_to = excess_V({low, to});
    double part = at_from >= 0.0 ? 0.0 : 1.0;
    int last = 0;
    for (int i = 0; i < 40 && at_from < 0.0 && at_to > 0.0; ++i) {
        part = (from * at_to - to * at_from) / (at_to - at_from);
        const double here = excess_V({low, part});
        if (std::fabs(here) < 1e-9) {
            break;
        }
        if (here > 0.0) {
            to = part;
            at_to = here;
            at_from *= last == 1 ? 0.5 : 1.0;
            last = 1;
        } else {
            from = part;
            at_from = here;
            at_to *= last == -1 ? 0.5 : 1.0;
            last = -1;
        }
    }
    const Place place{low, part};
    return {volts_[low] + part * (volts_[low + 1] - volts_[low]), curve(0, place)};
}

double LoadLine::led_mA(int led, double cell_V) const {
    return curve(1 + static_cast<std::size_t>(led), place_of(cell_V));
}

double LoadLine::led_V(int led, double cell_V) const {
    const Place place = place_of(cell_V);
    const auto leds = static_cast<std::size_t>(led_count_);
    const double a = led_V_[place.row * leds + static_cast<std::size_t>(led)];
    return a + place.part * (led_V_[(place.row + 1) * leds + static_cast<std::size_t>(led)] - a);
}

} // namespace lanternleaf
