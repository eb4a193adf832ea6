// Shot: one screen of the app as a picture file, drawn by the same frame as the window.
#pragma once

#include "base/outcome.h"
#include "paint/fonts.h"

#include <cstdint>
#include <filesystem>
#include <string>

namespace lanternleaf {

struct ShotWish {
    std::filesystem::path fonts; ///< folder with the two faces
    std::string assets;
    std::string library; ///< an empty folder for the build that the picture shows
    std::string card;
    std::string screen;          ///< see show_screen()
    std::string language = "en"; ///< a file of assets/words
    int width = 1180;
    int height = 820;
    float text_scale = 1.0f;
    std::filesystem::path out;
    std::int64_t now_s = 0;
};

/// Widths and heights from 320 to 4096.
[[nodiscard]] Outcome<Done> draw_shot(const ShotWish& wish);

} // namespace lanternleaf
