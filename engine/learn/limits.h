// Limits: what a reading at a craft table can be, and the words every source opens with. Internal to learn/.
#pragma once

#include <string>

namespace lanternleaf::learn {

inline constexpr int kMostLayers = 20;
inline constexpr double kLeastLayer_mm = 0.3; ///< thinner is paper
inline constexpr double kMostLayer_mm = 12.0; ///< thicker than any card's edge
inline constexpr double kMostLeads_ohm = 5.0; ///< more: a broken lead or a flat meter
inline constexpr double kLeastOverlap_mm = 2.0;
inline constexpr double kMostOverlap_mm = 100.0;
inline constexpr double kMostBetween_mm = 2000.0;
inline constexpr double kMostReading_ohm = 1e8; ///< more than a hand meter shows
/// How far a reading may lie below what leads and tape have by themselves: the last digits of two readings.
inline constexpr double kMeterSlack_ohm = 0.2;

/// "measured by the maker on 2026-05-04: ", from the time in UTC.
[[nodiscard]] std::string measured_on(const std::string& at);
[[nodiscard]] bool usable(double value);

} // namespace lanternleaf::learn
