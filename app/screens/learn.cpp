// The sheet in which a part is put to the test: a picture, a sentence and an answer a stage, and what was
// learnt so far.
#include "screens/learn.h"

#include "controls/button.h"
#include "controls/scroll.h"
#include "controls/slider.h"
#include "learn/learn_words.h"
#include "paint/learn_picture.h"
#include "screens/sheets.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// Title of the sheet at a stage.
std::string title_of(const Words& words, const LearnState& learn) {
    switch (learn.stage) {
    case LearnStage::list:
        return words("learn.title");
    case LearnStage::choose:
        return words(learn.sort == PartSort::led ? "learn.choose_led" : "learn.choose_tape");
    case LearnStage::led_mark:
        return words("learn.mark_head");
    case LearnStage::led_touch:
        return words("learn.touch_head");
    case LearnStage::led_colour:
        return words("learn.led");
    case LearnStage::tape_stick:
        return words("learn.stick_head");
    case LearnStage::tape_meter:
        return words("learn.meter_head");
    case LearnStage::tape_leads:
        return words("learn.leads_head");
    case LearnStage::tape_reading:
        return words("learn.reading_head");
    case LearnStage::tape_light:
        return words("learn.light_head");
    case LearnStage::foam_stack:
        return words("learn.stack_head");
    case LearnStage::foam_squeeze:
        return words("learn.squeeze_head");
    case LearnStage::done:
        return words("learn.done_head");
    }
    return words("learn.title");
}

void draw_list(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.say(words("learn.intro"));
    on.rows({{"learn/led", words("learn.led"), Icon::Led, learn_command(learning::Begin{PartSort::led, ""}),
              false},
             {"learn/tape", words("learn.tape"), Icon::Strip,
              learn_command(learning::Begin{PartSort::tape, ""}), false},
             {"learn/foam", words("learn.foam"), Icon::Foam,
              learn_command(learning::Begin{PartSort::foam, ""}), false}});
    if (!learn.own.list.empty()) {
        on.y += 8;
        on.say(words("learn.known_head"), true);
        std::vector<SheetRow> rows;
        for (const OwnPart& part : learn.own.list) {
            const std::string line =
                learnt_line(words, part, learn.known) + " (" + part.measured_at.substr(0, 10) + ")";
            rows.push_back({"learn/forget/" + std::string(name_of(part.sort)) + "/" + part.id,
                            words("learn.forget", {{"line", line}}), Icon::Trash,
                            learn_command(learning::Forget{part.sort, part.id}), false});
        }
        on.rows(rows);
    }
    if (!learn.own.aside.empty()) {
        on.say(words("learn.aside",
                     {{"n", learn.own.aside.size()}, {"first", learn.own.aside.front().sentence()}}));
    }
}

void draw_choose(LearnColumn& on) {
    const LearnState& learn = on.learn();
    std::vector<SheetRow> rows;
    if (learn.sort == PartSort::led) {
        for (const auto& [id, led] : learn.known.leds) {
            rows.push_back({"learn/type/" + id, part_name(id), Icon::Led,
                            learn_command(learning::Begin{PartSort::led, id}), false});
        }
    } else {
        for (const auto& [id, tape] : learn.known.tapes) {
            rows.push_back({"learn/type/" + id, part_name(id), Icon::Strip,
                            learn_command(learning::Begin{PartSort::tape, id}), false});
        }
    }
    on.rows(rows);
}

/// Whether what was just learnt went into the build on the table.
bool build_knows(const AppState& state) {
    return state.place == Place::make && state.build && !state.build->events.empty() &&
           state.build->events.back().kind == EventKind::learnt;
}

