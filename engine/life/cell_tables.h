// Cell tables: what two makers published of the CR2032, read off their charts. Exists so that the figures
// stand on one page with their sources and the model that uses them on another. Private to this module.
//
//   FDK:       FDK Corp., "Cell Type CR2032 Specifications", 1 page (2010). Read off to +-5 mV.
//   Panasonic: Panasonic, "Lithium Handbook" (August 2005), CR2032 page. Read off to +-10 mV, capacity +-2
//   mAh.
#pragma once

#include <array>
#include <span>
#include <utility>

namespace lanternleaf::cell_tables {

using Point = std::pair<double, double>;

/// One maker's continuous discharge at one temperature.
struct Discharge {
    double celsius = 0.0;
    std::span<const Point> mAh_V;   ///< through kLoad_ohm, down to 2.0 V
    double chart_mAh = 0.0;         ///< of the capacity chart at kLoad_ohm, to 2.0 V
    std::span<const Point> ohm_mAh; ///< load and capacity to 2.0 V, rising load; may be empty
    double half_ohm = 0.0; ///< slope of voltage against continuous current at half depth; 0: not published
};

struct Maker {
    const char* name;
    double rated_celsius;
    std::span<const Discharge> discharges; ///< rising temperature
};

/// The load of every curve here, and the end of discharge of every capacity.
inline constexpr double kLoad_ohm = 15'000.0;
inline constexpr double kEnd_V = 2.0;

[[nodiscard]] std::span<const Maker> makers();

/// Ends of 15 s pulses of 10 and 50 mA, 23 C (FDK): the straight line through both.
struct Pulse {
    double mAh = 0.0;
    double open_V = 0.0;
    double ohm = 0.0;
};

[[nodiscard]] std::span<const Pulse> pulses();

/// Hardly loaded: FDK through 1 Mohm, mAh and V.
[[nodiscard]] std::span<const Point> idle();

/// What the pulses' cell gives in all (FDK, 15 kohm, 23 C).
inline constexpr double kPulsed_mAh = 239.7;

} // namespace lanternleaf::cell_tables
