// The right side of Mend: likely causes, and what to do next about them.
#include "controls/bars.h"
#include "controls/button.h"
#include "controls/chip.h"
#include "controls/panel.h"
#include "screens/make.h"
#include "screens/mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Rect inside_of(const Ui& ui, const Rect& r) {
    return {r.x + ui.m.panel_pad_x, r.y + ui.m.panel_pad_y, r.w - 2 * ui.m.panel_pad_x, 9000};
}

// A panel's head with a small word at its right; wraps under it when both do not fit.
float head(Ui& ui, const Rect& r, Icon icon, const std::string& title, const std::string& aside, bool draw) {
    const TextStyle h2 = ui.m.type(Type::H2);
    const TextStyle small = ui.m.type(Type::Small);
    const float left = icon == Icon::None ? 0.0f : 42.0f;
    const float aside_w = aside.empty() ? 0 : ui.fonts().width(aside, small) + 12;
    const bool below = ui.fonts().width(title, h2) + left + aside_w > r.w;
    const float title_w = r.w - left - (below ? 0 : aside_w);
    const float title_h = std::max(h2.lead, ui.fonts().wrapped_height(title, h2, title_w));
    if (draw) {
        if (icon != Icon::None) {
            draw_icon(ui.pen(), icon, {r.x + 14, r.y + h2.lead / 2}, 28, ui.theme().leaf);
        }
        ui.pen().paragraph({r.x + left, r.y}, title_w, title, h2, ui.theme().ink);
        const float y = below ? r.y + title_h : r.y + (h2.lead - small.lead) / 2 + 1;
        ui.pen().text({below ? r.x + left : r.right(), y}, aside, small, ui.theme().ink2,
                      below ? Align::Left : Align::Right);
    }
    return title_h + (below && !aside.empty() ? small.lead : 0);
}

float words(Ui& ui, const Rect& r, const std::string& text, TextStyle style, Colour colour, bool draw) {
    return draw ? ui.pen().paragraph({r.x, r.y}, r.w, text, style, colour)
                : ui.fonts().wrapped_height(text, style, r.w);
}

struct TwoButtons {
    std::string name;
    ButtonLook look;
};

Icon icon_of(AnswerSign sign) {
    return sign == AnswerSign::came_on      ? Icon::Bulb
           : sign == AnswerSign::stays_dark ? Icon::BulbOff
                                            : Icon::None;
}

// Equal answers, two a row.
float draw_answers(Screen& screen, const MendTestView& test, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const float gap = 10;
    const float high = (test.answers.size() <= 2 ? 72.0f : 64.0f) * std::max(1.0f, ui.m.text_scale);
    float y = r.y;
    for (std::size_t i = 0; i < test.answers.size(); i += 2) {
        const bool alone = i + 1 == test.answers.size();
        for (std::size_t k = i; draw && k < std::min(i + 2, test.answers.size()); ++k) {
            const MendAnswerRow& answer = test.answers[k];
            const float w = alone ? r.w : (r.w - gap) / 2;
            const Rect slot{r.x + (k == i ? 0 : w + gap), y, w, high};
            const bool brief = ui.m.phone();
            if (leaf_button(ui, "mend/answer/" + std::to_string(answer.outcome), slot,
                            {.label = answer.label, .icon = brief ? Icon::None : icon_of(answer.sign)})) {
                act(screen, mend::Answer{answer.outcome});
            }
        }
        y += high + gap;
    }
    return y - r.y;
}

float draw_tools(Screen& screen, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const MendTools& tools = screen.state.mend->tools;

    const struct {
        const char* name;
        const char* label;
        mend::Tool tool;
        bool on;
    } all[] = {{"mend/have/meter", "Meter", mend::Tool::meter, tools.meter},
               {"mend/have/foil", "Foil", mend::Tool::foil, tools.foil},
               {"mend/have/cell", "A good cell", mend::Tool::known_cell, tools.known_cell}};

    const TextStyle small = ui.m.type(Type::Small);
    const float label_w = ui.fonts().width("I have", small) + 12;
    const float high = ui.m.target;
    float x = r.x + label_w;
    float y = r.y;
    if (draw) {
        ui.pen().text_in({r.x, y, label_w, high}, "I have", small, ui.theme().ink2, Align::Left);
    }
    for (const auto& one : all) {
        const float w = chip_width(ui, one.label);
        if (x + w > r.right() + 1) {
            x = r.x;
            y += high + 8;
        }
        if (draw && chip(ui, one.name, {x, y, w, high}, one.label, one.on)) {
            act(screen, mend::Have{one.tool});
        }
        x += w + 8;
    }
    return y + high - r.y;
}

