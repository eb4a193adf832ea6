// Readout: numbers in the words a maker reads. The one place where figures are rounded for people, so that a
// finding, a step, a screen and a printed sheet never show two roundings of the same quantity.
#pragma once

#include <string>

namespace lanternleaf {

/// "12 mm", "1.5 mm": at most one decimal, none when it would be .0.
[[nodiscard]] std::string readout_mm(double mm);
/// "0.3 Ω", "12 Ω", "1.2 kΩ", "1.5 MΩ"; two significant figures below 10 Ω, never finer than 0.1 Ω
/// (what a hand meter shows).
[[nodiscard]] std::string readout_ohm(double ohm);
/// "0.1–0.6 Ω": a range in one unit, joined by an en dash.
[[nodiscard]] std::string readout_ohm_range(double low_ohm, double high_ohm);
/// "2.85 V": two decimals, as a hand meter shows.
[[nodiscard]] std::string readout_volts(double volts);
/// "4.2 mA", "12 mA", "35 µA".
[[nodiscard]] std::string readout_mA(double mA);
/// "22 h", "about 40 min" below one hour.
[[nodiscard]] std::string readout_hours(double hours);
/// "68 %": of a fraction 0..1.
[[nodiscard]] std::string readout_percent(double fraction);
/// Plain number, at most `decimals` places, trailing zeros dropped, never "-0".
[[nodiscard]] std::string readout_number(double value, int decimals);

} // namespace lanternleaf
