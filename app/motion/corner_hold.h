// CornerHold: are two opposite corners of the glass held at once, and for how long?
// Exists for the light box: paper and the hands that hold it must not unlock the screen, two deliberate
// fingers must. Pure: contacts in, seconds out.
#pragma once

#include "host/input.h"

#include <algorithm>
#include <span>

namespace lanternleaf {

/// A finger that is down now.
struct GlassContact {
    int id = 0;
    Point at;
    double since_s = 0;
};

inline constexpr double kCornerHold_s = 1.0;
inline constexpr float kCorner_mm = 22.0f; ///< each corner is a square this large

/// Seconds for which exactly two contacts have both lain in opposite corners; 0 when they do not. More
/// contacts are a hand or a sheet of paper, not two fingers.
[[nodiscard]] inline double opposite_corners_held_s(std::span<const GlassContact> contacts, Size window,
                                                    float corner_pt, double now_s) {
    if (contacts.size() != 2) {
        return 0.0;
    }
    const auto corner_of = [&](Point p) {
        const bool left = p.x < corner_pt;
        const bool right = p.x > window.w - corner_pt;
        const bool top = p.y < corner_pt;
        const bool bottom = p.y > window.h - corner_pt;
        return (left || right) && (top || bottom) ? (right ? 1 : 0) + (bottom ? 2 : 0) : -1;
    };
    const int a = corner_of(contacts[0].at);
    const int b = corner_of(contacts[1].at);
    if (a < 0 || b < 0 || a + b != 3) {
        return 0.0;
    }
    return std::max(0.0, now_s - std::max(contacts[0].since_s, contacts[1].since_s));
}

} // namespace lanternleaf
