// Ease: how a value gets from one end to the other in a set time.
// Exists so that every motion has one of three shapes and obeys the reduced-motion wish in one place.
#pragma once

#include <algorithm>
#include <cmath>

namespace lanternleaf {

/// Times of the design, in seconds.
inline constexpr float kPress_s = 0.080f;
inline constexpr float kPanel_s = 0.180f;
inline constexpr float kSheet_s = 0.220f;
inline constexpr float kZoom_s = 0.320f;
inline constexpr float kTick_s = 0.160f;
inline constexpr float kVerdict_s = 0.240f;
inline constexpr float kDrain_s = 0.200f;

/// Fast first, then slow; t in 0..1.
[[nodiscard]] inline float ease_out(float t) {
    const float u = 1 - std::clamp(t, 0.0f, 1.0f);
    return 1 - u * u * u;
}

/// Slow, fast, slow.
[[nodiscard]] inline float ease_in_out(float t) {
    const float u = std::clamp(t, 0.0f, 1.0f);
    return u * u * (3 - 2 * u);
}

/// A 0..1 value on its way to a goal at an even pace; shape it with an ease_ function when drawing.
struct Glide {
    float value = 0;
    float goal = 0;

    /// Moves on; `over_s` is the time for the whole way. With reduced motion it arrives at once. True while
    /// under way.
    bool advance(float dt_s, float over_s, bool reduced_motion) {
        if (reduced_motion || over_s <= 0) {
            value = goal;
            return false;
        }
        const float step = dt_s / over_s;
        value = value < goal ? std::min(goal, value + step) : std::max(goal, value - step);
        return value != goal;
    }
};

} // namespace lanternleaf
