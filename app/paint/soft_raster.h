// SoftRaster: turns the drawing library's triangles into pixels without a window, a graphics card or SDL.
// Exists for pictures made on the command line and in tests: the same input gives the same bytes on every
// machine.
#pragma once

#include <cstdint>
#include <filesystem>
#include <vector>

#include "base/outcome.h"
#include "paint/theme.h"

struct ImDrawData;

namespace lanternleaf {

/// Pixels in rows from the top, 4 bytes each: red, green, blue, opacity.
struct Bitmap {
    int w = 0;
    int h = 0;
    std::vector<std::uint8_t> rgba;
};

/// The font atlas of the current context as a bitmap. Its address is what the draw list must carry as
/// texture.
[[nodiscard]] Bitmap atlas_bitmap();

/// Draws onto `target`, which is resized to the display and cleared to `ground` first. Every texture named in
/// the draw data must be the address of a Bitmap.
void soft_raster(const ImDrawData& data, Bitmap& target, Colour ground);

/// Writes a PNG file.
[[nodiscard]] Outcome<Done> write_png(const Bitmap& bitmap, const std::filesystem::path& file);

} // namespace lanternleaf
