// Glow: the colour a light has on the screen, as sRGB, from its dominant wavelength or its colour's name.
// Exists so that halos, bars and plots of one light agree.
#pragma once

#include "colour/cie1931.h"

#include <string>

namespace lanternleaf {

/// sRGB (IEC 61966-2-1), gamma applied, 0..1 each.
struct Rgb {
    double red = 0.0;
    double green = 0.0;
    double blue = 0.0;
};

/// The brightest sRGB colour of that chromaticity. What lies outside sRGB, as every spectral colour does, is
/// brought to its edge by adding white until no component is negative.
[[nodiscard]] Rgb srgb_of(Xyz colour);

/// As srgb_of, but components below zero are cut off instead: hue shifts a little, saturation stays. For deep
/// reds, which added white turns pink.
[[nodiscard]] Rgb srgb_clipped(Xyz colour);

/// The colour of an LED's light. `colour` is the parts file's word; white, warm-white and pink have a
/// chromaticity of their own, since the wavelength given for them is that of the chip under the phosphor:
///   white (0.32, 0.33): OSRAM LW TWTG data sheet v1.2 (2018);  warm-white (0.4599, 0.4106): 2700 K on the
///   Planckian locus;  pink (0.40, 0.25): estimate, no data sheet found.
/// Above 600 nm clipped, else brought to the edge of sRGB by white (a choice for the eye, not a measurement).
[[nodiscard]] Rgb glow_of(const std::string& colour, double dominant_nm);

/// "#00FFA0".
[[nodiscard]] std::string hex_of(Rgb colour);

} // namespace lanternleaf
