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
    for (const FileToGive& file : app.state.to_give) {
        const Outcome<std::string> given = ui.host().share_file(file.file_name, file.bytes, file.mime);
        app.state.said = given ? given.value() : given.problem().sentence();
    }
    app.state.to_give.clear();
    if (!app.state.said.empty()) {
        ui.toast(app.state.said);
        app.state.said.clear();
    }
    if (!commands.empty()) {
        ui.keep_awake("command");
    }
}

} // namespace lanternleaf
