// Vec2: a point or a displacement on the sheet, in millimetres: x to the right, y down, angles clockwise from
// +x. With y down, the usual counter-clockwise formulas turn clockwise on the table; nothing else changes.
#pragma once

#include <cmath>
#include <numbers>

namespace lanternleaf {

struct Vec2 {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(const Vec2&, const Vec2&) = default;
};

[[nodiscard]] constexpr Vec2 operator+(Vec2 a, Vec2 b) {
    return {a.x + b.x, a.y + b.y};
}

[[nodiscard]] constexpr Vec2 operator-(Vec2 a, Vec2 b) {
    return {a.x - b.x, a.y - b.y};
}

[[nodiscard]] constexpr Vec2 operator-(Vec2 a) {
    return {-a.x, -a.y};
}

[[nodiscard]] constexpr Vec2 operator*(Vec2 a, double k) {
    return {a.x * k, a.y * k};
}

[[nodiscard]] constexpr Vec2 operator*(double k, Vec2 a) {
    return a * k;
}

[[nodiscard]] constexpr double dot(Vec2 a, Vec2 b) {
    return a.x * b.x + a.y * b.y;
}

/// Positive when b lies clockwise of a on the table (y down).
[[nodiscard]] constexpr double cross(Vec2 a, Vec2 b) {
    return a.x * b.y - a.y * b.x;
}

/// Sheets are far too small for a square to overflow, so no need for the slower std::hypot.
[[nodiscard]] inline double length(Vec2 a) {
    return std::sqrt(dot(a, a));
}

[[nodiscard]] inline double distance(Vec2 a, Vec2 b) {
    return length(b - a);
}

/// The unit vector along a; {1, 0} for a zero vector, so that callers need no special case.
[[nodiscard]] inline Vec2 unit(Vec2 a) {
    const double size = length(a);
    return size > 0.0 ? Vec2{a.x / size, a.y / size} : Vec2{1.0, 0.0};
}

/// a turned a quarter clockwise on the table.
[[nodiscard]] constexpr Vec2 quarter_turn(Vec2 a) {
    return {-a.y, a.x};
}

[[nodiscard]] constexpr double radians(double deg) {
    return deg * std::numbers::pi / 180.0;
}

[[nodiscard]] constexpr double degrees(double rad) {
    return rad * 180.0 / std::numbers::pi;
}

/// The unit vector that points `deg` clockwise from +x; exact for the quarter turns.
[[nodiscard]] inline Vec2 direction(double deg) {
    const double turns = deg / 90.0;
    if (turns == std::floor(turns)) {
        static constexpr Vec2 kQuarters[4] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
        const double quarter = turns - 4.0 * std::floor(turns / 4.0);
        return kQuarters[static_cast<int>(quarter) & 3];
    }
    return {std::cos(radians(deg)), std::sin(radians(deg))};
}

/// a turned `deg` clockwise about the origin.
[[nodiscard]] inline Vec2 turned(Vec2 a, double deg) {
    const Vec2 d = direction(deg);
    return {a.x * d.x - a.y * d.y, a.x * d.y + a.y * d.x};
}

} // namespace lanternleaf
