#include "frame/shot.h"

#include "controls/shell.h"
#include "frame/frame.h"
#include "paint/picture_files.h"

namespace lanternleaf {

namespace {

constexpr int kLeastSide = 320;
constexpr int kMostSide = 4096;
constexpr int kSettle = 12; ///< frames until sheets and panels have arrived

// A device that is only looked at.
class StillHost final : public Host {
public:
    explicit StillHost(std::filesystem::path assets) : assets_(std::move(assets)) {}

    [[nodiscard]] std::filesystem::path data_folder() const override { return {}; }

    [[nodiscard]] std::filesystem::path assets_folder() const override { return assets_; }

    Outcome<std::string> share_file(std::string_view file_name, std::string_view, std::string_view) override {
        return std::string(file_name);
    }

    void keep_screen_on(bool) override {}

    void show_keyboard(bool, const Rect&) override {}

    void tick() override {}

    [[nodiscard]] std::string local_time() const override { return {}; }

    void quit() override {}

private:
    std::filesystem::path assets_;
};

} // namespace

Outcome<Done> draw_shot(const ShotWish& wish) {
    for (const int side : {wish.width, wish.height}) {
        if (side < kLeastSide || side > kMostSide) {
            return Problem{"--size", "", "expected WIDTHxHEIGHT with sides from 320 to 4096"};
        }
    }
    Outcome<FontFiles> fonts = read_font_files(wish.fonts);
    if (!fonts) {
        return fonts.problem();
    }
    BitmapPictures pictures;
    Outcome<App> opened = open_app_in({wish.assets, wish.library, wish.fonts.string()}, pictures, wish.now_s);
    if (!opened) {
        return opened.problem();
    }
    App& app = opened.value();
    app.state.settings.language = wish.language;
    app.around.words = load_words(app.around, app.state.settings);
    if (app.around.words.language() != wish.language) {
        return Problem{"--language", "", "expected a language of assets/words: en, de or es"};
    }
    if (Outcome<Done> shown = show_screen(app, wish.screen, wish.card); !shown) {
        return shown;
    }
    app.state.settings.text_scale = static_cast<double>(wish.text_scale);
    StillHost host(wish.assets);
    Shell shell(std::move(fonts).value(), host);
    Bitmap atlas;
    shell.make_atlas_texture = [&atlas]() -> void* {
        atlas = atlas_bitmap();
        return &atlas;
    };
    HostInput input;
    input.window = {static_cast<float>(wish.width), static_cast<float>(wish.height)};
    // A picture shows where motion ends: nothing glides, and the clock stands far from any start.
    input.reduced_motion = true;
    input.now_s = 1000;
    for (int i = 0; i < kSettle; ++i) {
        input.now_s += 1.0 / 60;
        const Appearance look{app.state.settings.night, wish.text_scale, true, app.state.settings.kids};
        shell.frame(input, look, [&](Ui& ui) { app_frame(app, ui, wish.now_s); });
    }
    const Theme& theme = app.state.settings.night ? night_theme() : day_theme();
    return write_png(shell.picture(theme.table), wish.out);
}

} // namespace lanternleaf
