#include "host_web.h"

#include "page.h"

namespace lanternleaf {

Outcome<std::string> HostWeb::hand_over(std::string_view file_name, std::string_view bytes) {
    std::string name(file_name);
    page_hand_over(name.c_str(), bytes.data(), static_cast<int>(bytes.size()));
    return name;
}

void HostWeb::keep_screen_on(bool on) {
    page_keep_screen_on(on ? 1 : 0);
}

void HostWeb::show_keyboard(bool shown, const Rect& field) {
    page_show_keyboard(shown ? 1 : 0, field.x, field.y, field.w, field.h);
}

void HostWeb::tick() {
    page_tick();
}

} // namespace lanternleaf
