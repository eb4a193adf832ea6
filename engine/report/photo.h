// Photo: a picture from outside as a plain JPEG of our own. Nothing of the file that came in is kept but its
// pixels: no place, no date, no maker's name, no thumbnail, and nothing that a decoder could stumble over
// later.
#pragma once

#include "base/outcome.h"

#include <string>

namespace lanternleaf {

inline constexpr std::size_t kMostPhotoBytes = 12U * 1024U * 1024U;
inline constexpr int kMostPhotoPixels = 50'000'000; ///< above any tablet's camera; 200 MB while it is decoded
inline constexpr int kPhotoSide = 1600; ///< longest side of what is kept: sharp on a page and a tablet

struct PlainPhoto {
    std::string jpeg; ///< baseline, quality 88
    int w = 0;
    int h = 0;
};

/// Checks type (PNG or JPEG), size and pixels before anything is decoded, decodes, turns the picture as its
/// Exif orientation asks, shrinks it to `side` and writes it anew. The Problem's file is `name`.
[[nodiscard]] Outcome<PlainPhoto> plain_photo(const std::string& bytes, const std::string& name,
                                              int side = kPhotoSide);

/// The Exif orientation of a JPEG, 1 to 8 (JEITA CP-3451, tag 0x0112); 1 when it has none that can be read.
[[nodiscard]] int exif_orientation(const std::string& jpeg);

} // namespace lanternleaf
