// Load line: what a card draws at every voltage the cell could have, solved once. Exists because a cell of
// any age, fast or steady, cold or stacked, meets the same card on the same line: after the table, a step of
// the slider is one crossing of two curves and needs no circuit.
#pragma once

#include "card/card.h"
#include "circuit/solve.h"
#include "life/led_condition.h"

#include <span>
#include <vector>

namespace lanternleaf {

class LoadLine {
public:
    /// Solves `circuit` (built from the card, its cell element included) at voltages from 0 to `most_V` at
    /// the holder's contacts. `solver` must have been prepared with a circuit of the same topology.
    LoadLine(const Circuit& circuit, const Card& card, const Parts& parts, const LedCondition& condition,
             double most_V, PreparedSolver& solver);

    struct Point {
        double cell_V = 0.0;
        double cell_mA = 0.0;
    };

    /// Where the line crosses a cell's own: open_V - I ohm = V. Within 0.1 % of the solved circuit.
    [[nodiscard]] Point meet(const CellState& cell) const;
    /// Current of one LED, and its voltage at the pads, with the cell at this voltage.
    [[nodiscard]] double led_mA(int led, double cell_V) const;
    [[nodiscard]] double led_V(int led, double cell_V) const;

    [[nodiscard]] int led_count() const { return led_count_; }

    [[nodiscard]] const LedCondition& condition() const { return condition_; }

    /// False when a solve did not converge: nothing here is then to be relied on.
    [[nodiscard]] bool ok() const { return ok_; }

private:
    // Per row: current at the cell, then per LED current, each as asinh(I / 1 nA) with its slope by voltage;
    // then LED voltages, as they are.
    struct Cell {
        double y = 0.0;
        double slope = 0.0;
    };

    struct Place {
        std::size_t row;
        double part;
    };

    [[nodiscard]] Place place_of(double cell_V) const;
    [[nodiscard]] double curve(std::size_t column, Place place) const;
    void find_slopes();

    LedCondition condition_;
    int led_count_ = 0;
    std::size_t columns_ = 0;
    double coarse_V_ = 0.0; ///< steps below knee_, and above it
    double fine_V_ = 0.0;
    std::size_t coarse_rows_ = 0;
    std::vector<double> volts_;
    std::vector<Cell> table_;   ///< rows x columns
    std::vector<double> led_V_; ///< rows x LEDs
    bool ok_ = true;
};

} // namespace lanternleaf
