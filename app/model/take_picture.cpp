#include "model/take_picture.h"

#include "model/update_draw.h"
#include "model/update_log.h"

#include <string_view>

namespace lanternleaf {

bool is_picture(const std::string& content) {
    constexpr std::string_view kPng("\x89PNG\r\n\x1a\n", 8);
    constexpr std::string_view kJpeg("\xff\xd8\xff", 3);
    return content.compare(0, kPng.size(), kPng) == 0 || content.compare(0, kJpeg.size(), kJpeg) == 0;
}

void take_picture(AppState& state, const Surroundings& around, const std::string& file_name,
                  const std::string& content) {
    if (state.place == Place::draw && state.draw) {
        lay_art(state, around, file_name, content);
        return;
    }
    if (state.place == Place::log && state.log) {
        take_photo(state, around, file_name, content);
        return;
    }
    say(state, around, around.words("model.picture_where"));
}

} // namespace lanternleaf