float two(Screen& screen, const Rect& r, const TwoButtons& left, const TwoButtons& right, bool leaf,
          bool draw, int& tapped) {
    Ui& ui = screen.ui;
    const float gap = 10;
    const float w = (r.w - gap) / 2;
    const float high = leaf ? 72.0f * std::max(1.0f, ui.m.text_scale) : ui.m.button_h;
    if (draw) {
        const auto place = [&](const TwoButtons& one, float x) {
            return leaf ? leaf_button(ui, one.name, {x, r.y, w, high}, one.look)
                        : button(ui, one.name, {x, r.y, w, high}, one.look);
        };
        if (place(left, r.x)) {
            tapped = 0;
        }
        if (place(right, r.x + w + gap)) {
            tapped = 1;
        }
    }
    return high;
}

float draw_warm(Screen& screen, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(head(ui, r, Icon::Cellsafe, "First: is anything warm?", "about 5 seconds", draw) + 10);
    r.cut_top(words(ui, r,
                    "**Take the cell out.** Touch the cell, the tape and the lights with a fingertip. A cell "
                    "that is warm is shorted: leave it out, and keep it away from children.",
                    body, ui.theme().ink, draw) +
              16);
    int tapped = -1;
    r.cut_top(two(screen, r, {"mend/cool", {.label = "Out, and cool", .icon = Icon::Tick}},
                  {"mend/warm", {.label = "Out, and warm", .icon = Icon::Problem}}, true, draw, tapped));
    if (tapped >= 0) {
        act(screen, mend::WarmAnswer{tapped == 1});
    }
    return r.y - top;
}

float draw_test(Screen& screen, const MendTestView& test, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    r.cut_top(head(ui, r, Icon::Press, "Next best test", test.seconds, draw) + 10);
    const bool beside = test.at_mm && !ui.m.phone();
    Rect text = r;
    float picture_h = 0;
    if (beside) {
        picture_h = 132;
        const Rect frame{r.x, r.y, 200, picture_h};
        if (draw) {
            draw_mend_lens(screen, frame, *test.at_mm, test.letter);
        }
        text.cut_left(216);
    } else if (test.at_mm) {
        if (draw) {
            draw_mend_lens(screen, {r.x, r.y, r.w, 112}, *test.at_mm, test.letter);
        }
        r.cut_top(122);
        text = r;
    }
    const float text_top = text.y;
    text.cut_top(words(ui, text, "**" + test.title + ".** " + test.sentence, body, ui.theme().ink, draw));
    if (!test.tells.empty()) {
        text.cut_top(6);
        text.cut_top(words(ui, text, test.tells, small, ui.theme().ink2, draw));
    }
    r.cut_top(std::max(picture_h, text.y - text_top) + 12);
    const TextStyle strong = body.bold();
    if (draw) {
        ui.pen().text({r.x, r.y}, "What happened?", strong, ui.theme().ink);
    }
    r.cut_top(strong.lead + 6);
    r.cut_top(draw_answers(screen, test, r, draw));
    int tapped = -1;
    r.cut_top(two(screen, r, {"mend/cannot-tell", {.label = "Can’t tell"}},
                  {"mend/another", {.label = ui.m.phone() ? "Another test" : "Give me another test"}}, false,
                  draw, tapped) +
              10);
    if (tapped >= 0) {
        act(screen, mend::Answer{-1});
    }
    r.cut_top(draw_tools(screen, r, draw));
    return r.y - top;
}

