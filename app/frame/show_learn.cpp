#include "frame/show_learn.h"

namespace lanternleaf {

namespace {

void learn_act(App& app, const Command& command) {
    update(app.state, app.around, command);
}

void begin_test(App& app, PartSort sort, const std::string& type) {
    learn_act(app, command::Learn{learning::Begin{sort, type}});
}

void tell_test(App& app, LearnStage next) {
    LearnAnswers answers = app.state.learn->answers;
    answers.touch.looks = app.around.words("learn.mark_line");
    learn_act(app, command::Learn{learning::Tell{answers, next}});
    if (app.state.notice == Notice::asking) {
        learn_act(app, command::AdultConfirms{});
    }
}

void learn_tape_by_meter(App& app) {
    begin_test(app, PartSort::tape, "copper-5");
    LearnAnswers answers = app.state.learn->answers;
    answers.strips.leads_ohm = 0.2;
    answers.strips.reading_ohm = 0.8;
    learn_act(app, command::Learn{learning::Finish{answers}});
}

} // namespace

bool show_learn(App& app, const std::string& name, const std::string& card_path) {
    learn_act(app, command::Draw{draw::Open{card_path}});
    if (name == "learn") {
        learn_tape_by_meter(app);
        learn_act(app, command::Learn{learning::OpenList{}});
    } else if (name == "learn/mark") {
        begin_test(app, PartSort::led, "carrier-white");
    } else if (name == "learn/led") {
        begin_test(app, PartSort::led, "carrier-white");
        tell_test(app, LearnStage::led_touch);
    } else if (name == "learn/tape") {
        begin_test(app, PartSort::tape, "copper-5");
    } else if (name == "learn/reading") {
        begin_test(app, PartSort::tape, "copper-5");
        tell_test(app, LearnStage::tape_reading);
    } else if (name == "learn/light") {
        begin_test(app, PartSort::tape, "copper-5");
        tell_test(app, LearnStage::tape_light);
    } else if (name == "learn/foam") {
        begin_test(app, PartSort::foam, "");
    } else if (name == "learn/done") {
        learn_tape_by_meter(app);
    } else {
        return false;
    }
    return app.state.sheet == SheetKind::learn;
}

} // namespace lanternleaf
