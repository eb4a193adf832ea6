// The light box: which card it shows, and the scale of the screen, kept once found.
#include "model/update_draw.h"

namespace lanternleaf {

void open_light_box(AppState& state, const Surroundings& around) {
    LightBox box;
    if (state.place == Place::draw && state.draw) {
        box.card = state.draw->card;
        box.parts = state.draw->parts;
    } else if (state.build) {
        box.card = state.build->record.as_built;
        box.parts = state.build->parts;
    } else {
        say(state, around, around.words("model.nothing_to_trace"));
        return;
    }
    box.open = true;
    box.look_at_mm = {box.card.sheet.width_mm / 2.0, box.card.sheet.height_mm / 2.0};
    // Without a measured screen nothing true can be shown: that comes first.
    box.calibrating = state.settings.px_per_mm <= 0.0;
    state.sheet = SheetKind::none;
    state.light_box = std::move(box);
}

void keep_scale(AppState& state, const Surroundings& around) {
    if (state.light_box.draft_px_per_mm > 0.0) {
        state.settings.px_per_mm = state.light_box.draft_px_per_mm;
        write_settings(around, state.settings);
    }
    state.light_box.calibrating = false;
}

} // namespace lanternleaf
