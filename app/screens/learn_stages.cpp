// The stages of a part's test: each a picture, a sentence and an answer.
#include "controls/button.h"
#include "controls/keypad.h"
#include "learn/learn_words.h"
#include "screens/learn.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void draw_mark(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.say(part_name(learn.answers.touch.type), true);
    on.picture();
    on.say(words("learn.mark_words"));
    std::vector<SheetRow> rows;
    for (const char* key : {"line", "notch", "dot", "bar", "leg", "sign"}) {
        LearnAnswers answers = learn.answers;
        answers.touch.looks = words(std::string("learn.mark_") + key);
        rows.push_back({std::string("learn/mark/") + key, answers.touch.looks, Icon::None,
                        told(answers, LearnStage::led_touch),
                        learn.answers.touch.looks == answers.touch.looks});
    }
    on.rows(rows);
}

void draw_touch(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.picture();
    on.say(words("learn.touch_words"));
    on.say(words("learn.touch_ask", {{"mark", learn.answers.touch.looks}}), true);
    LearnAnswers plus = learn.answers;
    plus.touch.marked_on_plus = true;
    LearnAnswers minus = learn.answers;
    minus.touch.marked_on_plus = false;
    on.rows({{"learn/touch/plus", words("learn.touch_plus"), Icon::Plus, told(plus, LearnStage::led_colour),
              false},
             {"learn/touch/minus", words("learn.touch_minus"), Icon::Minus,
              told(minus, LearnStage::led_colour), false},
             {"learn/touch/never", words("learn.touch_never"), Icon::BulbOff,
              learn_command(learning::NeverLit{}), learn.lamp_failed}});
    if (learn.lamp_failed) {
        on.say(words("learn.touch_failed"));
    }
}

void draw_colour(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.say(words("learn.colour_head"));
    const auto planned = learn.known.leds.find(learn.answers.touch.type);
    if (planned == learn.known.leds.end()) {
        return;
    }
    std::vector<SheetRow> rows;
    const auto row = [&](const std::string& colour, const std::string& label) {
        LearnAnswers answers = learn.answers;
        answers.touch.colour = colour;
        rows.push_back(
            {"learn/colour/" + colour, label, Icon::Bulb, learn_command(learning::Finish{answers}), false});
    };
    row(planned->second.colour,
        words("learn.colour_planned", {{"colour", part_name(planned->second.colour)}}));
    for (const auto& [id, led] : learn.known.leds) {
        if (led.package == planned->second.package && led.colour != planned->second.colour) {
            row(led.colour, part_name(led.colour));
        }
    }
    on.rows(rows);
}

void draw_stick(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.say(part_name(learn.answers.strips.type), true);
    on.picture();
    on.say(words("learn.stick_words"));
    LearnAnswers answers = learn.answers;
    bool changed = on.number("learn/overlap", words("learn.overlap"), words.mm(answers.strips.overlap_mm), 2,
                             50, 1, answers.strips.overlap_mm);
    changed = on.number("learn/between", words("learn.between"), words.mm(answers.strips.between_mm), 20, 500,
                        10, answers.strips.between_mm) ||
              changed;
    if (changed) {
        answers.strips.between_mm = std::max(answers.strips.between_mm, answers.strips.overlap_mm);
        on.screen.say(told(answers, LearnStage::tape_stick));
    }
    if (on.primary("learn/next", words("learn.next"))) {
        on.screen.say(told(answers, LearnStage::tape_meter));
    }
}

void draw_meter(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.say(words("learn.meter_words"));
    on.rows({{"learn/meter/yes", words("learn.meter_yes"), Icon::Meter,
              told(learn.answers, LearnStage::tape_leads), false},
             {"learn/meter/no", words("learn.meter_no"), Icon::Bulb,
              told(learn.answers, LearnStage::tape_light), false}});
}

void draw_light(LearnColumn& on) {
    const Words& words = on.words();
    on.picture();
    on.say(words("learn.light_words"));
    std::vector<SheetRow> rows;
    const auto row = [&](const char* name, JointAnswer answer, const char* key, Icon icon) {
        LearnAnswers answers = on.learn().answers;
        answers.strips.answer = answer;
        rows.push_back({name, words(key), icon, learn_command(learning::Finish{answers}), false});
    };
    row("learn/light/lit", JointAnswer::lit, "learn.light_lit", Icon::Bulb);
    row("learn/light/dim", JointAnswer::dim, "learn.light_dim", Icon::BulbDim);
    row("learn/light/dark", JointAnswer::dark, "learn.light_dark", Icon::BulbOff);
    on.rows(rows);
}

