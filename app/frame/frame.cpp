#include "frame/frame.h"

namespace lanternleaf {

void app_frame(App& app, Ui& ui) {
    draw_gallery(ui, app.gallery);
    if (ui.tapped("theme")) {
        app.look.night = !app.look.night;
        ui.keep_awake("theme");
    }
}

} // namespace lanternleaf
