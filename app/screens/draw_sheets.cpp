// The sheets of the Draw place: what the whole card has, which tape, which light, who it is for, a new sheet.
#include "base/readout.h"
#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/slider.h"
#include "controls/text_field.h"
#include "safety/audience.h"
#include "screens/draw.h"
#include "screens/sheets.h"
#include "view/part_words.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Command drawn(DrawCommand what) {
    return command::Draw{std::move(what)};
}

/// A sheet of rows, with a closing cross.
void choose_from(Screen& screen, const char* name, const std::string& title, Icon icon,
                 const std::vector<SheetRow>& rows) {
    Ui& ui = screen.ui;
    const float height = (ui.m.button_h + 10) * static_cast<float>(rows.size()) + 20;
    SheetPaper sheet(ui, name, usual_side(ui.m), true, sheet_height(ui, height), title, icon);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, std::string(name) + "/rows", sheet.body());
    const float y = draw_rows(screen, sheet.body(), scroll.top(), rows);
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_new_sheet(Screen& screen) {
    const Words& words = screen.ui.words;
    const auto row = [](const char* name, const std::string& label, double w, double h) {
        return SheetRow{name, label, Icon::Draw, drawn(draw::NewCard{w, h}), false};
    };
    choose_from(screen, "draw-new", words("draw.new_title"), Icon::Plus,
                {row("draw-new/a6", words("draw.new_a6"), 148, 105),
                 row("draw-new/a6-up", words("draw.new_a6_up"), 105, 148),
                 row("draw-new/a5", words("draw.new_a5"), 210, 148),
                 row("draw-new/quarter", words("draw.new_quarter"), 140, 108),
                 row("draw-new/half", words("draw.new_half"), 216, 140),
                 row("draw-new/square", words("draw.new_square"), 130, 130)});
}

void draw_tape_sheet(Screen& screen) {
    const Words& words = screen.ui.words;
    const DrawState& draw = *screen.state.draw;
    std::vector<SheetRow> rows;
    const Strip* strip = find_strip(draw.card, draw.selected);
    const std::string& chosen = strip != nullptr ? strip->tape : draw.tape;
    for (const auto& [id, tape] : draw.parts.tapes) {
        rows.push_back(
            {"draw-tape/" + id,
             words(tape.adhesive == Adhesive::conductive ? "draw.tape_conducts" : "draw.tape_plain",
                   {{"tape", capital(spoken_part(id, words))}, {"width", words.mm(tape.width_mm)}}),
             Icon::Strip, drawn(draw::ChooseTape{id}), id == chosen});
    }
    rows.push_back({"draw-tape/learn", words("learn.tape"), Icon::Book,
                    command::Learn{learning::Begin{PartSort::tape, chosen}}, false});
    choose_from(screen, "draw-tape", words("draw.tape"), Icon::Strip, rows);
}

void draw_light_sheet(Screen& screen) {
    const Words& words = screen.ui.words;
    const DrawState& draw = *screen.state.draw;
    const Led* led = find_led(draw.card, draw.selected);
    const std::string& chosen = led != nullptr ? led->type : draw.led_type;
    std::vector<SheetRow> rows;
    // The package at hand first: a maker has one kind of carrier and several colours.
    const std::string package = draw.parts.leds.at(chosen).package;
    for (const bool same : {true, false}) {
        for (const auto& [id, type] : draw.parts.leds) {
            if ((type.package == package) == same) {
                rows.push_back(
                    {"draw-light/" + id,
                     words("draw.light_kind", {{"colour", capital(spoken_part(type.colour, words))},
                                               {"package", spoken_part(type.package, words)}}),
                     Icon::Bulb, drawn(draw::ChooseLight{id, 0.0}),
                     id == chosen && (led != nullptr || draw.ohm <= 0.0)});
            }
        }
        if (same && draw.parts.resistor && led == nullptr) {
            for (const double ohm : {4.7, 10.0, 47.0}) {
                rows.push_back({"draw-light/" + readout_number(ohm, 1) + "-ohm",
                                words("draw.resistor_of", {{"ohm", words.ohm(ohm)}}), Icon::Ruler,
                                drawn(draw::ChooseLight{"", ohm}), draw.ohm == ohm});
            }
        }
    }
    rows.push_back({"draw-light/learn", words("learn.ask_minus"), Icon::Book,
                    command::Learn{learning::Begin{PartSort::led, chosen}}, false});
    choose_from(screen, "draw-light", led != nullptr ? words("draw.which_light") : words("draw.next_light"),
                Icon::Bulb, rows);
}

