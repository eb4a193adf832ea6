// Plain picture: a picture that someone sent, as a PNG of our own with the very same pixels. Nothing of the
// file that came in is kept but these: no place, no name, nothing a decoder could stumble over later.
#pragma once

#include "base/outcome.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

inline constexpr std::size_t kMostPictureBytes = 24U * 1024U * 1024U; ///< in, and out again
/// A4 at 400 dots per inch and a little; 64 MB while it is decoded.
inline constexpr int kMostPicturePixels = 16'000'000;
inline constexpr int kLongestPictureSide = 16'000;

/// Checks type (PNG or JPEG), bytes and pixels by the file's head before anything is decoded, then decodes
/// and writes it anew. A picture that is such a PNG of ours already comes back byte for byte. The Problem's
/// file is `name`, its sentence in the maker's words.
[[nodiscard]] Outcome<std::string> plain_picture(const std::string& bytes, const std::string& name,
                                                 const Words& words = english());

} // namespace lanternleaf
