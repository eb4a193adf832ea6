#include "host_web.h"

#include "page.h"

namespace lanternleaf {

Outcome<std::string> HostWeb::share_file(std::string_view file_name, std::string_view bytes,
                                         std::string_view mime) {
    const std::string name(file_name);
    const std::string kind(mime);
    const bool sheet =
        page_share_file(name.c_str(), bytes.data(), static_cast<int>(bytes.size()), kind.c_str()) != 0;
    return sheet ? name + " is ready to be sent." : name + " goes to this device's downloads.";
}

Outcome<std::string> HostWeb::share_files(std::string_view folder, const std::vector<SharedFile>& files) {
    for (const SharedFile& file : files) {
        page_hold_file(file.file_name.c_str(), file.bytes.data(), static_cast<int>(file.bytes.size()),
                       file.mime.c_str());
    }
    const std::string name(folder);
    const bool sheet = page_share_held(name.c_str()) != 0;
    return sheet ? name + " is ready to be sent." : name + " goes to this device's downloads.";
}

void HostWeb::pick_picture() {
    page_pick("image/*");
}

void HostWeb::pick_card() {
    page_pick(".json,application/json,image/png,image/jpeg");
}

void HostWeb::keep_screen_on(bool on) {
    if (on != screen_on_) {
        screen_on_ = on;
        page_keep_screen_on(on ? 1 : 0);
    }
}

void HostWeb::show_keyboard(bool shown, const Rect& field) {
    page_show_keyboard(shown ? 1 : 0, field.x, field.y, field.w, field.h);
}

void HostWeb::tick() {
    page_tick();
}

} // namespace lanternleaf
