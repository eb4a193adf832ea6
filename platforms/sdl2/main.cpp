// The program: verbs on the command line, or the window.
// Options of the window: --window WxH, --frames-log (also LANTERNLEAF_FRAME_LOG in the environment). The
// assets are found in LANTERNLEAF_ASSETS, beside the program, or where they were built.
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include <SDL.h>

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

} // namespace

int main(int argc, char** argv) {
    std::vector<std::string> args(argv + 1, argv + argc);
    WindowOptions options;
    options.log_frames = std::getenv("LANTERNLEAF_FRAME_LOG") != nullptr;
    for (std::size_t i = 0; i < args.size();) {
        if (args[i] == "--frames-log") {
            options.log_frames = true;
            args.erase(args.begin() + static_cast<std::ptrdiff_t>(i));
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
        around.now_s = [] { return static_cast<std::int64_t>(std::time(nullptr)); };
        return run_verb(args, std::cout, std::cerr, around);
    }
    options.assets = assets_with("fonts");
    options.open = args.empty() ? std::string() : args.front();
    const Outcome<Done> ran = run_window(options);
    if (!ran) {
        std::fprintf(stderr, "%s\n", ran.problem().sentence().c_str());
        return 2;
    }
    return 0;
}
