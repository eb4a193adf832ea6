// The keypad over Mend: what the meter shows in the test on offer.
#include "controls/keypad.h"
#include "screens/mend.h"
#include "screens/sheets.h"

namespace lanternleaf {

void draw_mend_meter_sheet(Screen& screen) {
    const std::optional<MendState>& mend = screen.state.mend;
    if (!mend || !mend->test || (!reads_ohms(mend->test->kind) && !reads_volts(mend->test->kind))) {
        screen.say(command::CloseSheet{});
        return;
    }
    Ui& ui = screen.ui;
    const MendMeterView view = mend_meter_view(*mend->session.model, *mend->test, ui.words);
    KeypadLook look;
    look.title = view.title;
    look.expect = ui.words("keypad.expect", {{"range", view.expect}});
    look.unit = view.unit;
    look.save = ui.words("keypad.save");
    look.over = view.volts ? ui.words("keypad.minus") : ui.words("keypad.over");
    look.low = view.low;
    look.high = view.high;
    look.full = view.full;
    look.low_text = view.low_text;
    look.high_text = view.high_text;
    if (ui.m.form == Form::Landscape) {
        look.over_panel = make_regions(ui.m, {.actions = false, .panel_w = 536}).panel;
    }
    KeypadEntry keys{.open = true, .entry = mend->figure};
    switch (keypad(ui, "keypad", look, keys)) {
    case KeypadResult::Save:
        act(screen, mend::TypeFigure{keys.entry});
        act(screen, mend::SaveFigure{false});
        return;
    case KeypadResult::Over:
        act(screen, mend::TypeFigure{keys.entry});
        act(screen, view.volts ? MendCommand(mend::SaveFigure{true}) : MendCommand(mend::MeterShowsOpen{}));
        return;
    case KeypadResult::Close:
        screen.say(command::CloseSheet{});
        return;
    case KeypadResult::None:
        break;
    }
    if (keys.entry != mend->figure) {
        act(screen, mend::TypeFigure{keys.entry});
    }
}

} // namespace lanternleaf