void draw_audience_choice(Screen& screen) {
    const DrawState& draw = *screen.state.draw;
    std::vector<SheetRow> rows;
    for (const Audience who : {Audience::adults, Audience::children, Audience::small_children,
                               Audience::school_class, Audience::sale}) {
        rows.push_back({std::string("draw-audience/") + name_of(who), spoken(who, screen.ui.words),
                        Icon::People, drawn(draw::Do{{edit::SetAudience{who}}}),
                        draw.card.audience_given && draw.card.audience == who});
    }
    choose_from(screen, "draw-audience", screen.ui.words("sheet.who_for"), Icon::People, rows);
}

bool number(Screen& screen, const char* name, const std::string& label, const Rect& body, float& y,
            double low, double high, double step, double& value) {
    Ui& ui = screen.ui;
    const TextStyle text = ui.m.type(Type::Body);
    const Rect row{body.x, y, body.w, ui.m.button_h};
    const float half = std::min(300.0f, row.w * 0.62f);
    ui.pen().text_in({row.x, row.y, row.w - half, row.h}, label, text, ui.theme().ink, Align::Left);
    StepperLook look;
    look.label = label;
    look.value_text = ui.words.mm(value);
    look.low = low;
    look.high = high;
    look.step = step;
    y += ui.m.button_h + 10;
    return stepper(ui, name, {row.right() - half, row.y, half, row.h}, look, value);
}

/// The picture under the plan: chosen, moved, sized, taken away.
float draw_art_rows(Screen& screen, const Rect& body, float y) {
    Ui& ui = screen.ui;
    const Sheet& sheet = screen.state.draw->card.sheet;
    ui.pen().text({body.x, y}, ui.words("draw.art"), ui.m.type(Type::Body).bold(), ui.theme().ink);
    y += ui.m.type(Type::Body).lead + 6;
    if (ui.host().can_pick()) {
        const ButtonLook look{.label = sheet.art ? ui.words("draw.art_other") : ui.words("draw.art_choose"),
                              .icon = Icon::Photo};
        if (button(ui, "draw-card/art", {body.x, y, body.w, ui.m.button_h}, look)) {
            ui.host().pick_picture(); // in the very frame of the tap, as browsers ask
        }
        y += ui.m.button_h + 10;
    } else {
        y += ui.pen().paragraph({body.x, y}, body.w, ui.words("draw.art_drop"), ui.m.type(Type::Body),
                                ui.theme().ink) +
             10;
    }
    if (!sheet.art) {
        return y;
    }
    Art art = *sheet.art;
    const bool wider = number(screen, "draw-card/art-width", ui.words("draw.width"), body, y, 10,
                              2 * kMostSheet_mm, 2, art.width_mm);
    const bool along = number(screen, "draw-card/art-left", ui.words("draw.from_left"), body, y,
                              -kMostSheet_mm, kMostSheet_mm, 1, art.at_mm.x);
    const bool down = number(screen, "draw-card/art-top", ui.words("draw.from_top"), body, y, -kMostSheet_mm,
                             kMostSheet_mm, 1, art.at_mm.y);
    if (wider || along || down) {
        act(screen, draw::PlaceArt{art});
    }
    return draw_rows(screen, body, y + 4,
                     {{"draw-card/no-art", ui.words("draw.art_away"), Icon::Trash,
                       drawn(draw::PlaceArt{std::nullopt}), false}});
}

