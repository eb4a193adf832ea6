// What to do next in Mend: feel the cell, tap the lights, or the test that tells most.
#include "controls/panel.h"
#include "screens/make.h"
#include "screens/mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Icon icon_of(AnswerSign sign) {
    return sign == AnswerSign::came_on      ? Icon::Bulb
           : sign == AnswerSign::stays_dark ? Icon::BulbOff
                                            : Icon::None;
}

// Equal answers, two a row; one a row where letters are large or words long.
float draw_answers(Screen& screen, const MendTestView& test, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const float gap = 10;
    const bool large = ui.m.text_scale > 1.4f && ui.m.phone();
    const float least = test.answers.size() <= 2 ? 72.0f : 60.0f;
    const float high = least * std::max(1.0f, ui.m.text_scale);
    const std::size_t a_row = large ? 1 : 2;
    float y = r.y;
    for (std::size_t i = 0; i < test.answers.size(); i += a_row) {
        const bool alone = a_row == 1 || i + 1 == test.answers.size();
        for (std::size_t k = i; draw && k < std::min(i + a_row, test.answers.size()); ++k) {
            const MendAnswerRow& answer = test.answers[k];
            const float w = alone ? r.w : (r.w - gap) / 2;
            const Rect slot{r.x + (k == i ? 0 : w + gap), y, w, high};
            if (leaf_button(
                    ui, "mend/answer/" + std::to_string(answer.outcome), slot,
                    {.label = answer.label, .icon = ui.m.phone() ? Icon::None : icon_of(answer.sign)})) {
                act(screen, mend::Answer{answer.outcome});
            }
        }
        y += high + gap;
    }
    return y - r.y;
}

// A figure instead of answers: the field of the keypad.
float draw_figure(Screen& screen, const MendMeterView& meter, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const TextStyle small = ui.m.type(Type::Small);
    const float high = 72.0f * std::max(1.0f, ui.m.text_scale);
    if (draw && leaf_button(ui, "mend/meter", {r.x, r.y, r.w, high},
                            {.label = ui.words("mend_place.type_meter"), .icon = Icon::Keypad})) {
        act(screen, mend::OpenMeter{});
    }
    return high + 8 +
           mend_words(ui, {r.x, r.y + high + 6, r.w, 0},
                      ui.words("mend_place.if_well", {{"range", meter.expect}}), small, ui.theme().ink2,
                      draw) +
           10;
}

float draw_warm(Screen& screen, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    r.cut_top(mend_head(ui, r, Icon::Cellsafe, ui.words("mend_place.warm"),
                        ui.words("mend_place.five_seconds"), draw) +
              10);
    r.cut_top(mend_words(ui, r, ui.words("mend_place.warm_words"), body, ui.theme().ink, draw) + 16);
    int tapped = -1;
    const bool brief = ui.m.phone();
    r.cut_top(mend_two(
        screen, r,
        {"mend/cool", {.label = ui.words("mend_place.out_cool"), .icon = brief ? Icon::None : Icon::Tick}},
        {"mend/warm", {.label = ui.words("mend_place.out_warm"), .icon = brief ? Icon::None : Icon::Problem}},
        true, draw, tapped));
    if (tapped >= 0) {
        act(screen, mend::WarmAnswer{tapped == 1});
    }
    return r.y - top;
}

float draw_ask_lights(Screen& screen, const MendView& view, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    const bool warm = screen.state.mend->warm;
    r.cut_top(mend_head(ui, r, Icon::Bulb, ui.words("mend_place.now_lights"), "", draw) + 10);
    r.cut_top(mend_words(ui, r,
                         warm ? ui.words("mend_place.lights_warm") : ui.words("mend_place.lights_words"),
                         body, ui.theme().ink, draw) +
              14);
    int tapped = -1;
    r.cut_top(mend_two(screen, r, {"mend/rest/dark", {.label = view.rest_dark, .icon = Icon::BulbOff}},
                       {"mend/rest/lit", {.label = view.rest_lit, .icon = Icon::Bulb}}, true, draw, tapped));
    if (tapped >= 0) {
        act(screen, mend::TapRest{tapped == 0 ? Look::dark : Look::lit});
    }
    if (!warm && !screen.state.build->record.cell_in) {
        r.cut_top(10);
        if (draw && button(ui, "mend/cell-in", {r.x, r.y, r.w, ui.m.button_h},
                           {.label = ui.words("mend_place.cell_in"), .icon = Icon::Holder})) {
            act(screen, mend::CellIn{});
        }
        r.cut_top(ui.m.button_h);
    }
    return r.y - top;
}

// Lights that nobody has tapped yet, all at once.
float draw_rest(Screen& screen, const MendView& view, Rect r, bool draw) {
    if (view.rest_dark.empty()) {
        return 0;
    }
    int tapped = -1;
    const float high =
        mend_two(screen, r, {"mend/rest/dark", {.label = view.rest_dark, .icon = Icon::BulbOff}},
                 {"mend/rest/lit", {.label = view.rest_lit, .icon = Icon::Bulb}}, false, draw, tapped);
    if (tapped >= 0) {
        act(screen, mend::TapRest{tapped == 0 ? Look::dark : Look::lit});
    }
    return high + 14;
}