void draw_done(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    if (learn.learnt) {
        on.say(learnt_line(words, *learn.learnt, learn.planned), true);
    }
    on.say(words("learn.done_words"));
    if (build_knows(on.screen.state)) {
        on.say(words("learn.done_build"));
    }
    std::vector<SheetRow> rows;
    if (learn.learnt && learn.sort == PartSort::foam && on.screen.state.draw &&
        on.screen.state.place == Place::draw) {
        rows.push_back({"learn/use-foam", words("learn.use_foam"), Icon::Foam,
                        learn_command(learning::UseFoam{learn.learnt->id}), false});
    }
    rows.push_back(
        {"learn/another", words("learn.another"), Icon::Repeat, learn_command(learning::OpenList{}), false});
    on.rows(rows);
    if (on.primary("learn/close", words("learn.done_close"), Icon::Tick)) {
        on.screen.say(command::CloseSheet{});
    }
}

/// About what a stage needs at the usual text size; what is more scrolls.
float content_height(LearnStage stage) {
    switch (stage) {
    case LearnStage::tape_meter:
        return 260;
    case LearnStage::done:
        return 420;
    case LearnStage::foam_stack:
    case LearnStage::tape_stick:
        return 520;
    default:
        return 640;
    }
}

void draw_stage(LearnColumn& on) {
    switch (on.learn().stage) {
    case LearnStage::list:
        return draw_list(on);
    case LearnStage::choose:
        return draw_choose(on);
    case LearnStage::done:
        return draw_done(on);
    default:
        return draw_learn_stage(on);
    }
}

} // namespace

Command learn_command(const LearnCommand& act) {
    return command::Learn{act};
}

Command told(const LearnAnswers& answers, LearnStage next) {
    return learn_command(learning::Tell{answers, next});
}

void LearnColumn::say(const std::string& text, bool bold) {
    Ui& ui = screen.ui;
    const TextStyle body = ui.m.type(Type::Body);
    y += ui.pen().paragraph({r.x, y}, r.w, text, bold ? body.bold() : body, ui.theme().ink) + 12;
}

void LearnColumn::rows(const std::vector<SheetRow>& list) {
    y = draw_rows(screen, r, y, list);
}

void LearnColumn::picture() {
    Ui& ui = screen.ui;
    const float height = ui.m.phone() ? 150.0f : 190.0f;
    draw_learn_picture(ui.pen(), ui.theme(), {r.x, y, r.w, height}, learn(), words());
    y += height + 14;
}

bool LearnColumn::number(const char* name, const std::string& label, const std::string& shown, double low,
                         double high, double step, double& value) {
    Ui& ui = screen.ui;
    const Rect place = beside_label(ui, {r.x, y, r.w, 0}, y, label, std::min(300.0f, r.w * 0.58f));
    StepperLook look;
    look.label = label;
    look.value_text = shown;
    look.low = low;
    look.high = high;
    look.step = step;
    return stepper(ui, name, place, look, value);
}

bool LearnColumn::primary(const char* name, const std::string& label, Icon icon) {
    y += 6;
    const bool hit =
        primary_button(screen.ui, name, {r.x, y, r.w, screen.ui.m.primary_h}, {.label = label, .icon = icon});
    y += screen.ui.m.primary_h + 10;
    return hit;
}

void draw_learn_sheet(Screen& screen) {
    if (!screen.state.learn) {
        screen.say(command::CloseSheet{});
        return;
    }
    const LearnStage stage = screen.state.learn->stage;
    if (stage == LearnStage::tape_leads || stage == LearnStage::tape_reading) {
        draw_learn_reading(screen, title_of(screen.ui.words, *screen.state.learn));
        return;
    }
    Ui& ui = screen.ui;
    SheetPaper sheet(ui, "learn", usual_side(ui.m), true, sheet_height(ui, content_height(stage)),
                     title_of(ui.words, *screen.state.learn), Icon::Book);
    if (!sheet.shown()) {
        return;
    }
    // A name for each stage, so that each begins at its top.
    Scroll scroll(ui, "learn/stage-" + std::to_string(static_cast<int>(stage)), sheet.body());
    LearnColumn column{screen, sheet.body(), scroll.top()};
    draw_stage(column);
    scroll.done(column.y - scroll.top());
    if (sheet.closed()) {
        screen.say(command::CloseSheet{});
    }
}

} // namespace lanternleaf
