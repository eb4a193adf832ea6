// IconPath: a small language for drawings on a 24 x 24 grid, and what it turns into.
// Exists so that an icon is one line of text that a person can read and change, and needs no font or bitmap.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/outcome.h"
#include "paint/curve.h"

namespace lanternleaf {

/// One stroke of an icon.
struct IconStroke {
    Polyline points;
    bool closed = false;
};

/// A whole icon: strokes with round ends, and dots.
struct IconPath {
    std::vector<IconStroke> strokes;
    std::vector<Point> dots;
};

/// Reads the language. Coordinates are absolute, in grid units, y down, separated by spaces:
///   M x y            begin a stroke;  x y pairs after it are lines (L may be written for clarity)
///   C x y x y x y    cubic bezier     Q x y x y   quadratic bezier     Z  close the stroke
///   O x y r          circle           A x y r a b arc from a to b degrees, clockwise when b > a; joins a
///   stroke in work R x y w h r      rounded rectangle                                 D x y  dot
/// The problem names the letter at which reading stopped.
[[nodiscard]] Outcome<IconPath> read_icon_path(std::string_view text);

} // namespace lanternleaf
