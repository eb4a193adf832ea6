#include "life/cell_model.h"

#include "life/cell_tables.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace lanternleaf {

namespace {

using cell_tables::Point;

const cell_tables::Maker& maker_at(int maker) {
    assert(maker >= 0 && maker < cell_maker_count());
    return cell_tables::makers()[static_cast<std::size_t>(maker)];
}

/// The figures the tables stand for; a parts file's cell is scaled by its own against these.
constexpr double kOpen_V = 3.096;   // FDK, fresh, from 15 s pulses
constexpr double kFast_ohm = 14.3;  // the same
constexpr double kSteady_ohm = 113; // Panasonic, half depth
constexpr double kRated_mAh = 220;  // Fanso, 15 kohm to 2.0 V; FDK 240, Panasonic 215

/// Steady resistance at a temperature against 20 C, by Panasonic's three slopes (233, 113, 74 ohm at -10, 20,
/// 60 C): straight in the logarithm between and beyond them. Taken for FDK's cell and for the fast
/// resistance too, whose sheets do not give it.
double cold_factor(double celsius) {
    const auto slopes = maker_at(1).discharges;
    const std::size_t i = celsius < slopes[1].celsius ? 0 : 1;
    const double part = (celsius - slopes[i].celsius) / (slopes[i + 1].celsius - slopes[i].celsius);
    return slopes[i].half_ohm / slopes[1].half_ohm *
           std::pow(slopes[i + 1].half_ohm / slopes[i].half_ohm, part);
}

// Past 2.0 V nothing is published; the voltage is let fall as steeply as it did there, to nothing of use.
constexpr Point kAfterEnd_V[] = {{1.02, 1.2}, {1.06, 0.5}};

/// Against depth: mAh over all that the curve gives.
SmoothCurve voltage_curve(std::span<const Point> mAh_V) {
    std::vector<Point> points;
    const double all_mAh = mAh_V.back().first;
    for (const auto& [mAh, volts] : mAh_V) {
        points.emplace_back(mAh / all_mAh, volts);
    }
    points.insert(points.end(), std::begin(kAfterEnd_V), std::end(kAfterEnd_V));
    return SmoothCurve(points);
}

/// A capacity C to 2.0 V through a load L says what the resistance is at that depth: with V the voltage
/// through 15 kohm there, E = V (1 + R / 15 kohm) and 2.0 V = E / (1 + R / L).
double resistance_at_end(double loaded_V, double load_ohm) {
    using namespace cell_tables;
    return (loaded_V - kEnd_V) / (kEnd_V / load_ohm - loaded_V / kLoad_ohm);
}

SmoothCurve log_resistance_curve(const cell_tables::Discharge& row, const SmoothCurve& loaded_V,
                                 double factor) {
    std::vector<Point> points;
    points.emplace_back(0.0, std::log(kFreshSteady_ohm * factor));
    if (row.half_ohm > 0.0) {
        points.emplace_back(0.5, std::log(row.half_ohm));
    }
    for (const auto& [ohm, mAh] : row.ohm_mAh) {
        const double depth = mAh / row.chart_mAh;
        const double log_ohm = std::log(resistance_at_end(loaded_V.at(depth), ohm));
        if (depth > points.back().first && log_ohm > points.back().second) {
            points.emplace_back(depth, log_ohm);
        }
    }
    const double last = points.back().second;
    points.emplace_back(1.0, last + std::log(1.5)); // estimate: still growing as it did
    points.emplace_back(1.06, last + std::log(3.0));
    return SmoothCurve(points);
}

} // namespace

int cell_maker_count() {
    return static_cast<int>(cell_tables::makers().size());
}

const char* cell_maker_name(int maker) {
    return maker_at(maker).name;
}

