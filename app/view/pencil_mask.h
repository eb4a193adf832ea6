// Pencil mask: turns a card's line art into a mask that can be drawn in any colour.
// Exists because the traced picture is drawn in the theme's pencil, by day and by night, whatever the file's
// colours are: white paper becomes clear, dark lines become opaque. Pure; the host applies it once after
// loading.
#pragma once

#include <cstdint>
#include <span>

namespace lanternleaf {

/// In place, 4 bytes a pixel (red, green, blue, opacity): every pixel becomes white, with the darkness it had
/// as its opacity. Darkness is 255 - luma of the pixel over white paper (luma: ITU-R BT.601 weights). A
/// length that is not a multiple of 4 leaves the rest as it is.
void to_pencil_mask(std::span<std::uint8_t> rgba);

} // namespace lanternleaf
