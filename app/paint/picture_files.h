// Picture files: PNG and JPEG files decoded to bitmaps, with limits, and a keeper that hands them to the
// software raster. Exists so that the window and the pictures on the command line read the same files in the
// same way.
#pragma once

#include "paint/pictures.h"
#include "paint/soft_raster.h"

#include <map>
#include <memory>
#include <string>

namespace lanternleaf {

/// Larger pictures are refused before they are decoded: a tablet's photo is well below.
inline constexpr int kMostPictureSide = 8192;

/// The pixels of a PNG or JPEG file; a Problem says which file and why not.
[[nodiscard]] Outcome<Bitmap> decode_picture(const std::string& path);

/// Pictures for the software raster: a texture is the address of a Bitmap, kept here.
class BitmapPictures final : public Pictures {
public:
    [[nodiscard]] Picture get(const std::string& path) override;
    [[nodiscard]] Picture pencil(const std::string& path) override;

private:
    [[nodiscard]] Picture kept(const std::string& key, const std::string& path, bool pencil);

    std::map<std::string, std::unique_ptr<Bitmap>> bitmaps_; ///< null: could not be had
};

} // namespace lanternleaf