void draw_stack(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.picture();
    on.say(words("learn.stack_words"));
    LearnAnswers answers = learn.answers;
    double layers = answers.foam.layers;
    bool changed =
        on.number("learn/layers", words("learn.layers"), words.number(layers, 0), 1, 20, 1, layers);
    changed = on.number("learn/height", words("learn.height"), words.mm(answers.foam.height_mm), 0.5, 60, 0.5,
                        answers.foam.height_mm) ||
              changed;
    if (changed) {
        answers.foam.layers = static_cast<int>(layers + 0.5);
        on.screen.say(told(answers, LearnStage::foam_stack));
    }
    if (on.primary("learn/next", words("learn.next"))) {
        answers.foam.squeezed_mm = answers.foam.height_mm;
        on.screen.say(told(answers, LearnStage::foam_squeeze));
    }
}

void draw_squeeze(LearnColumn& on) {
    const LearnState& learn = on.learn();
    const Words& words = on.words();
    on.picture();
    on.say(words("learn.squeeze_words"));
    LearnAnswers answers = learn.answers;
    if (on.number("learn/squeezed", words("learn.height"), words.mm(answers.foam.squeezed_mm), 0.5,
                  answers.foam.height_mm, 0.5, answers.foam.squeezed_mm)) {
        on.screen.say(told(answers, LearnStage::foam_squeeze));
    }
    if (on.primary("learn/next", words("learn.next"))) {
        on.screen.say(learn_command(learning::Finish{answers}));
    }
    if (button(on.screen.ui, "learn/skip", {on.r.x, on.y, on.r.w, on.screen.ui.m.button_h},
               {.label = words("learn.squeeze_skip")})) {
        answers.foam.squeezed_mm = 0.0;
        on.screen.say(learn_command(learning::Finish{answers}));
    }
    on.y += on.screen.ui.m.button_h + 10;
}

} // namespace

void draw_learn_stage(LearnColumn& on) {
    switch (on.learn().stage) {
    case LearnStage::led_mark:
        return draw_mark(on);
    case LearnStage::led_touch:
        return draw_touch(on);
    case LearnStage::led_colour:
        return draw_colour(on);
    case LearnStage::tape_stick:
        return draw_stick(on);
    case LearnStage::tape_meter:
        return draw_meter(on);
    case LearnStage::tape_light:
        return draw_light(on);
    case LearnStage::foam_stack:
        return draw_stack(on);
    case LearnStage::foam_squeeze:
        return draw_squeeze(on);
    default:
        return;
    }
}

void draw_learn_reading(Screen& screen, const std::string& title) {
    const LearnState& learn = *screen.state.learn;
    Ui& ui = screen.ui;
    const bool leads = learn.stage == LearnStage::tape_leads;
    KeypadLook look;
    look.title = title;
    look.expect = ui.words("learn.expect_any");
    look.unit = "Ω";
    look.save = ui.words("learn.save");
    look.over = leads ? std::string() : ui.words("learn.over");
    look.low = 0;
    look.high = leads ? 1.0 : 1.0;
    look.full = leads ? 2.0 : 10.0;
    KeypadEntry keys{.open = true, .entry = learn.typed};
    const KeypadResult result = keypad(ui, "learn/keypad", look, keys);
    LearnAnswers answers = learn.answers;
    if (result == KeypadResult::Close) {
        screen.say(told(answers, LearnStage::tape_meter));
    } else if (result == KeypadResult::Over) {
        answers.strips.answer = JointAnswer::open;
        screen.say(learn_command(learning::Finish{answers}));
    } else if (result == KeypadResult::Save && keys.value()) {
        if (leads) {
            answers.strips.leads_ohm = *keys.value();
            screen.say(told(answers, LearnStage::tape_reading));
        } else {
            answers.strips.answer = JointAnswer::ohms;
            answers.strips.reading_ohm = *keys.value();
            screen.say(learn_command(learning::Finish{answers}));
        }
    } else if (keys.entry != learn.typed) {
        screen.say(learn_command(learning::Type{keys.entry}));
    }
}

} // namespace lanternleaf
