// Cell model: open-circuit voltage and resistance of a coin cell against the charge it has given, the time
// since the switch closed and the temperature. Exists so that a press of seconds and a light left on for
// hours are each met by the right resistance, and so that two makers' cells show as a range, not as one false
// number.
//
//   fast   15 s after the switch closes: FDK's pulses.
//   steady after hours: both makers' discharge through 15 kohm, and their capacities through heavier loads,
//          which fix how the resistance grows towards the end.
#pragma once

#include "card/parts.h"
#include "circuit/circuit.h"
#include "life/smooth_curve.h"

#include <vector>

namespace lanternleaf {

/// How many makers' cells are known: each is one end of a range.
[[nodiscard]] int cell_maker_count();
[[nodiscard]] const char* cell_maker_name(int maker);

/// How long the resistance takes to grow from fast to steady: an exponential of this time. From one bench run
/// (J. S. Cook, Embedded Computing Design, 2025-01-03): 9 mA bring a fresh CR2032 below 2.5 V in about half
/// an hour.
inline constexpr double kSettling_h = 0.2;
/// Steady resistance of a fresh CR2032, from the same run: (3.05 V - 2.5 V) / 9 mA.
inline constexpr double kFreshSteady_ohm = 60.0;
/// What a cell on the shelf loses a year: about 1 % (sellers' text for CR cells), at worst 3 % (a maker's
/// acceptance limit, Coovee CR2450).
inline constexpr double kSelfDischarge_per_year = 0.01;
inline constexpr double kWorstSelfDischarge_per_year = 0.03;

/// One maker's CR2032 at one temperature, against depth of discharge (1: empty to 2.0 V through 15 kohm).
/// Temperatures outside the maker's charts are taken as the nearest one in them.
class CellCurve {
public:
    CellCurve(int maker, double celsius);

    [[nodiscard]] double capacity_mAh() const { return capacity_mAh_; }

    [[nodiscard]] double celsius() const { return celsius_; } ///< as taken

    [[nodiscard]] CellState fast(double depth) const;
    [[nodiscard]] CellState steady(double depth) const;

private:
    /// Voltage through 15 kohm and the logarithm of the steady resistance.
    struct Table {
        double celsius = 0.0;
        double capacity_mAh = 0.0;
        SmoothCurve loaded_V;
        SmoothCurve log_ohm;
    };

    [[nodiscard]] double loaded_V(double depth) const;

    std::vector<Table> tables_; ///< one, or two to blend
    double blend_ = 0.0;        ///< share of the second
    double celsius_ = 0.0;
    double capacity_mAh_ = 0.0;
    double log_shift_ = 0.0; ///< of the resistance, where the maker gives it at another temperature only
    SmoothCurve rated_V_; ///< at the maker's rated temperature, for the fast curve's shift with temperature
    SmoothCurve idle_V_;
    SmoothCurve fast_V_;
    SmoothCurve fast_ohm_;
    double fast_factor_ = 1.0; ///< resistance against 23 C
};

/// The cell or stack of a card. Other cells than the CR2032 are scaled from it: voltage, fast and steady
/// resistance and capacity each by what the parts file gives against the CR2032's; `estimate()` says so.
class CellModel {
public:
    /// `count` cells in series, each having lost `stored_mAh` before the first light.
    CellModel(const CellType& type, int count, int maker, double celsius, double stored_mAh = 0.0);

    /// `settled` 0: seconds after the switch closed, 1: hours.
    [[nodiscard]] CellState at(double drawn_mAh, double settled) const;

    [[nodiscard]] double capacity_mAh() const { return capacity_mAh_; }

    [[nodiscard]] double depth(double drawn_mAh) const { return (drawn_mAh + stored_mAh_) / capacity_mAh_; }

    [[nodiscard]] int maker() const { return maker_; }

    [[nodiscard]] bool estimate() const { return estimate_; }

    [[nodiscard]] double celsius() const { return curve_.celsius(); }

private:
    CellCurve curve_;
    int maker_;
    double voltage_factor_;
    double fast_factor_;
    double steady_factor_;
    double capacity_mAh_;
    double stored_mAh_;
    bool estimate_;
};

/// What a cell has lost after `years` on the shelf.
[[nodiscard]] double self_discharge_mAh(const CellType& type, double years, double per_year);

} // namespace lanternleaf
