// The sheets about the cells of a batch: counting them, and closing only when they match or with what is
// missing on record. An adult holds to confirm, as for the coin-cell notice.
#include "controls/button.h"
#include "controls/hold_button.h"
#include "controls/panel.h"
#include "controls/scroll.h"
#include "controls/slider.h"
#include "screens/batch.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

HoldLook adult_holds(const Words& words, const std::string& label) {
    return {.label = label,
            .idle = words("batch.hold"),
            .one_more = words("batch.hold_one"),
            .more = words("batch.hold_more", {{"n", "{n}"}})};
}

// A count in large figures between a step down and a step up.
bool counter(Ui& ui, const char* name, const std::string& label, const Rect& body, float& y, int& count) {
    const TextStyle text = ui.m.type(Type::Body);
    y += ui.pen().paragraph({body.x, y}, body.w, label, text.bold(), ui.theme().ink) + 6;
    double value = count;
    StepperLook look;
    look.label = label;
    look.value_text = std::to_string(count);
    look.low = 0;
    look.high = 9999;
    const float height = std::max(ui.m.primary_h, ui.m.button_h);
    const bool changed = stepper(ui, name, {body.x, y, body.w, height}, look, value);
    y += height + 16;
    count = static_cast<int>(value);
    return changed;
}

} // namespace

void draw_batch_cells_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const Words& words = ui.words;
    SheetPaper sheet(ui, "batch-cells", usual_side(ui.m), true, sheet_height(ui, 500), words("batch.cells"),
                     Icon::Cellsafe);
    if (!sheet.shown() || !screen.state.batch) {
        return;
    }
    const Rect& body = sheet.body();
    Scroll scroll(ui, "batch-cells/rows", body);
    float y = scroll.top();
    y += ui.pen().paragraph({body.x, y}, body.w, words("batch.tray"), ui.m.type(Type::Body), ui.theme().ink) +
         14;
    batching::CountCells counts{screen.state.batch->count_out, screen.state.batch->count_back};
    bool changed = counter(ui, "batch-cells/out", words("batch.out_of_tray"), body, y, counts.out);
    changed = counter(ui, "batch-cells/back", words("batch.back_on_tray"), body, y, counts.back) || changed;
    if (changed) {
        screen.say(command::Batch{counts});
    }
    if (hold_button(ui, "batch-cells/adult", {body.x, y, body.w, ui.m.hold_h},
                    adult_holds(words, words("batch.adult_counted")))) {
        screen.say(command::Batch{batching::KeepCells{}});
    }
    y += ui.m.hold_h + 10;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_batch_close_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    if (!screen.state.batch) {
        return;
    }
    const Words& words = ui.words;
    const CellBalance& cells = screen.state.batch->board.cells;
    const auto sum = [&](const char* key) {
        return words(key, {{"out", std::to_string(cells.out)},
                           {"back", std::to_string(cells.back)},
                           {"cards", std::to_string(cells.in_finished)}});
    };
    const bool missing = cells.missing > 0;
    SheetPaper sheet(ui, "batch-close", usual_side(ui.m), true, sheet_height(ui, missing ? 620 : 360),
                     words("batch.close"), Icon::Lock);
    if (!sheet.shown()) {
        return;
    }
    const Rect& body = sheet.body();
    Scroll scroll(ui, "batch-close/rows", body);
    const TextStyle text = ui.m.type(Type::Body);
    float y = scroll.top();
    const auto paragraph = [&](const std::string& line, TextStyle style, Colour colour) {
        y += ui.pen().paragraph({body.x, y}, body.w - 8, line, style, colour) + 10;
    };
    if (missing) {
        draw_icon(ui.pen(), Icon::Problem, {body.x + 18, y + ui.m.type(Type::H1).lead / 2}, 36,
                  ui.theme().plum);
        y += ui.pen().paragraph({body.x + 46, y}, body.w - 54,
                                words("batch.close_missing", {{"n", cells.missing}}), ui.m.type(Type::H1),
                                ui.theme().plum) +
             6;
        paragraph(sum("batch.close_sum"), text, ui.theme().ink);
        paragraph(words("batch.close_look"), text.bold(), ui.theme().ink);
        if (cells.in_open > 0) {
            paragraph(words("batch.close_open", {{"n", std::min(cells.in_open, cells.missing)}}), text,
                      ui.theme().ink);
        }
        paragraph(words("batch.close_act"), text.bold(), ui.theme().plum);
        if (leaf_button(ui, "batch-close/notice", {body.x, y, body.w, ui.m.button_h},
                        {.label = words("batch.close_notice"), .icon = Icon::Cellsafe, .bold = true})) {
            screen.say(command::ReadNotice{});
        }
        y += ui.m.button_h + 10;
    } else {
        paragraph(cells.missing < 0 ? cells_in_words(cells, words) : sum("batch.close_match"), text,
                  ui.theme().ink);
    }
    if (button(ui, "batch-close/count", {body.x, y, body.w, ui.m.button_h},
               {.label = words("batch.count_cells"), .icon = Icon::Plus})) {
        screen.say(command::Batch{batching::OpenCells{}});
    }
    y += ui.m.button_h + 16;
    if (cells.missing >= 0 &&
        hold_button(ui, "batch-close/adult", {body.x, y, body.w, ui.m.hold_h},
                    adult_holds(words, missing ? words("batch.close_anyway", {{"n", cells.missing}})
                                               : words("batch.adult_counted")))) {
        screen.say(command::Batch{batching::Close{}});
    }
    y += (cells.missing >= 0 ? ui.m.hold_h : 0.0f) + 10;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
