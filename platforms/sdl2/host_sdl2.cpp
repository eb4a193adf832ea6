#include "host_sdl2.h"

#include <cmath>
#include <cstdlib>
#include <ctime>
#include <system_error>
#include <utility>

#include "files/files.h"
#include "model/hand_out.h"

namespace lanternleaf {

HostSdl2::HostSdl2(std::filesystem::path assets) : assets_(std::move(assets)) {}

std::filesystem::path HostSdl2::data_folder() const {
    std::filesystem::path folder;
    if (const char* given = std::getenv("LANTERNLEAF_DATA"); given != nullptr && *given != 0) {
        folder = given;
    } else if (char* preferred = SDL_GetPrefPath("lanternleaf", "lanternleaf")) {
        folder = preferred;
        SDL_free(preferred);
    } else {
        folder = ".";
    }
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    return folder;
}

std::string HostSdl2::own_folder() const {
    const char* home = std::getenv("HOME");
    if (std::getenv("LANTERNLEAF_DATA") == nullptr && home != nullptr) {
        const Outcome<std::string> dirs = read_file(std::string(home) + "/.config/user-dirs.dirs");
        const std::string downloads = downloads_folder(home, dirs ? dirs.value() : std::string());
        std::error_code ignored;
        if (std::filesystem::is_directory(downloads, ignored)) {
            return downloads;
        }
    }
    return (data_folder() / "exports").string();
}

Outcome<std::string> HostSdl2::share_file(std::string_view file_name, std::string_view bytes,
                                          std::string_view) {
    const Outcome<std::string> path = hand_out(own_folder(), std::string(file_name), bytes);
    if (!path) {
        return path.problem();
    }
    return path.value() + " is written.";
}

Outcome<std::string> HostSdl2::share_files(std::string_view folder, const std::vector<SharedFile>& files) {
    const Outcome<std::string> path = hand_out_folder(own_folder(), std::string(folder), files);
    if (!path) {
        return path.problem();
    }
    return path.value() + " is written.";
}

void HostSdl2::keep_screen_on(bool on) {
    if (on) {
        SDL_DisableScreenSaver();
    } else {
        SDL_EnableScreenSaver();
    }
}

void HostSdl2::show_keyboard(bool shown, const Rect& field) {
    // Typing itself is always on (a keyboard on the desk needs no permission); this moves the on-screen one.
    if (shown) {
        SDL_Rect r{static_cast<int>(std::lround(field.x)), static_cast<int>(std::lround(field.y)),
                   static_cast<int>(std::lround(field.w)), static_cast<int>(std::lround(field.h))};
        SDL_SetTextInputRect(&r);
        SDL_StartTextInput();
    } else if (SDL_HasScreenKeyboardSupport() == SDL_TRUE) {
        SDL_StopTextInput();
    }
}

std::string HostSdl2::local_time() const {
    const std::time_t now = std::time(nullptr);
    char text[32] = {};
    if (const std::tm* local = std::localtime(&now)) {
        std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%S", local);
    }
    return text;
}

void HostSdl2::quit() {
    SDL_Event event{};
    event.type = SDL_QUIT;
    SDL_PushEvent(&event);
}

} // namespace lanternleaf
