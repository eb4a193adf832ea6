#include "pictures_sdl2.h"

#include "draw_data.h"
#include "paint/picture_files.h"
#include "view/pencil_mask.h"

namespace lanternleaf {

SdlPictures::~SdlPictures() {
    for (auto& [key, picture] : kept_) {
        if (picture.there()) {
            SDL_DestroyTexture(static_cast<SDL_Texture*>(picture.texture));
        }
    }
}

Picture SdlPictures::kept(const std::string& key, const std::string& path, bool pencil) {
    if (path.empty()) {
        return {};
    }
    const auto found = kept_.find(key);
    if (found != kept_.end()) {
        return found->second;
    }
    Picture picture;
    Outcome<Bitmap> decoded = decode_picture(path);
    if (decoded) {
        Bitmap& bitmap = decoded.value();
        if (pencil) {
            to_pencil_mask(bitmap.rgba);
        }
        picture.texture = make_texture(renderer_, bitmap.rgba.data(), bitmap.w, bitmap.h);
        picture.w = static_cast<float>(bitmap.w);
        picture.h = static_cast<float>(bitmap.h);
    }
    kept_[key] = picture;
    return picture;
}

Picture SdlPictures::get(const std::string& path) {
    return kept(path, path, false);
}

Picture SdlPictures::pencil(const std::string& path) {
    return kept("pencil:" + path, path, true);
}

} // namespace lanternleaf
