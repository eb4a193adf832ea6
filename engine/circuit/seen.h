// Seen: luminous intensity as an eye takes it, 0..1 of "as bright as at 5 mA".
// Exists so that halos, bars and words agree: a light with an eighth of the intensity looks half as bright.
#pragma once

#include <algorithm>
#include <cmath>

namespace lanternleaf {

/// Stevens' exponent for the brightness of a lit patch seen in the dark, which a light behind paper is: 0.33
/// (B. Bauer, Psychological Record 59 (2009) 171-185).
inline constexpr double kStevensExponent = 0.33;

/// From `Light::brightness` (intensity against that LED's at 5 mA), held at 1.
[[nodiscard]] inline double seen_brightness(double brightness) {
    return brightness <= 0.0 ? 0.0 : std::min(1.0, std::pow(brightness, kStevensExponent));
}

} // namespace lanternleaf
