// The program: verbs on the command line, or the window.
// Options of the window: --window WxH, --targets FILE (what can be touched now, for tests), --frames-log
// (also LANTERNLEAF_FRAME_LOG in the environment). The assets are found in LANTERNLEAF_ASSETS, beside the
// program, or where they were built.
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include <SDL.h>

#include "frame/shot.h"
#include "verbs/verbs.h"
#include "window.h"

namespace {

using namespace lanternleaf;

/// The first of the likely folders that holds this entry.
std::filesystem::path assets_with(const char* entry) {
    std::vector<std::filesystem::path> likely;
    if (const char* given = std::getenv("LANTERNLEAF_ASSETS")) {
        likely.emplace_back(given);
    }
    if (char* base = SDL_GetBasePath()) {
        likely.emplace_back(std::filesystem::path(base) / "assets");
        likely.emplace_back(std::filesystem::path(base) / ".." / "share" / "lanternleaf");
        SDL_free(base);
    }
    likely.emplace_back(LANTERNLEAF_BUILD_ASSETS);
    likely.emplace_back(LANTERNLEAF_SOURCE_ASSETS);
    for (const auto& folder : likely) {
        std::error_code ignored;
        if (std::filesystem::exists(folder / entry, ignored)) {
            return folder;
        }
    }
    return likely.front();
}

/// Draws a screen into a picture, with a library of its own that is gone afterwards.
Outcome<Done> shoot(const ShotRequest& request) {
    std::string folder = (std::filesystem::temp_directory_path() / "lanternleaf-shot-XXXXXX").string();
    if (mkdtemp(folder.data()) == nullptr) {
        return Problem{folder, "", "expected to be able to make a folder for the picture's build"};
    }
    ShotWish wish;
    wish.fonts = assets_with("fonts") / "fonts";
    wish.assets = assets_with("parts.json").string();
    wish.library = folder;
    wish.card = request.card;
    wish.screen = request.screen;
    wish.language = request.language;
    wish.width = request.width;
    wish.height = request.height;
    wish.out = request.out;
    wish.now_s = static_cast<std::int64_t>(std::time(nullptr));
    Outcome<Done> drawn = draw_shot(wish);
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
    return drawn;
}

} // namespace

int main(int argc, char** argv) {
    std::vector<std::string> args(argv + 1, argv + argc);
    WindowOptions options;
    options.log_frames = std::getenv("LANTERNLEAF_FRAME_LOG") != nullptr;
    for (std::size_t i = 0; i < args.size();) {
        if (args[i] == "--frames-log") {
            options.log_frames = true;
            args.erase(args.begin() + static_cast<std::ptrdiff_t>(i));
        } else if (args[i] == "--library" && i + 1 < args.size()) {
            options.library = args[i + 1];
            args.erase(args.begin() + static_cast<std::ptrdiff_t>(i),
                       args.begin() + static_cast<std::ptrdiff_t>(i) + 2);
        } else if (args[i] == "--targets" && i + 1 < args.size()) {
            options.targets = args[i + 1];
            args.erase(args.begin() + static_cast<std::ptrdiff_t>(i),
                       args.begin() + static_cast<std::ptrdiff_t>(i) + 2);
        } else if (args[i] == "--window" && i + 1 < args.size() &&
                   std::sscanf(args[i + 1].c_str(), "%dx%d", &options.width, &options.height) == 2) {
            args.erase(args.begin() + static_cast<std::ptrdiff_t>(i),
                       args.begin() + static_cast<std::ptrdiff_t>(i) + 2);
        } else {
            ++i;
        }
    }
    if (is_for_verbs(args)) {
        VerbSurroundings around;
        around.assets = assets_with("parts.json").string();
        around.fonts = (assets_with("fonts") / "fonts").string();
        around.now_s = [] { return static_cast<std::int64_t>(std::time(nullptr)); };
        around.shot = shoot;
        return run_verb(args, std::cout, std::cerr, around);
    }
    options.fonts = assets_with("fonts") / "fonts";
    options.assets = assets_with("parts.json");
    options.open = args.empty() ? std::string() : args.front();
    const Outcome<Done> ran = run_window(options);
    if (!ran) {
        std::fprintf(stderr, "%s\n", ran.problem().sentence().c_str());
        return 2;
    }
    return 0;
}
