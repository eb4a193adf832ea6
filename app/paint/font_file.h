// FontFile: the bytes of one TrueType file and the few measures of it that placing text needs.
// Exists because the drawing library sizes a font by ascender plus descender, while designs size it by the
// em, and because text is centred here on its capitals, whose height the drawing library does not tell.
#pragma once

#include <filesystem>
#include <vector>

#include "base/outcome.h"

namespace lanternleaf {

/// A TrueType font in memory. Ratios are to the em; see the OpenType specification 1.9, tables head, hhea,
/// OS/2.
struct FontFile {
    std::vector<unsigned char> bytes;
    float ascent = 0;     ///< hhea.ascender
    float descent = 0;    ///< hhea.descender, as a positive number
    float cap_height = 0; ///< OS/2.sCapHeight
    float x_height = 0;   ///< OS/2.sxHeight

    /// Ascender plus descender: what the drawing library calls the size of the font, per em.
    [[nodiscard]] float box() const { return ascent + descent; }
};

/// Reads a font. The problem names the file and what was expected of it.
[[nodiscard]] Outcome<FontFile> read_font(const std::filesystem::path& file);

} // namespace lanternleaf
