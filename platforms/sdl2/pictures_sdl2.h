// Pictures on an SDL renderer: each file becomes a texture the first time it is asked for.
#pragma once

#include <map>
#include <string>

#include <SDL.h>

#include "paint/pictures.h"

namespace lanternleaf {

class SdlPictures final : public Pictures {
public:
    explicit SdlPictures(SDL_Renderer* renderer) : renderer_(renderer) {}

    ~SdlPictures() override;
    SdlPictures(const SdlPictures&) = delete;
    SdlPictures& operator=(const SdlPictures&) = delete;

    [[nodiscard]] Picture get(const std::string& path) override;
    [[nodiscard]] Picture pencil(const std::string& path) override;

private:
    [[nodiscard]] Picture kept(const std::string& key, const std::string& path, bool pencil);

    SDL_Renderer* renderer_;
    std::map<std::string, Picture> kept_;
};

} // namespace lanternleaf
