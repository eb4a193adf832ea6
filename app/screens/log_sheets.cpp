// The sheets over the Log: the particulars of one step, and a note to be written.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/text_field.h"
#include "screens/log.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Title at the left, words at the right, and under them a bar or trough.
float draw_move_time(Ui& ui, const Rect& r, float y, const LogStepView::MoveRow& row) {
    const TextStyle small = ui.m.type(Type::Small);
    const float time_w = ui.fonts().width(row.time, small.bold()) + 8;
    const float words = ui.pen().paragraph({r.x, y}, r.w - time_w - 12, row.title, small, ui.theme().ink);
    ui.pen().text_in({r.right() - time_w, y, time_w, small.lead}, row.time, small.bold(), ui.theme().ink,
                     Align::Right);
    share_bar(ui, {r.x, y + words + 3, r.w, 8}, row.share, ui.theme().leaf);
    return words + 22;
}

float draw_reading_row(Ui& ui, const Rect& r, float y, const LogStepView::ReadingRow& row) {
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    const float value_w = std::min(ui.fonts().width(row.value, body.bold()) + 34, r.w * 0.62f);
    const float title_w = r.w - value_w - 8;
    const float title_h = ui.pen().paragraph({r.x, y}, title_w, row.title, body, ui.theme().ink);
    draw_icon(ui.pen(), row.fits ? Icon::Fine : Icon::Caution, {r.right() - value_w + 12, y + body.lead / 2},
              22, row.fits ? ui.theme().leaf_text : ui.theme().ochre);
    const float value_h = ui.pen().paragraph({r.right() - value_w + 30, y}, value_w - 30, row.value,
                                             body.bold(), ui.theme().ink);
    float height = std::max(title_h, value_h);
    if (row.has_range) {
        draw_trough(ui, {r.x + 8, y + height + 6, 130, 10}, row.range);
        ui.pen().text_in({r.x + 152, y + height, r.w - 152, 22},
                         ui.fonts().fitted(row.expected, small, r.w - 152), small, ui.theme().ink2,
                         Align::Left);
        height += 26;
    } else if (!row.expected.empty()) {
        height += ui.pen().paragraph({r.x, y + height}, r.w, row.expected, small, ui.theme().ink2);
    }
    return height + 12;
}

float draw_head_of(Ui& ui, const Rect& r, float y, const std::string& words) {
    divider(ui, {r.x, y + 4}, {r.right(), y + 4});
    return 14 + draw_heading(ui, r, y + 14, words, Type::H2) + 6;
}

} // namespace

void draw_log_step_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const LogStepView view = make_log_step_view(screen.state, screen.state.log_page.step, screen.ui.words);
    SheetPaper sheet(ui, "log-step", usual_side(ui.m), true, sheet_height(ui, 720), view.title, Icon::Log);
    if (!sheet.shown()) {
        return;
    }
    const Rect& body = sheet.body();
    Scroll scroll(ui, "log-step/rows", body);
    const TextStyle text = ui.m.type(Type::Body);
    const Rect r{body.x, body.y, body.w - 8, body.h};
    float y = scroll.top();
    y += ui.pen().paragraph({r.x, y}, r.w, view.state, text.bold(), ui.theme().ink) + 6;
    if (!view.verdict.empty()) {
        y += ui.pen().paragraph({r.x, y}, r.w, view.verdict, text, ui.theme().ink) + 6;
    }
    for (const LogLine& line : view.lines) {
        y += draw_log_line(ui, r, y, line);
    }
    if (!view.readings.empty()) {
        y += draw_head_of(ui, r, y, ui.words("log.readings"));
        for (const LogStepView::ReadingRow& row : view.readings) {
            y += draw_reading_row(ui, r, y, row);
        }
    }
    if (!view.moves.empty()) {
        y += draw_head_of(ui, r, y, ui.words("log.move_times"));
        for (const LogStepView::MoveRow& row : view.moves) {
            y += draw_move_time(ui, r, y, row);
        }
    }
    scroll.done(y + 10 - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_log_note_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "log-note", usual_side(ui.m), true, sheet_height(ui, 300),
                     ui.words("log.note_title"), Icon::Log);
    if (!sheet.shown()) {
        return;
    }
    const Rect& body = sheet.body();
    const TextStyle text = ui.m.type(Type::Body);
    float y = body.y;
    y += ui.pen().paragraph({body.x, y}, body.w, ui.words("log.note_words"), text, ui.theme().ink) + 14;
    std::string note = screen.state.log_page.note;
    const TextFieldHit hit =
        text_field(ui, "log-note/field", {body.x, y, body.w, ui.m.field_h},
                   {.label = ui.words("log.tap_and_type"), .longest = kLongestNote}, note);
    if (note != screen.state.log_page.note) {
        screen.say(command::Log{logbook::TypeNote{note}});
    }
    static_cast<void>(hit);
    y += ui.m.field_h + 14;
    if (!note.empty()) {
        const Rect keep{body.x, y, body.w, ui.m.primary_h};
        if (primary_button(ui, "log-note/keep", keep,
                           {.label = ui.words("log.keep_note"), .icon = Icon::Tick})) {
            ui.typing_in.clear();
            ui.host().show_keyboard(false, keep);
            screen.say(command::Log{logbook::KeepNote{}});
        }
    }
    if (sheet.closed()) {
        ui.typing_in.clear();
        ui.host().show_keyboard(false, body);
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
