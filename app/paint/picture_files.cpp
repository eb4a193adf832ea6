#include "paint/picture_files.h"

#include "files/files.h"
#include "view/pencil_mask.h"

#include <stb_image.h>

namespace lanternleaf {

Outcome<Bitmap> decode_picture(const std::string& path) {
    const Outcome<std::string> bytes = read_file(path);
    if (!bytes) {
        return bytes.problem();
    }
    const auto* data = reinterpret_cast<const stbi_uc*>(bytes.value().data());
    const int size = static_cast<int>(bytes.value().size());
    Bitmap bitmap;
    int channels = 0;
    if (stbi_info_from_memory(data, size, &bitmap.w, &bitmap.h, &channels) == 0) {
        return Problem{path, "", "expected a PNG or JPEG picture"};
    }
    if (bitmap.w < 1 || bitmap.h < 1 || bitmap.w > kMostPictureSide || bitmap.h > kMostPictureSide) {
        return Problem{
            path, "", "expected a picture of at most " + std::to_string(kMostPictureSide) + " pixels a side"};
    }
    stbi_uc* pixels = stbi_load_from_memory(data, size, &bitmap.w, &bitmap.h, &channels, 4);
    if (pixels == nullptr) {
        return Problem{path, "", "expected a whole PNG or JPEG picture"};
    }
    bitmap.rgba.assign(pixels,
                       pixels + static_cast<std::size_t>(bitmap.w) * static_cast<std::size_t>(bitmap.h) * 4);
    stbi_image_free(pixels);
    return bitmap;
}

Picture BitmapPictures::kept(const std::string& key, const std::string& path, bool pencil) {
    if (path.empty()) {
        return {};
    }
    auto found = bitmaps_.find(key);
    if (found == bitmaps_.end()) {
        Outcome<Bitmap> decoded = decode_picture(path);
        std::unique_ptr<Bitmap> bitmap;
        if (decoded) {
            bitmap = std::make_unique<Bitmap>(std::move(decoded).value());
            if (pencil) {
                to_pencil_mask(bitmap->rgba);
            }
        }
        found = bitmaps_.emplace(key, std::move(bitmap)).first;
    }
    const Bitmap* bitmap = found->second.get();
    return bitmap == nullptr
               ? Picture{}
               : Picture{found->second.get(), static_cast<float>(bitmap->w), static_cast<float>(bitmap->h)};
}

Picture BitmapPictures::get(const std::string& path) {
    return kept(path, path, false);
}

Picture BitmapPictures::pencil(const std::string& path) {
    return kept("pencil:" + path, path, true);
}

} // namespace lanternleaf
