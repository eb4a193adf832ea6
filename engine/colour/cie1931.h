// CIE 1931: the colour-matching functions of the 2 degree standard observer, from which a wavelength becomes
// a place in the chromaticity diagram. Exists so that a glow on the screen has the colour of the LED's data
// sheet and not one that somebody liked.
#pragma once

namespace lanternleaf {

struct Xyz {
    double x = 0.0;
    double y = 0.0; ///< photopic luminosity V(lambda) when it comes from one wavelength
    double z = 0.0;
};

struct Chromaticity {
    double x = 0.0;
    double y = 0.0;
};

/// Table every 5 nm from 380 to 780 nm, cubic between (within 0.0005, 0.0002 and 0.0024 of the 1 nm table);
/// zero outside. Source: CIE 1931 2 degree observer, 1 nm, as shipped in Debian's psychtoolbox-3-common
/// 3.0.18.12 (T_xyz1931.mat), every fifth row.
[[nodiscard]] Xyz colour_match(double nm);

/// Of a colour; {0, 0} when there is no light in it.
[[nodiscard]] Chromaticity chromaticity_of(Xyz colour);
[[nodiscard]] Chromaticity chromaticity_of_nm(double nm);

/// A colour of that chromaticity with Y = 1; y must be above zero.
[[nodiscard]] Xyz xyz_of(Chromaticity place);

} // namespace lanternleaf
