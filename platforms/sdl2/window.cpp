#include "window.h"

#include <cmath>
#include <fstream>

#include "host_sdl2.h"
#include "targets_json.h"

namespace lanternleaf {

namespace {

/// Waits for the next event, for as long as nothing is due; takes in all that have come.
void gather(AppWindow& window) {
    const std::optional<double> sleep = window.sleep_s();
    SDL_Event event;
    bool any = false;
    if (!sleep) {
        any = SDL_WaitEvent(&event) == 1;
    } else if (*sleep > 0) {
        any = SDL_WaitEventTimeout(&event, static_cast<int>(std::ceil(*sleep * 1000))) == 1;
    } else {
        any = SDL_PollEvent(&event) == 1;
    }
    while (any) {
        window.take(event);
        any = SDL_PollEvent(&event) == 1;
    }
}

/// Whole at every moment: whoever reads it while it is written finds the one before.
void tell_targets(const AppWindow& window, const std::string& path) {
    const std::string fresh = path + ".new";
    {
        std::ofstream file(fresh, std::ios::binary);
        file << "{\"frame\":" << window.frames() << ",\"targets\":" << targets_json(window.targets()) << "}";
    }
    std::error_code ignored;
    std::filesystem::rename(fresh, path, ignored);
}

} // namespace

Outcome<Done> run_window(const WindowOptions& options) {
    HostSdl2 host(options.assets);
    Outcome<std::unique_ptr<AppWindow>> opened = AppWindow::open(options, host);
    if (!opened) {
        return opened.problem();
    }
    AppWindow& window = *opened.value();
    while (!window.quit()) {
        gather(window);
        if (!window.quit() && window.frame_due()) {
            window.make_frame();
            window.show_frame();
            if (!options.targets.empty()) {
                tell_targets(window, options.targets);
            }
        }
    }
    return Done{};
}

} // namespace lanternleaf
