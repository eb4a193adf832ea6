#include "frame/frame.h"

#include "screens/screen.h"

namespace lanternleaf {

Outcome<App> open_app_in(const AppFolders& folders, Pictures& pictures, std::int64_t now_s) {
    App app;
    app.around.assets = folders.assets;
    app.around.fonts = folders.fonts;
    app.around.library = folders.library;
    app.around.device = folders.device;
    app.around.now_s = now_s;
    app.pictures = &pictures;
    Outcome<Parts> parts = load_parts(folders.assets);
    if (!parts) {
        return parts.problem();
    }
    app.around.shipped = std::move(parts).value();
    app.around.words = load_words(app.around, read_settings(app.around));
    app.state = open_app(app.around);
    return app;
}

namespace {

// Files of one folder go together.
void hand_over(App& app, Host& host) {
    std::vector<FileToGive>& files = app.state.to_give;
    for (std::size_t i = 0; i < files.size();) {
        std::size_t end = i + 1;
        while (!files[i].folder.empty() && end < files.size() && files[end].folder == files[i].folder) {
            ++end;
        }
        std::vector<SharedFile> together;
        for (std::size_t k = i; k < end; ++k) {
            together.push_back({files[k].file_name, files[k].bytes, files[k].mime});
        }
        const Outcome<std::string> given =
            files[i].folder.empty() ? host.share_file(files[i].file_name, files[i].bytes, files[i].mime)
                                    : host.share_files(files[i].folder, together);
        app.state.said = given ? given.value() : given.problem().sentence();
        i = end;
    }
    files.clear();
}

} // namespace

void app_frame(App& app, Ui& ui, std::int64_t now_s) {
    app.around.now_s = now_s;
    app.around.clock_s = ui.now();
    ui.words = app.around.words;
    std::vector<Command> commands;
    Screen screen{ui, app.state, app.around, *app.pictures, commands};
    draw_screen(screen);
    const std::string language = app.state.settings.language;
    const bool inches = app.state.settings.inches;
    for (const Command& command : commands) {
        update(app.state, app.around, command);
    }
    if (language != app.state.settings.language || inches != app.state.settings.inches) {
        app.around.words = load_words(app.around, app.state.settings);
        retell(app.state, app.around);
    }
    hand_over(app, ui.host());
    if (!app.state.said.empty()) {
        ui.toast(app.state.said);
        app.state.said.clear();
    }
    if (!commands.empty()) {
        ui.keep_awake("command");
    }
}

} // namespace lanternleaf
