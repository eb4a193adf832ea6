#include "app_window.h"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <utility>

#include "controls/shell.h"
#include "draw_data.h"
#include "events.h"
#include "files/files.h"
#include "frame/frame.h"
#include "model/bring_in.h"
#include "pictures_sdl2.h"

namespace lanternleaf {

namespace {

/// A phone's: about 160 points an inch (makers' figures, from memory), with 18-point text 2.9 mm high.
constexpr float kMostPointsPerMm = 6.3f;

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
        renderer = SDL_CreateRenderer(window, -1, options.renderer_flags);
        if (renderer == nullptr) {
            renderer = SDL_CreateRenderer(window, -1, SDL_RENDERER_SOFTWARE);
        }
        return renderer != nullptr;
    }
};

std::int64_t utc_s() {
    return static_cast<std::int64_t>(std::time(nullptr));
}

} // namespace

struct AppWindow::Parts {
    Parts(std::unique_ptr<Session> opened, FontFiles fonts, Host& given)
        : session(std::move(opened)), host(given), reader(session->window), renderer(session->renderer),
          shell(std::move(fonts), given), pictures(session->renderer) {
        shell.make_atlas_texture = [this]() -> void* {
            if (atlas != nullptr) {
                SDL_DestroyTexture(atlas);
            }
            const Bitmap pixels = atlas_bitmap();
            atlas = make_texture(session->renderer, pixels.rgba.data(), pixels.w, pixels.h);
            return atlas;
        };
    }

    ~Parts() {
        if (atlas != nullptr) {
            SDL_DestroyTexture(atlas);
        }
    }

    Parts(const Parts&) = delete;
    Parts& operator=(const Parts&) = delete;

    std::unique_ptr<Session> session; // first: the others draw with it and go before it
    Host& host;
    EventReader reader;
    DrawDataRenderer renderer;
    Shell shell;
    SDL_Texture* atlas = nullptr;
    SdlPictures pictures;
    std::optional<App> app;
    std::vector<LooseFile> held; ///< files that came together, until the last one is here
    bool log_frames = false;
};

AppWindow::AppWindow(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}

AppWindow::~AppWindow() {
    if (parts_->log_frames) {
        std::fprintf(stderr, "frames drawn: %ld\n", frames());
    }
}

Outcome<std::unique_ptr<AppWindow>> AppWindow::open(const WindowOptions& options, Host& host) {
    Outcome<FontFiles> fonts = read_font_files(options.fonts);
    if (!fonts) {
        return fonts.problem();
    }
    auto session = std::make_unique<Session>();
    if (!session->open(options)) {
        return Problem{"window", "", std::string("expected to be able to open one: ") + SDL_GetError()};
    }
    auto parts = std::make_unique<Parts>(std::move(session), std::move(fonts).value(), host);
    parts->log_frames = options.log_frames;
    const std::string library = options.library.empty() ? host.data_folder().string() : options.library;
    // A library may be shared by many tablets; how large a millimetre is on this one's glass is not.
    const AppFolders folders{options.assets.string(), library, options.fonts.string(),
                             host.data_folder().string()};
    Outcome<App> opened = open_app_in(folders, parts->pictures, utc_s());
    if (!opened) {
        return opened.problem();
    }
    parts->app = std::move(opened).value();
    if (!options.open.empty()) {
        update(parts->app->state, parts->app->around, command::StartCard{options.open});
    }
    return std::unique_ptr<AppWindow>(new AppWindow(std::move(parts)));
}

void AppWindow::take(const SDL_Event& event) {
    // What is dropped together arrives file by file between two events.
    if (event.type == SDL_DROPBEGIN) {
        parts_->held.clear();
        return;
    }
    if (event.type == SDL_DROPFILE) {
        const std::string path = event.drop.file;
        SDL_free(event.drop.file);
        std::error_code ignored;
        if (std::filesystem::is_directory(path, ignored)) {
            bring_in_folder(parts_->app->state, parts_->app->around, path);
            disturb();
            return;
        }
        Outcome<std::string> content = read_file(path);
        if (content) {
            hold_file(path, std::move(content).value());
        } else {
            say(parts_->app->state, parts_->app->around, content.problem().sentence());
            disturb();
        }
        return;
    }
    if (event.type == SDL_DROPCOMPLETE) {
        bring_in_held();
        return;
    }
    if (parts_->reader.take(event)) {
        disturb();
    }
}

void AppWindow::lose_finger(int id) {
    parts_->reader.lose_finger(id);
    disturb();
}

void AppWindow::hold_file(const std::string& file_name, std::string content) {
    if (parts_->held.size() <= kMostLooseFiles) { // one more than is taken, so that it is refused and told
        parts_->held.push_back({file_name, std::move(content)});
    }
}

void AppWindow::bring_in_held() {
    if (!parts_->held.empty()) {
        bring_in_files(parts_->app->state, parts_->app->around, parts_->held);
        parts_->held.clear();
        disturb();
    }
}

void AppWindow::disturb() {
    parts_->shell.pacer().input();
}

bool AppWindow::quit() const {
    return parts_->reader.quit;
}

bool AppWindow::frame_due() const {
    return !parts_->reader.hidden && parts_->shell.pacer().due(steady_s());
}

std::optional<double> AppWindow::sleep_s() const {
    return parts_->reader.hidden ? std::nullopt : parts_->shell.pacer().sleep_s(steady_s());
}

void AppWindow::make_frame() {
    const double began = steady_s();
    App& app = *parts_->app;
    HostInput input = parts_->reader.input();
    if (amend) {
        amend(input);
    }
    // Where a point is smaller than on any phone (a dense screen whose desk does not scale), the text grows
    // until it is as large on the glass as there; by half at most, since some screens misstate their size.
    const float grown = std::clamp(input.pt_per_mm / kMostPointsPerMm, 1.0f, 1.5f);
    const Appearance look{app.state.settings.night, static_cast<float>(app.state.settings.text_scale) * grown,
                          app.state.settings.reduced_motion, app.state.settings.kids};
    parts_->shell.frame(input, look, [&](Ui& ui) { app_frame(app, ui, utc_s()); });
    if (parts_->log_frames) {
        std::fprintf(stderr, "frame %ld at %.3f s, %.1f ms\n", frames(), steady_s(),
                     (steady_s() - began) * 1000);
    }
}

void AppWindow::show_frame() {
    SDL_Renderer* renderer = parts_->session->renderer;
    const bool night = parts_->app->state.settings.night;
    const Colour ground = night ? night_theme().table : day_theme().table;
    SDL_SetRenderDrawColor(renderer, ground.r, ground.g, ground.b, 255);
    SDL_RenderClear(renderer);
    parts_->renderer.draw(parts_->shell.draw_data());
    SDL_RenderPresent(renderer);
}

long AppWindow::frames() const {
    return parts_->shell.pacer().frames();
}

const Targets& AppWindow::targets() const {
    return parts_->shell.ui().targets;
}

} // namespace lanternleaf