float draw_fix(Screen& screen, const MendCauseRow& cause, int index, bool from_tests, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(head(ui, r, Icon::Mend, cause.letter + ": " + cause.title, cause.percent, draw) + 8);
    r.cut_top(words(ui, r, cause.sentence, body, ui.theme().ink2, draw) + 10);
    const MendState& mend = *screen.state.mend;
    const std::vector<FaultPlace>& places = mend.causes[static_cast<std::size_t>(index)].places;
    if (!places.empty()) {
        const float high = ui.m.phone() ? 112.0f : 140.0f;
        if (draw) {
            draw_mend_lens(screen, {r.x, r.y, r.w, high}, places.front().at_mm, cause.letter);
        }
        r.cut_top(high + 12);
    }
    int number = 0;
    for (const std::string& line : cause.fix) {
        const float high = std::max(32.0f, ui.fonts().wrapped_height(line, body, r.w - 46));
        if (draw) {
            number_disc(ui, {r.x + 16, r.y + 16}, 16, std::to_string(++number), ui.theme().lamp,
                        ui.theme().on_lamp, ui.theme().lamp);
            ui.pen().paragraph({r.x + 46, r.y + (32 - body.lead) / 2}, r.w - 46, line, body, ui.theme().ink);
        }
        r.cut_top(high + 8);
    }
    r.cut_top(6);
    int tapped = -1;
    const TwoButtons found =
        cause.none_fits ? TwoButtons{"mend/start-again", {.label = "Start again", .icon = Icon::Repeat}}
                        : TwoButtons{"mend/found", {.label = "I found it: mended", .icon = Icon::Tick}};
    const TwoButtons other =
        from_tests ? TwoButtons{"mend/tests", {.label = "Back to the test", .icon = Icon::Back}}
                   : TwoButtons{"mend/take-back", {.label = "Take an answer back", .icon = Icon::Undo}};
    r.cut_top(two(screen, r, found, other, true, draw, tapped));
    if (tapped == 0) {
        act(screen, cause.none_fits ? MendCommand(mend::StartAgain{}) : MendCommand(mend::Found{index}));
    } else if (tapped == 1) {
        act(screen, from_tests ? MendCommand(mend::LookAt{-1}) : MendCommand(mend::TakeBack{}));
    }
    if (!from_tests) {
        r.cut_top(10);
        r.cut_top(draw_tools(screen, r, draw));
    }
    return r.y - top;
}

} // namespace

float draw_causes_panel(Screen& screen, const MendView& view, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    Rect in = inside_of(ui, r);
    const float top = r.y;
    in.cut_top(head(ui, in, Icon::None, "Likely causes", view.after, draw) + 6);
    const float tile = 40;
    for (std::size_t i = 0; i < view.causes.size(); ++i) {
        const MendCauseRow& cause = view.causes[i];
        const bool first = i == 0;
        const TextStyle style = first ? body.bold() : body;
        const float figure = 58 * std::max(1.0f, ui.m.text_scale);
        const float text_w = in.w - tile - 12 - figure;
        const float text_h = ui.fonts().wrapped_height(cause.title, style, text_w);
        const float high = std::max(tile, text_h + 2 + 12);
        const Rect row{in.x, in.y, in.w, high};
        if (draw) {
            const std::string name = "mend/cause/" + cause.letter;
            ui.add({.name = name,
                    .role = Role::Button,
                    .label = cause.letter + ": " + cause.title + ", " + cause.percent,
                    .rect = {row.x, row.y - 4, row.w, std::max(high + 8, ui.m.target - 6)}});
            const Rect box{row.x, row.y, tile, tile};
            const Theme& theme = ui.theme();
            if (ui.pressed(name) || screen.state.mend->chosen == static_cast<int>(i)) {
                ui.pen().fill(row.shrunk(-6, -4), theme.plum_tint, 10);
            }
            ui.pen().fill(box, first ? theme.plum : theme.panel, 8);
            ui.pen().outline(box, theme.plum, 2, 8);
            ui.pen().text_in(box, cause.letter, body.bold(), first ? theme.on_plum : theme.plum);
            ui.pen().paragraph({row.x + tile + 12, row.y - 3}, text_w, cause.title, style, theme.ink);
            ui.pen().text({row.right(), row.y - 3}, cause.percent, body.bold(), theme.ink, Align::Right);
            share_bar(ui, {row.x + tile + 12, row.bottom() - 12, in.w - tile - 12, 12},
                      static_cast<float>(cause.share), first ? theme.plum : theme.edge);
            if (ui.tapped(name)) {
                act(screen, mend::LookAt{static_cast<int>(i)});
            }
        }
        in.cut_top(high + 10);
    }
    return in.y - top + 6;
}

float draw_next_panel(Screen& screen, const MendView& view, const Rect& r, bool draw) {
    const MendState& mend = *screen.state.mend;
    const Rect in = inside_of(screen.ui, r);
    const float pads = 2 * screen.ui.m.panel_pad_y;
    if (!mend.warm_asked) {
        return draw_warm(screen, in, draw) + pads;
    }
    const int shown = mend.chosen >= 0 ? mend.chosen : view.test ? -1 : 0;
    if (shown >= 0 && shown < static_cast<int>(view.causes.size())) {
        const bool from_tests = mend.chosen >= 0 && view.test.has_value();
        return draw_fix(screen, view.causes[static_cast<std::size_t>(shown)], shown, from_tests, in, draw) +
               pads;
    }
    return view.test ? draw_test(screen, *view.test, in, draw) + pads : pads;
}

} // namespace lanternleaf
