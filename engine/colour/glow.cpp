#include "colour/glow.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace lanternleaf {

namespace {

/// IEC 61966-2-1: from XYZ to linear sRGB, D65 white.
Rgb linear_of(Xyz c) {
    return {3.2406 * c.x - 1.5372 * c.y - 0.4986 * c.z, -0.9689 * c.x + 1.8758 * c.y + 0.0415 * c.z,
            0.0557 * c.x - 0.2040 * c.y + 1.0570 * c.z};
}

double gamma(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1.0 / 2.4) - 0.055;
}

/// Divided by the largest component, gamma applied.
Rgb at_full(Rgb c) {
    const double most = std::max({c.red, c.green, c.blue});
    if (!(most > 0.0)) {
        return {};
    }
    return {gamma(c.red / most), gamma(c.green / most), gamma(c.blue / most)};
}

} // namespace

Rgb srgb_of(Xyz colour) {
    Rgb c = linear_of(colour);
    const double least = std::min({c.red, c.green, c.blue, 0.0});
    return at_full({c.red - least, c.green - least, c.blue - least});
}

Rgb srgb_clipped(Xyz colour) {
    const Rgb c = linear_of(colour);
    return at_full({std::fmax(c.red, 0.0), std::fmax(c.green, 0.0), std::fmax(c.blue, 0.0)});
}

Rgb glow_of(const std::string& colour, double dominant_nm) {
    if (colour == "white") {
        return srgb_of(xyz_of({0.32, 0.33}));
    }
    if (colour == "warm-white") {
        return srgb_of(xyz_of({0.4599, 0.4106}));
    }
    if (colour == "pink") {
        return srgb_of(xyz_of({0.40, 0.25}));
    }
    constexpr double kDeepRed_nm = 600.0;
    const Xyz match = colour_match(dominant_nm);
    return dominant_nm > kDeepRed_nm ? srgb_clipped(match) : srgb_of(match);
}

std::string hex_of(Rgb colour) {
    const auto byte = [](double part) {
        return static_cast<unsigned>(std::lround(255.0 * std::clamp(part, 0.0, 1.0)));
    };
    char text[16];
    std::snprintf(text, sizeof text, "#%02X%02X%02X", byte(colour.red), byte(colour.green),
                  byte(colour.blue));
    return text;
}

} // namespace lanternleaf