CellCurve::CellCurve(int maker, double celsius) {
    const cell_tables::Maker& known = maker_at(maker);
    const auto& rows = known.discharges;
    celsius_ = std::clamp(celsius, rows.front().celsius, rows.back().celsius);

    // The row that says how resistance grows; makers that give it at one temperature only are scaled.
    const auto make = [&](const cell_tables::Discharge& row) {
        Table table;
        table.celsius = row.celsius;
        table.capacity_mAh = row.mAh_V.back().first;
        table.loaded_V = voltage_curve(row.mAh_V);
        const auto known_loads = std::find_if(rows.begin(), rows.end(), [&](const cell_tables::Discharge& r) {
            return !r.ohm_mAh.empty() && (r.celsius == row.celsius || row.ohm_mAh.empty());
        });
        assert(known_loads != rows.end());
        const bool own = known_loads->celsius == row.celsius;
        const double own_factor = cold_factor(known_loads->celsius);
        table.log_ohm = log_resistance_curve(
            *known_loads, own ? table.loaded_V : voltage_curve(known_loads->mAh_V), own_factor);
        return std::pair(table, own ? 0.0 : std::log(cold_factor(row.celsius) / own_factor));
    };
    double log_shift = 0.0;
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
        if (celsius_ >= rows[i].celsius && celsius_ <= rows[i + 1].celsius) {
            auto [cold, cold_shift] = make(rows[i]);
            auto [warm, warm_shift] = make(rows[i + 1]);
            blend_ = (celsius_ - cold.celsius) / (warm.celsius - cold.celsius);
            log_shift = cold_shift + blend_ * (warm_shift - cold_shift);
            tables_ = {std::move(cold), std::move(warm)};
            break;
        }
    }
    assert(tables_.size() == 2);
    log_shift_ = log_shift;
    capacity_mAh_ = tables_[0].capacity_mAh + blend_ * (tables_[1].capacity_mAh - tables_[0].capacity_mAh);
    for (const cell_tables::Discharge& row : rows) {
        if (row.celsius == known.rated_celsius) {
            rated_V_ = voltage_curve(row.mAh_V);
        }
    }

    // Fast: the three pulses, then the shape of FDK's discharge; resistance beyond them is an estimate that
    // reaches 30 ohm at 85 % (the end of use in TI SWRA349, quoted) and doubles to the end.
    std::vector<Point> volts;
    std::vector<Point> ohms;
    for (const cell_tables::Pulse& pulse : cell_tables::pulses()) {
        volts.emplace_back(pulse.mAh / cell_tables::kPulsed_mAh, pulse.open_V);
        ohms.emplace_back(pulse.mAh / cell_tables::kPulsed_mAh, pulse.ohm);
    }
    const auto& fdk = maker_at(0);
    const SmoothCurve shape = voltage_curve(fdk.discharges[2].mAh_V);
    const auto [last_depth, last_V] = volts.back();
    for (const double depth : {0.76, 0.85, 0.92, 0.96, 0.985, 1.0, 1.02, 1.06}) {
        volts.emplace_back(depth, std::fmax(last_V + shape.at(depth) - shape.at(last_depth), 0.4));
    }
    ohms.insert(ohms.end(), {{0.85, 30.0}, {0.95, 42.0}, {1.0, 60.0}, {1.06, 120.0}});
    idle_V_ = voltage_curve(cell_tables::idle());
    fast_V_ = SmoothCurve(volts);
    fast_ohm_ = SmoothCurve(ohms);
    fast_factor_ = cold_factor(celsius_) / cold_factor(fdk.rated_celsius);
}

double CellCurve::loaded_V(double depth) const {
    const double cold = tables_[0].loaded_V.at(depth);
    return cold + blend_ * (tables_[1].loaded_V.at(depth) - cold);
}

CellState CellCurve::fast(double depth) const {
    const double warmer_V = loaded_V(depth) - rated_V_.at(depth);
    return {std::fmax(fast_V_.at(depth) + warmer_V, 0.0), fast_ohm_.at(depth) * fast_factor_};
}

CellState CellCurve::steady(double depth) const {
    const double cold = tables_[0].log_ohm.at(depth);
    const double ohm = std::exp(cold + blend_ * (tables_[1].log_ohm.at(depth) - cold) + log_shift_);
    const double loaded = loaded_V(depth);
    const double open_V = loaded * (1.0 + ohm / cell_tables::kLoad_ohm);
    // No cell stands above the hardly loaded one (warmed by as much as the loaded one is). Near the end the
    // polarisation is not a straight line, and the resistance of heavy loads would put it there.
    const double idle_V = idle_V_.at(depth) + std::fmax(loaded - rated_V_.at(depth), 0.0);
    return {std::fmin(open_V, std::fmax(idle_V, loaded)), ohm};
}

CellModel::CellModel(const CellType& type, int count, int maker, double celsius, double stored_mAh)
    : curve_(maker, celsius), maker_(maker), voltage_factor_(count * type.open_V / kOpen_V),
      fast_factor_(count * type.series_ohm / kFast_ohm),
      steady_factor_(type.steady_ohm > 0.0 ? count * type.steady_ohm / kSteady_ohm : fast_factor_),
      capacity_mAh_(curve_.capacity_mAh() * type.capacity_mAh / kRated_mAh), stored_mAh_(stored_mAh) {
    const auto off = [](double value, double reference) {
        return std::fabs(value - reference) > 0.01 * reference;
    };
    estimate_ = off(type.open_V, kOpen_V) || off(type.series_ohm, kFast_ohm) ||
                off(type.steady_ohm, kSteady_ohm) || off(type.capacity_mAh, kRated_mAh);
}

CellState CellModel::at(double drawn_mAh, double settled) const {
    const double depth = this->depth(drawn_mAh);
    CellState state{0.0, 0.0};
    if (settled < 1.0) {
        const CellState fast = curve_.fast(depth);
        state.open_V += (1.0 - settled) * fast.open_V * voltage_factor_;
        state.ohm += (1.0 - settled) * fast.ohm * fast_factor_;
    }
    if (settled > 0.0) {
        const CellState steady = curve_.steady(depth);
        state.open_V += settled * steady.open_V * voltage_factor_;
        state.ohm += settled * steady.ohm * steady_factor_;
    }
    return state;
}

double self_discharge_mAh(const CellType& type, double years, double per_year) {
    return type.capacity_mAh * (1.0 - std::pow(1.0 - per_year, std::fmax(years, 0.0)));
}

} // namespace lanternleaf
