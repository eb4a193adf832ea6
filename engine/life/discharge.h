// Discharge: the charge a card has drawn from its cell against hours of light. Exists apart from the meaning
// of it (life.h), and takes any load: a table or the solver itself, so that each checks the other.
#pragma once

#include "life/cell_model.h"
#include "life/load_line.h"

#include <functional>
#include <vector>

namespace lanternleaf {

/// A press is seconds long and the cell rests between: the fast resistance holds. Left on, it grows from
/// fast to steady (kSettling_h).
enum class Use { press, left_on };

struct DischargeOptions {
    Use use = Use::left_on;
    double most_h = 5000.0; ///< of light
    double dark_mA = 0.02;  ///< stop when the card draws less in all: no LED is then lit
    /// Error a step may make, in mAh: this and a thousandth of the charge drawn.
    double tolerance_mAh = 0.02;
};

struct DischargeStep {
    double hours = 0.0;
    double drawn_mAh = 0.0;
    double mA = 0.0; ///< drawn at that moment
};

struct Discharge {
    std::vector<DischargeStep> steps; ///< at least one, rising hours
    int evaluations = 0;              ///< how often the load was asked

    /// Charge drawn after these hours of light: cubic between steps, level after the last.
    [[nodiscard]] double drawn_mAh(double hours) const;
};

/// Current in mA that the card draws from a cell in this state.
using Load = std::function<double(const CellState&)>;

/// dq/dt = I(q, t), stepped with the pair of second and third order of P. Bogacki and L. F. Shampine, "A 3(2)
/// pair of Runge-Kutta formulas", Appl. Math. Lett. 2 (1989) 321-325; step length from their difference.
[[nodiscard]] Discharge discharge(const CellModel& cell, const Load& load, const DischargeOptions& options);

/// How far the resistance has grown: 0 at the switch's closing, 1 after hours.
[[nodiscard]] double settled_after(Use use, double hours);

/// A load that solves the circuit every time: what the table of a LoadLine is tested against.
[[nodiscard]] Load solved_load(const Circuit& circuit, PreparedSolver& solver);

} // namespace lanternleaf
