#include "window.h"

#include <cmath>
#include <cstdio>
#include <ctime>
#include <memory>
#include <optional>

#include <SDL.h>

#include "controls/shell.h"
#include "draw_data.h"
#include "events.h"
#include "frame/frame.h"
#include "host_sdl2.h"
#include "pictures_sdl2.h"

namespace lanternleaf {

namespace {

/// SDL started and ended; window and renderer with it.
struct Session {
    SDL_Window* window = nullptr;
    SDL_Renderer* renderer = nullptr;

    Session() = default;
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    ~Session() {
        if (renderer != nullptr) {
            SDL_DestroyRenderer(renderer);
        }
        if (window != nullptr) {
            SDL_DestroyWindow(window);
        }
        SDL_Quit();
    }

    bool open(const WindowOptions& options) {
        set_touch_hints();
        if (SDL_Init(SDL_INIT_VIDEO) != 0) {
            return false;
        }
        window =
            SDL_CreateWindow("Lanternleaf", SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED, options.width,
                             options.height, SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
        if (window == nullptr) {
            return false;
        }
        SDL_SetWindowMinimumSize(window, 320, 480);
        renderer = SDL_CreateRenderer(window, -1, SDL_RENDERER_PRESENTVSYNC);
        if (renderer == nullptr) {
            renderer = SDL_CreateRenderer(window, -1, SDL_RENDERER_SOFTWARE);
        }
        return renderer != nullptr;
    }
};

/// Waits for the next event, for as long as nothing is due; takes in all that have come.
void gather(EventReader& reader, FramePacer& pacer) {
    const std::optional<double> sleep = reader.hidden ? std::nullopt : pacer.sleep_s(steady_s());
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
        if (reader.take(event)) {
            pacer.input();
        }
        any = SDL_PollEvent(&event) == 1;
    }
}

} // namespace

Outcome<Done> run_window(const WindowOptions& options) {
    Outcome<FontFiles> fonts = read_font_files(options.fonts);
    if (!fonts) {
        return fonts.problem();
    }
    Session session;
    if (!session.open(options)) {
        return Problem{"window", "", std::string("expected to be able to open one: ") + SDL_GetError()};
    }
    HostSdl2 host(options.assets);
    EventReader reader(session.window);
    DrawDataRenderer renderer(session.renderer);
    Shell shell(std::move(fonts).value(), host);
    SDL_Texture* atlas = nullptr;
    shell.make_atlas_texture = [&]() -> void* {
        if (atlas != nullptr) {
            SDL_DestroyTexture(atlas);
        }
        const Bitmap pixels = atlas_bitmap();
        atlas = make_texture(session.renderer, pixels.rgba.data(), pixels.w, pixels.h);
        return atlas;
    };
    SdlPictures pictures(session.renderer);
    const std::string library = options.library.empty() ? host.data_folder().string() : options.library;
    const auto now_s = [] { return static_cast<std::int64_t>(std::time(nullptr)); };
    Outcome<App> opened = open_app_in(options.assets.string(), library, pictures, now_s());
    if (!opened) {
        return opened.problem();
    }
    App& app = opened.value();
    if (!options.open.empty()) {
        update(app.state, app.around, command::StartCard{options.open});
    }
    while (!reader.quit) {
        gather(reader, shell.pacer());
        if (reader.quit || reader.hidden || !shell.pacer().due(steady_s())) {
            continue;
        }
        const double began = steady_s();
        const Appearance look{app.state.settings.night, static_cast<float>(app.state.settings.text_scale),
                              app.state.settings.reduced_motion};
        shell.frame(reader.input(), look, [&](Ui& ui) { app_frame(app, ui, now_s()); });
        const Colour ground = look.night ? night_theme().table : day_theme().table;
        SDL_SetRenderDrawColor(session.renderer, ground.r, ground.g, ground.b, 255);
        SDL_RenderClear(session.renderer);
        renderer.draw(shell.draw_data());
        SDL_RenderPresent(session.renderer);
        if (options.log_frames) {
            std::fprintf(stderr, "frame %ld at %.3f s, %.1f ms\n", shell.pacer().frames(), steady_s(),
                         (steady_s() - began) * 1000);
        }
    }
    if (options.log_frames) {
        std::fprintf(stderr, "frames drawn: %ld\n", shell.pacer().frames());
    }
    if (atlas != nullptr) {
        SDL_DestroyTexture(atlas);
    }
    return Done{};
}

} // namespace lanternleaf
