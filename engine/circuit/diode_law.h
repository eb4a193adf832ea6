// Diode law: one LED, its series resistance included, as a single two-terminal element with a current for
// every voltage. Exists so that the circuit needs no extra node inside each LED and the Newton iteration sees
// a curve that straightens out at high current instead of an exponential that overflows.
#pragma once

namespace lanternleaf {

struct DiodeElement;

/// What the iteration needs to know of a diode, worked out once per solve.
///
/// With a = ideality Vt, r = Rs Is / a and I = Is (w/r - 1), the law v = a ln(1 + I/Is) + I Rs becomes
/// w + ln w = v/a + r + ln r, so w is Wright's omega of that: the exact solution of T. C. Banwell and A.
/// Jayakumar, "Exact analytical solution for current flow through diode with series resistance", Electron.
/// Lett. 36 (2000) 291-292, written so that it cannot overflow.
struct DiodeLaw {
    double saturation_A = 0.0; ///< 0: an LED that has burnt open, carries nothing
    double slope_V = 0.0;      ///< ideality Vt
    double series_ohm = 0.0;
    double ratio = 0.0;     ///< r above, 0 without series resistance
    double log_ratio = 0.0; ///< ln r
};

/// A point of the curve: voltage, current there, and dI/dV there.
struct DiodePoint {
    double volts = 0.0;
    double amps = 0.0;
    double siemens = 0.0;
};

/// Beyond this current an LED without series resistance goes on in a straight line, so that a wild start
/// cannot overflow. No card comes near it.
inline constexpr double kStraight_A = 1e6;

[[nodiscard]] DiodeLaw diode_law(const DiodeElement& diode, double thermal_V);
/// By voltage: exact to about 1e-14 relative, for any finite voltage.
[[nodiscard]] DiodePoint at_voltage(const DiodeLaw& law, double volts);
/// By current, which must be more than -saturation_A (and the law not burnt open).
[[nodiscard]] DiodePoint at_current(const DiodeLaw& law, double amps);
/// Co-content of a point: the integral of I dV from 0 V.
[[nodiscard]] double co_content_W(const DiodeLaw& law, const DiodePoint& point);

} // namespace lanternleaf
