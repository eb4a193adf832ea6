// Pictures: images from files as the device's textures. The host loads them (and may have none: then a place
// is left plain); screens ask by path. Exists so that drawing code never reads a file or names a graphics
// library.
#pragma once

#include "paint/pen.h"

#include <string>

namespace lanternleaf {

/// A picture ready to be drawn; `texture` is null when it could not be had.
struct Picture {
    void* texture = nullptr;
    float w = 0; ///< pixels
    float h = 0;

    [[nodiscard]] bool there() const { return texture != nullptr; }
};

class Pictures {
public:
    virtual ~Pictures() = default;
    /// Loads once and keeps; an empty path or a file that is no picture gives one that is not there.
    [[nodiscard]] virtual Picture get(const std::string& path) = 0;
    /// The same file as a mask for drawing in pencil: white, with its dark lines as opacity
    /// (view/pencil_mask.h).
    [[nodiscard]] virtual Picture pencil(const std::string& path) = 0;
};

/// For tests and wherever no device is: no picture is there.
class NoPictures final : public Pictures {
public:
    [[nodiscard]] Picture get(const std::string&) override { return {}; }

    [[nodiscard]] Picture pencil(const std::string&) override { return {}; }
};

/// Draws a picture over a rectangle, its corners rounded, multiplied by `tint`.
void draw_picture(Pen& pen, const Picture& picture, const Rect& r, Colour tint, float radius = 0);

} // namespace lanternleaf