void draw_card_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const DrawState& draw = *screen.state.draw;
    SheetPaper sheet(ui, "draw-card", usual_side(ui.m), true, sheet_height(ui, 640), ui.words("board.card"),
                     Icon::Draw);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "draw-card/rows", sheet.body());
    const Rect& body = sheet.body();
    float y = scroll.top();
    const TextStyle bold = ui.m.type(Type::Body).bold();
    const auto head = [&](const std::string& words) {
        ui.pen().text({body.x, y}, words, bold, ui.theme().ink);
        y += bold.lead + 6;
    };
    head(ui.words("draw.title"));
    std::string title = draw.title.value_or(draw.card.title);
    const TextFieldHit typed = text_field(ui, "draw-card/title", {body.x, y, body.w, ui.m.field_h},
                                          {.label = ui.words("draw.title_of")}, title);
    if (typed != TextFieldHit::None) {
        act(screen, draw::TypeTitle{title, typed == TextFieldHit::Done});
    }
    y += ui.m.field_h + 12;
    head(ui.words("draw.sheet"));
    double width = draw.card.sheet.width_mm;
    double height = draw.card.sheet.height_mm;
    const bool wider = number(screen, "draw-card/width", ui.words("draw.width"), body, y, kLeastSheet_mm,
                              kMostSheet_mm, 1, width);
    const bool taller = number(screen, "draw-card/height", ui.words("draw.height"), body, y, kLeastSheet_mm,
                               kMostSheet_mm, 1, height);
    if (wider || taller) {
        act(screen, draw::Do{{edit::SetSheetSize{width, height}}});
    }
    y += 4;
    std::vector<SheetRow> rows{
        {"draw-card/audience",
         draw.card.audience_given ? ui.words("draw.for", {{"who", spoken(draw.card.audience, ui.words)}})
                                  : ui.words("draw.say_who_card"),
         Icon::People, command::OpenSheet{SheetKind::draw_audience}, false},
        {"draw-card/print", ui.words("print.title"), Icon::Log, command::OpenSheet{SheetKind::print}, false},
        {"draw-card/trace", ui.words("make.trace_from_screen"), Icon::Sun, drawn(draw::OpenLightBox{}),
         false},
        {"draw-card/crease", ui.words("draw.add_crease"), Icon::Plus,
         drawn(draw::Add{SheetMark::Kind::crease}), false}};
    if (!draw.card.sheet.folds.empty()) {
        rows.push_back({"draw-card/no-crease", ui.words("draw.no_creases"), Icon::Trash,
                        drawn(draw::Do{{edit::SetFolds{{}}}}), false});
    }
    rows.push_back({"draw-card/keepout", ui.words("draw.add_clear"), Icon::Plus,
                    drawn(draw::Add{SheetMark::Kind::clear}), false});
    if (!draw.card.sheet.keepouts.empty()) {
        rows.push_back({"draw-card/no-keepout", ui.words("draw.no_clear"), Icon::Trash,
                        drawn(draw::Do{{edit::SetKeepouts{{}}}}), false});
    }
    rows.push_back({"draw-card/learn", ui.words("learn.title"), Icon::Book,
                    command::Learn{learning::OpenList{}}, false});
    rows.push_back({"draw-card/send", ui.words("draw.send"), Icon::Share, drawn(draw::SendCard{}), false});
    rows.push_back({"draw-card/new", ui.words("draw.begin_new"), Icon::Draw,
                    command::OpenSheet{SheetKind::draw_new}, false});
    y = draw_rows(screen, body, y, rows);
    y = draw_art_rows(screen, body, y + 6);
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        if (draw.title) {
            act(screen, draw::TypeTitle{*draw.title, true});
        }
        screen.say(command::CloseSheet{});
    }
}

} // namespace

void draw_plan_sheet(Screen& screen) {
    if (screen.state.sheet == SheetKind::draw_new) {
        draw_new_sheet(screen);
        return;
    }
    if (!screen.state.draw) {
        screen.say(command::CloseSheet{});
        return;
    }
    switch (screen.state.sheet) {
    case SheetKind::draw_card:
        draw_card_sheet(screen);
        break;
    case SheetKind::draw_tape:
        draw_tape_sheet(screen);
        break;
    case SheetKind::draw_light:
        draw_light_sheet(screen);
        break;
    case SheetKind::draw_audience:
        draw_audience_choice(screen);
        break;
    case SheetKind::print:
        draw_print_sheet(screen);
        break;
    default:
        break;
    }
}

} // namespace lanternleaf
