// The sheets of a batch: which card, how many and for whom, a nickname, one builder, what to take along.
#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "controls/slider.h"
#include "controls/text_field.h"
#include "screens/batch.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

void draw_batch_card_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "batch-card", usual_side(ui.m), true, sheet_height(ui, 520),
                     ui.words("batch.which_card"), Icon::People);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "batch-card/rows", sheet.body());
    std::vector<SheetRow> rows;
    for (const ShelfCard& card : screen.state.cards) {
        if (card.trouble.empty() && card.problems == 0) {
            rows.push_back({"batch-card/" + card.name, card.title, Icon::Bulb,
                            command::Batch{batching::BeginSeveral{card.path}}, false});
        }
    }
    scroll.done(draw_rows(screen, sheet.body(), scroll.top(), rows) - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_batch_new_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    if (!screen.state.new_batch) {
        return;
    }
    const NewBatch& fresh = *screen.state.new_batch;
    const Words& words = ui.words;
    SheetPaper sheet(ui, "batch-new", usual_side(ui.m), true, sheet_height(ui, 470), fresh.title,
                     Icon::People);
    if (!sheet.shown()) {
        return;
    }
    const Rect& body = sheet.body();
    Scroll scroll(ui, "batch-new/rows", body);
    const TextStyle text = ui.m.type(Type::Body);
    float y = scroll.top();
    ui.pen().text({body.x, y}, words("batch.how_many"), text.bold(), ui.theme().ink);
    y += text.lead + 6;
    double count = fresh.count;
    StepperLook look;
    look.label = words("batch.how_many");
    look.value_text = std::to_string(fresh.count);
    look.low = 1;
    look.high = kMostInBatch;
    if (stepper(ui, "batch-new/count", {body.x, y, body.w, ui.m.button_h}, look, count)) {
        screen.say(command::Batch{batching::SetCount{static_cast<int>(count)}});
    }
    y += ui.m.button_h + 18;
    ui.pen().text({body.x, y}, words("batch.who_makes"), text.bold(), ui.theme().ink);
    y += text.lead + 6;
    int who = fresh.purpose == BatchFor::group ? 1 : 0;
    const Segment segments[] = {{words("batch.i_make"), Icon::None, "repeater"},
                                {words("batch.class_makes"), Icon::None, "group"}};
    if (segmented(ui, "batch-new/for", {body.x, y, body.w, ui.m.button_h}, segments, who)) {
        screen.say(command::Batch{batching::SetPurpose{who == 1 ? BatchFor::group : BatchFor::repeater}});
    }
    y += ui.m.button_h + 14;
    y += ui.pen().paragraph({body.x, y}, body.w, words("batch.private"), ui.m.type(Type::Small),
                            ui.theme().ink2) +
         16;
    const ButtonLook next{.label = words("batch.next_audience"), .icon = Icon::Next};
    if (primary_button(ui, "batch-new/next", {body.x, y, body.w, ui.m.primary_h}, next)) {
        screen.say(command::Batch{batching::AskAudience{}});
    }
    y += ui.m.primary_h + 8;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_batch_name_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const Words& words = ui.words;
    SheetPaper sheet(ui, "batch-name", usual_side(ui.m), true, sheet_height(ui, 340), words("batch.name"),
                     Icon::People);
    if (!sheet.shown() || !screen.state.batch) {
        return;
    }
    const Rect& body = sheet.body();
    const auto end_typing = [&] {
        ui.typing_in.clear();
        ui.host().show_keyboard(false, body);
    };
    float y = body.y;
    y += ui.pen().paragraph({body.x, y}, body.w, words("batch.name_words"), ui.m.type(Type::Body),
                            ui.theme().ink) +
         14;
    std::string name = screen.state.batch->name;
    static_cast<void>(text_field(ui, "batch-name/field", {body.x, y, body.w, ui.m.field_h},
                                 {.label = words("batch.name_field"), .longest = 40}, name));
    if (name != screen.state.batch->name) {
        screen.say(command::Batch{batching::TypeName{name}});
    }
    y += ui.m.field_h + 14;
    if (primary_button(ui, "batch-name/begin", {body.x, y, body.w, ui.m.primary_h},
                       {.label = words("batch.name_begin"), .icon = Icon::Make})) {
        end_typing();
        screen.say(command::Batch{batching::KeepName{true}});
    }
    y += ui.m.primary_h + 10;
    if (button(ui, "batch-name/add", {body.x, y, body.w, ui.m.button_h},
               {.label = words("batch.name_add"), .icon = Icon::Plus})) {
        screen.say(command::Batch{batching::KeepName{false}});
    }
    if (sheet.closed()) {
        end_typing();
        screen.say(command::CloseSheet{});
    }
}

void draw_batch_builder_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    if (!screen.state.batch) {
        return;
    }
    const BatchState& page = *screen.state.batch;
    const Words& words = ui.words;
    std::string title = shown_maker(page.batch, page.builder);
    std::vector<SheetRow> rows;
    for (const ShelfBuild& build : screen.state.builds) {
        if (!page.build.empty() && build.id == page.build) {
            if (!build.finished) {
                rows.push_back({"builder/carry-on", words("batch.carry_on"), Icon::Make,
                                command::Resume{build.path}, false});
            }
            rows.push_back({"builder/record", words("batch.look_record"), Icon::Log,
                            command::OpenLog{build.path}, false});
        }
    }
    if (!page.batch.closed) {
        rows.push_back({"builder/another",
                        words(page.build.empty() ? "batch.name_begin" : "batch.another_card"), Icon::Plus,
                        command::Batch{batching::Begin{page.builder}}, false});
    }
    if (!page.builder.empty()) {
        rows.push_back(
            {"builder/hide", words("batch.hide"), Icon::EyeOff, command::Batch{batching::HideName{}}, false});
    }
    if (title.empty()) {
        title = page.batch.title;
    }
    SheetPaper sheet(ui, "builder", usual_side(ui.m), true, sheet_height(ui, 380), title, Icon::People);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "builder/rows", sheet.body());
    scroll.done(draw_rows(screen, sheet.body(), scroll.top(), rows) - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_batch_take_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    if (!screen.state.batch) {
        return;
    }
    const BatchState& page = *screen.state.batch;
    const Words& words = ui.words;
    SheetPaper sheet(ui, "batch-take", usual_side(ui.m), true, sheet_height(ui, 620), words("batch.take"),
                     Icon::Book);
    if (!sheet.shown()) {
        return;
    }
    const Rect& body = sheet.body();
    Scroll scroll(ui, "batch-take/rows", body);
    const TextStyle text = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    float y = scroll.top();
    const char* source = page.needs.empty()                      ? "batch.take_none"
                         : page.batch.purpose == BatchFor::group ? "batch.take_group"
                                                                 : "batch.take_repeater";
    for (const NeedLine& need : page.needs) {
        const float amount_w =
            std::max(ui.fonts().width(need.amount, text.bold()), ui.fonts().width(need.spare, small)) + 8;
        const float words_h =
            ui.pen().paragraph({body.x, y}, body.w - amount_w - 12, need.thing, text, ui.theme().ink);
        ui.pen().text({body.right() - 8, y}, need.amount, text.bold(), ui.theme().ink, Align::Right);
        ui.pen().text({body.right() - 8, y + text.lead}, need.spare, small, ui.theme().ink2, Align::Right);
        y += std::max(words_h, text.lead + (need.spare.empty() ? 0 : small.lead)) + 10;
    }
    y += ui.pen().paragraph({body.x, y + 6}, body.w - 8, words(source), small, ui.theme().ink2) + 14;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
