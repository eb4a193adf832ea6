#include "view/pencil_mask.h"

namespace lanternleaf {

void to_pencil_mask(std::span<std::uint8_t> rgba) {
    for (std::size_t i = 0; i + 3 < rgba.size(); i += 4) {
        // BT.601: 0.299, 0.587, 0.114, in 1/1000.
        const int luma = (299 * rgba[i] + 587 * rgba[i + 1] + 114 * rgba[i + 2] + 500) / 1000;
        const int opacity = rgba[i + 3];
        rgba[i] = rgba[i + 1] = rgba[i + 2] = 255;
        rgba[i + 3] = static_cast<std::uint8_t>((255 - luma) * opacity / 255);
    }
}

} // namespace lanternleaf