float draw_test(Screen& screen, const MendTestView& test, Rect r, bool draw) {
    Ui& ui = screen.ui;
    const float top = r.y;
    const TextStyle body = ui.m.type(Type::Body);
    const TextStyle small = ui.m.type(Type::Small);
    r.cut_top(mend_head(ui, r, test.meter ? Icon::Meter : Icon::Press, ui.words("mend_place.next_test"),
                        test.seconds, draw) +
              10);
    const bool beside = test.at_mm && !ui.m.phone() && ui.m.text_scale < 1.4f;
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
    text.cut_top(mend_words(ui, text,
                            ui.words("mend_place.test", {{"title", test.title}, {"words", test.sentence}}),
                            body, ui.theme().ink, draw));
    if (!test.tells.empty()) {
        text.cut_top(6);
        text.cut_top(mend_words(ui, text, test.tells, small, ui.theme().ink2, draw));
    }
    r.cut_top(std::max(picture_h, text.y - text_top) + 12);
    if (test.meter) {
        r.cut_top(draw_figure(screen, *test.meter, r, draw));
    } else {
        const TextStyle strong = body.bold();
        if (draw) {
            ui.pen().text({r.x, r.y}, ui.words("mend_place.what_happened"), strong, ui.theme().ink);
        }
        r.cut_top(strong.lead + 6);
        r.cut_top(draw_answers(screen, test, r, draw));
    }
    int tapped = -1;
    r.cut_top(mend_two(screen, r, {"mend/cannot-tell", {.label = ui.words("mend_place.cannot_tell")}},
                       {"mend/another",
                        {.label = ui.m.phone() ? ui.words("mend_place.another")
                                               : ui.words("mend_place.give_another")}},
                       false, draw, tapped) +
              10);
    if (tapped >= 0) {
        act(screen, mend::Answer{-1});
    }
    r.cut_top(draw_mend_tools(screen, r, draw));
    return r.y - top;
}

} // namespace

float draw_mend_tools(Screen& screen, const Rect& r, bool draw) {
    Ui& ui = screen.ui;
    const MendTools& tools = screen.state.mend->tools;

    const struct {
        const char* name;
        std::string label;
        mend::Tool tool;
        bool on;
    } all[] = {
        {"mend/have/meter", ui.words("mend_place.have_meter"), mend::Tool::meter, tools.meter},
        {"mend/have/foil", ui.words("mend_place.have_foil"), mend::Tool::foil, tools.foil},
        {"mend/have/cell", ui.words("mend_place.have_cell"), mend::Tool::known_cell, tools.known_cell},
        {"mend/have/light", ui.words("mend_place.have_light"), mend::Tool::known_led, tools.known_led}};

    const TextStyle small = ui.m.type(Type::Small);
    const float label_w = ui.fonts().width(ui.words("mend_place.i_have"), small) + 12;
    const float high = ui.m.target;
    float x = r.x + label_w;
    float y = r.y;
    if (draw) {
        ui.pen().text_in({r.x, y, label_w, high}, ui.words("mend_place.i_have"), small, ui.theme().ink2,
                         Align::Left);
    }
    for (const auto& one : all) {
        const ButtonLook look{
            .label = one.label, .icon = one.on ? Icon::Tick : Icon::None, .selected = one.on};
        const float w = std::min(button_width(ui, look), r.w);
        if (x + w > r.right() + 1) {
            x = r.x;
            y += high + 8;
        }
        if (draw && button(ui, one.name, {x, y, w, high}, look)) {
            act(screen, mend::Have{one.tool});
        }
        x += w + 8;
    }
    return y + high - r.y;
}

float draw_next_panel(Screen& screen, const MendView& view, const Rect& r, bool draw) {
    const MendState& mend = *screen.state.mend;
    const Rect in = mend_inside(screen.ui, r);
    const float pads = 2 * screen.ui.m.panel_pad_y;
    if (!mend.warm_asked) {
        return draw_warm(screen, in, draw) + pads;
    }
    if (mend.chosen == MendState::kNoneFits) {
        return draw_mend_none_fits(screen, view, in, draw) + pads;
    }
    if (mend.chosen < 0 && view.ask_lights) {
        return draw_ask_lights(screen, view, in, draw) + pads;
    }
    const int shown = mend.chosen >= 0 ? mend.chosen : view.test ? -1 : 0;
    if (shown >= 0 && shown < static_cast<int>(view.causes.size())) {
        return (view.causes[static_cast<std::size_t>(shown)].none_fits
                    ? draw_mend_none_fits(screen, view, in, draw)
                    : draw_mend_fix(screen, view, shown, in, draw)) +
               pads;
    }
    if (!view.test) {
        return pads;
    }
    const float jobs = draw_rest(screen, view, in, draw);
    return jobs + draw_test(screen, *view.test, {in.x, in.y + jobs, in.w, in.h}, draw) + pads;
}

} // namespace lanternleaf
