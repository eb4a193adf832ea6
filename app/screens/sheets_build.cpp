// The sheets that change a build: who will have the card, and ui.words("make.differs").
#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/slider.h"
#include "guide/change.h"
#include "safety/audience.h"
#include "screens/make.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr Audience kAudiences[] = {Audience::adults, Audience::children, Audience::small_children,
                                   Audience::school_class, Audience::sale};

float draw_ways(Screen& screen, const Rect& body, float y) {
    Ui& ui = screen.ui;
    const TextStyle text = ui.m.type(Type::Body);
    const AudienceAdvice& advice = screen.state.advice;
    y += draw_heading(ui, body, y, advice.headline, Type::H2) + 6;
    for (const std::string& sentence : advice.sentences) {
        y += ui.pen().paragraph({body.x, y}, body.w, sentence, text, ui.theme().ink) + 8;
    }
    y += 8;
    bool first = true;
    for (const AudienceChoice& choice : advice.choices) {
        if (!choice.sentence.empty()) {
            y += ui.pen().paragraph({body.x, y}, body.w, choice.sentence, ui.m.type(Type::Small),
                                    ui.theme().ink2) +
                 4;
        }
        const Rect r{body.x, y, body.w, first ? ui.m.primary_h : ui.m.button_h};
        const std::string name = "audience/way/" + choice.id;
        const bool tapped = first ? primary_button(ui, name, r, {.label = choice.title})
                                  : button(ui, name, r, {.label = choice.title});
        if (tapped) {
            screen.say(command::ChooseWay{choice.id});
        }
        y += r.h + 12;
        first = false;
    }
    return y;
}

// The figure an offer still needs, with steppers or a list.
float draw_question(Screen& screen, const Rect& body, float y, const ChangeOffer& offer) {
    Ui& ui = screen.ui;
    Change draft = screen.state.differs.draft;
    const Change before = draft;
    const auto figure = [&](const char* name, const std::string& label, double& value, double low,
                            double high, double step) {
        StepperLook look;
        look.label = label;
        look.value_text = label + (label.empty() ? "" : " ") + ui.words.mm(value);
        look.low = low;
        look.high = high;
        look.step = step;
        static_cast<void>(stepper(ui, name, {body.x, y, body.w, ui.m.button_h}, look, value));
        y += ui.m.button_h + 10;
    };
    switch (offer.needs) {
    case OfferNeeds::nothing:
        break;
    case OfferNeeds::length:
        figure("differs/length", "", draft.mm, offer.low, offer.high, offer.step);
        break;
    case OfferNeeds::place:
        figure("differs/x", ui.words("differs.from_left"), draft.at_mm.x, 0, 1000, 1);
        figure("differs/y", ui.words("differs.from_top"), draft.at_mm.y, 0, 1000, 1);
        break;
    case OfferNeeds::shift:
        figure("differs/x", ui.words("differs.right"), draft.at_mm.x, -50, 50, 0.5);
        figure("differs/y", ui.words("differs.down"), draft.at_mm.y, -50, 50, 0.5);
        break;
    case OfferNeeds::count: {
        double count = draft.count;
        StepperLook look;
        look.label = ui.words("differs.how_many");
        look.value_text = std::to_string(draft.count);
        look.low = offer.low;
        look.high = offer.high;
        if (stepper(ui, "differs/count", {body.x, y, body.w, ui.m.button_h}, look, count)) {
            draft.count = static_cast<int>(count + 0.5);
        }
        y += ui.m.button_h + 10;
        break;
    }
    case OfferNeeds::type:
        for (const std::string& type : offer.types) {
            Change chosen = draft;
            chosen.type = type;
            y = draw_rows(screen, body, y,
                          {{"differs/type/" + type, type, Icon::None, command::AdjustDifference{chosen},
                            type == draft.type}});
        }
        break;
    }
    if (!(draft == before)) {
        screen.say(command::AdjustDifference{draft});
    }
    return y;
}

} // namespace

void draw_audience_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "audience", usual_side(ui.m), true, sheet_height(ui, 620), ui.words("sheet.who_for"),
                     Icon::People);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "audience/rows", sheet.body());
    const Rect& body = sheet.body();
    float y = scroll.top();
    if (!screen.state.audience_answered) {
        y += ui.pen().paragraph({body.x, y}, body.w, ui.words("sheet.who_for_words"), ui.m.type(Type::Body),
                                ui.theme().ink) +
             14;
        std::vector<SheetRow> rows;
        for (const Audience audience : kAudiences) {
            rows.push_back({std::string("audience/") + name_of(audience), spoken(audience, ui.words),
                            Icon::None, command::AnswerAudience{audience}, false});
        }
        y = draw_rows(screen, body, y, rows);
    } else {
        y = draw_ways(screen, body, y);
    }
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

void draw_differs_sheet(Screen& screen) {
    Ui& ui = screen.ui;
    const DifferState& differs = screen.state.differs;
    const bool chosen = differs.chosen >= 0 && differs.chosen < static_cast<int>(differs.offers.size());
    SheetPaper sheet(ui, "differs", usual_side(ui.m), true, sheet_height(ui, 560), ui.words("make.differs"),
                     Icon::Differ);
    if (!sheet.shown()) {
        return;
    }
    Scroll scroll(ui, "differs/rows", sheet.body());
    const Rect& body = sheet.body();
    float y = scroll.top();
    const TextStyle text = ui.m.type(Type::Body);
    if (!chosen) {
        y += ui.pen().paragraph({body.x, y}, body.w, ui.words("differs.how"), text, ui.theme().ink) + 12;
        std::vector<SheetRow> rows;
        for (std::size_t i = 0; i < differs.offers.size(); ++i) {
            const ChangeOffer& offer = differs.offers[i];
            rows.push_back(
                {"differs/offer/" + std::to_string(i),
                 (offer.change.part.empty() ? "" : "**" + offer.change.part + "**  ") + offer.title,
                 Icon::None, command::ChooseDifference{static_cast<int>(i)}, false});
        }
        if (rows.empty()) {
            y += ui.pen().paragraph({body.x, y}, body.w, ui.words("differs.nothing"), text, ui.theme().ink2);
        }
        y = draw_rows(screen, body, y, rows);
    } else {
        const ChangeOffer& offer = differs.offers[static_cast<std::size_t>(differs.chosen)];
        y += draw_heading(ui, body, y, offer.title, Type::H2) + 8;
        if (!offer.question.empty()) {
            y += ui.pen().paragraph({body.x, y}, body.w, offer.question, text, ui.theme().ink) + 10;
        }
        y = draw_question(screen, body, y, offer);
        y += ui.pen().paragraph(
                 {body.x, y}, body.w,
                 ui.words("differs.into_record", {{"change", describe(differs.draft, ui.words)}}), text,
                 ui.theme().ink) +
             14;
        if (primary_button(ui, "differs/save", {body.x, y, body.w, ui.m.primary_h},
                           {.label = ui.words("differs.write_down"), .icon = Icon::Tick})) {
            screen.say(command::SaveDifference{});
        }
        y += ui.m.primary_h + 10;
        if (button(ui, "differs/back", {body.x, y, body.w, ui.m.button_h},
                   {.label = ui.words("differs.something_else"), .icon = Icon::Back})) {
            screen.say(command::ChooseDifference{-1});
        }
        y += ui.m.button_h;
    }
    scroll.done(y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
