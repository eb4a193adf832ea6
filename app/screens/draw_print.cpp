// The printing sheet: which pages, on what paper, for how many cards; then one PDF.
#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/segmented.h"
#include "controls/slider.h"
#include "screens/draw.h"
#include "screens/sheets.h"

#include <algorithm>
#include <string>

namespace lanternleaf {

namespace {

constexpr int kMostAtOnce = 60; ///< a school year's class and some; the command line takes more

Command wish_for(const PrintoutWish& wish) {
    return command::Draw{draw::WishPrint{wish}};
}

SheetRow page_row(const PrintoutWish& now, const char* name, const std::string& label,
                  bool PrintoutWish::*page) {
    PrintoutWish next = now;
    next.*page = !(now.*page);
    return {name, label, now.*page ? Icon::Tick : Icon::Plus, wish_for(next), now.*page};
}

float draw_paper(Screen& screen, const Rect& body, float y) {
    Ui& ui = screen.ui;
    const PrintoutWish& now = screen.state.print;
    const Segment papers[] = {{.label = ui.words("print.a4"), .name = "a4"},
                              {.label = ui.words("print.letter"), .name = "letter"}};
    int chosen = now.paper == Paper::a4 ? 0 : 1;
    const float w = std::min(body.w, segmented_width(ui, papers) + 40);
    const Rect place = beside_label(ui, body, y, ui.words("print.paper"), w);
    if (segmented(ui, "print/paper", place, papers, chosen)) {
        PrintoutWish next = now;
        next.paper = chosen == 0 ? Paper::a4 : Paper::letter;
        screen.say(wish_for(next));
    }
    return y;
}

float draw_count(Screen& screen, const Rect& body, float y) {
    Ui& ui = screen.ui;
    const PrintoutWish& now = screen.state.print;
    const Rect place = beside_label(ui, body, y, ui.words("print.cards"), std::min(300.0f, body.w * 0.62f));
    StepperLook look;
    look.label = ui.words("print.cards");
    look.value_text = std::to_string(now.cards);
    look.low = 1;
    look.high = kMostAtOnce;
    look.step = 1;
    double cards = now.cards;
    if (stepper(ui, "print/cards", place, look, cards)) {
        PrintoutWish next = now;
        next.cards = static_cast<int>(cards);
        screen.say(wish_for(next));
    }
    return y;
}

} // namespace

void draw_print_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const PrintoutWish now = screen.state.print;
    SheetPaper sheet(ui, "print", usual_side(ui.m), true, sheet_height(ui, 660), ui.words("print.title"),
                     Icon::Log);
    if (!sheet.shown()) {
        return;
    }
    Rect body = sheet.body();
    const ButtonLook make{.label = ui.words("print.make"), .icon = Icon::Tick, .bold = true};
    Rect foot = body.cut_bottom(ui.m.primary_h + 12);
    foot.cut_top(12);
    if (primary_button(ui, "print/make", foot, make)) {
        screen.say(command::Draw{draw::Print{}});
    }
    Scroll scroll(ui, "print/rows", body);
    float y = scroll.top();
    y = draw_rows(screen, body, y,
                  {page_row(now, "print/template", ui.words("print.template"), &PrintoutWish::with_template),
                   page_row(now, "print/steps", ui.words("print.steps"), &PrintoutWish::with_steps),
                   page_row(now, "print/list", ui.words("print.list"), &PrintoutWish::with_list),
                   page_row(now, "print/label", ui.words("print.label"), &PrintoutWish::with_label)});
    y += 6;
    y = draw_paper(screen, body, y);
    y = draw_count(screen, body, y);
    y = draw_rows(screen, body, y,
                  {page_row(now, "print/mirror", ui.words("print.mirror"), &PrintoutWish::mirrored)});
    y = draw_rows(
        screen, body, y,
        {{"print/page", ui.words("print.page"), Icon::Ear, command::Draw{draw::PrintPage{}}, false}});
    const TextStyle small = ui.m.type(Type::Small);
    y +=
        ui.pen().paragraph({body.x, y + 4}, body.w, ui.words("print.true_size"), small, ui.theme().ink2) + 12;
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
