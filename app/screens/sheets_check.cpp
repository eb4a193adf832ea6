// The sheets round a check: the keypad for a reading, what to look for without a meter, and what to do first
// when something is wrong.
#include "controls/button.h"
#include "controls/keypad.h"
#include "controls/scroll.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Right end of the keypad's range bar: room to show a reading that is well off.
double full_scale(const CheckView& check) {
    return check.high > 0 ? check.high * 2 + 0.4 : 1.0;
}

} // namespace

void draw_keypad_sheet(Screen& screen) {
    if (!screen.state.build) {
        return;
    }
    Ui& ui = screen.ui;
    const Check* check = find_check(*screen.state.build, screen.state.entry.check);
    if (check == nullptr) {
        screen.say(command::CloseSheet{});
        return;
    }
    const CheckView view = check_view(*screen.state.build, *check);
    KeypadLook look;
    look.title = ui.words("keypad.reading", {{"check", view.title}});
    look.expect = ui.words("keypad.expect", {{"range", view.expect}});
    look.unit = view.unit;
    look.save = ui.words("keypad.save");
    look.low = view.low;
    look.high = view.high;
    look.full = full_scale(view);
    if (check->kind == CheckKind::resistance) {
        look.low_text = ui.words.number(view.low, 1);
        look.high_text = ui.words.number(view.high, 1);
    }
    if (check->kind == CheckKind::resistance || check->kind == CheckKind::open) {
        look.over = ui.words("keypad.over");
    }
    if (ui.m.form == Form::Landscape) {
        look.over_panel = make_regions(ui.m, {.rail = true}).panel;
    }
    KeypadEntry keys{.open = true, .entry = screen.state.entry.text};
    switch (keypad(ui, "keypad", look, keys)) {
    case KeypadResult::Save:
        screen.say(command::TypeReading{keys.entry});
        screen.say(command::SaveReading{});
        return;
    case KeypadResult::Over:
        screen.say(command::MeterShowsOpen{});
        return;
    case KeypadResult::Close:
        screen.say(command::CloseSheet{});
        return;
    case KeypadResult::None:
        break;
    }
    if (keys.entry != screen.state.entry.text) {
        screen.say(command::TypeReading{keys.entry});
    }
}

void draw_no_meter_sheet(Screen& screen) {
    if (!screen.state.build) {
        return;
    }
    Ui& ui = screen.ui;
    const Check* check = find_check(*screen.state.build, screen.state.entry.check);
    if (check == nullptr) {
        screen.say(command::CloseSheet{});
        return;
    }
    const TextStyle body = ui.m.type(Type::Body);
    const float width = ui.m.form == Form::Landscape ? 484 : ui.m.window.w - 40;
    const float words = ui.fonts().wrapped_height(check->without_meter, body, width);
    SheetPaper sheet(ui, "look", usual_side(ui.m), true, sheet_height(ui, words + 2 * ui.m.primary_h + 60),
                     ui.words("make.look", {{"check", check->title}}), Icon::Eye);
    if (!sheet.shown()) {
        return;
    }
    Rect r = sheet.body();
    r.cut_top(ui.pen().paragraph({r.x, r.y}, r.w, check->without_meter, body, ui.theme().ink));
    r.cut_top(20);
    if (leaf_button(ui, "look/yes", r.cut_top(ui.m.primary_h),
                    {.label = ui.words("wrong.yes"), .icon = Icon::Tick})) {
        screen.say(command::LookedAt{true});
    }
    r.cut_top(12);
    if (leaf_button(ui, "look/no", r.cut_top(ui.m.primary_h),
                    {.label = ui.words("wrong.no"), .icon = Icon::Cross})) {
        screen.say(command::LookedAt{false});
    }
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_wrong_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "wrong", usual_side(ui.m), true, sheet_height(ui, 540), ui.words("make.wrong"),
                     Icon::Wrong);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "wrong/rows", sheet.body());
    const Rect& body = sheet.body();
    float y = scroll.top();
    const TextStyle text = ui.m.type(Type::Body);
    y += ui.pen().paragraph({body.x, y}, body.w, ui.words("wrong.warm"), text, ui.theme().ink) + 14;
    std::vector<SheetRow> rows;
    if (screen.state.build && screen.state.build->record.cell_in) {
        rows.push_back(
            {"wrong/cell-out", ui.words("wrong.cell_out"), Icon::Holder, command::CellOut{}, false});
    }
    rows.push_back({"wrong/differs", ui.words("wrong.not_as_planned"), Icon::Differ,
                    command::OfferDifferences{}, false});
    rows.push_back({"wrong/check", ui.words("wrong.this_step"), Icon::Meter, command::ProveStep{}, false});
    rows.push_back(
        {"wrong/mend", ui.words("wrong.stays_dark"), Icon::BulbOff, command::GoTo{Place::mend}, false});
    rows.push_back(
        {"wrong/swallowed", ui.words("wrong.swallowed"), Icon::Phone, command::ReadNotice{}, false});
    y = draw_rows(screen, body, y, rows);
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
