// Wright's omega function: the w with w + ln w = z, which is the current of a diode behind a resistor in its
// own units. Exists because exp(z) in Lambert's W overflows at a few volts where omega does not.
#pragma once

namespace lanternleaf {

/// w > 0 with w + ln w = z, for any real z, to a few units in the last place (of z where that is larger).
/// Iteration of F. N. Fritsch, R. E. Shafer and W. P. Crowley, "Algorithm 443: Solution of the transcendental
/// equation w e^w = x", Commun. ACM 16 (1973) 123-124, in its logarithmic form.
[[nodiscard]] double wright_omega(double z);

} // namespace lanternleaf
