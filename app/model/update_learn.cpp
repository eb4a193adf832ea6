#include "model/update_learn.h"

#include "base/overloaded.h"
#include "cardfile/cardfile.h"
#include "learn/learn_words.h"
#include "model/update_draw.h"
#include "model/update_parts.h"
#include "record/utc.h"

#include <algorithm>
#include <type_traits>

namespace lanternleaf {

namespace {

bool handles_cell(LearnStage stage) {
    return stage == LearnStage::led_touch || stage == LearnStage::tape_light;
}

void read_own(LearnState& learn, const Surroundings& around) {
    learn.own = load_own_parts(around.library, around.shipped);
    learn.known = merged(around.shipped, learn.own.parts);
}

void open_list(AppState& state, const Surroundings& around) {
    LearnState learn;
    read_own(learn, around);
    state.learn = std::move(learn);
    state.sheet = SheetKind::learn;
}

void begin(AppState& state, const Surroundings& around, const learning::Begin& test) {
    LearnState learn;
    read_own(learn, around);
    learn.sort = test.sort;
    learn.planned = test.type;
    learn.stage = LearnStage::foam_stack;
    if (test.sort != PartSort::foam) {
        const bool led = test.sort == PartSort::led;
        (led ? learn.answers.touch.type : learn.answers.strips.type) = test.type;
        const bool there =
            led ? learn.known.leds.count(test.type) > 0 : learn.known.tapes.count(test.type) > 0;
        learn.stage = !there ? LearnStage::choose : led ? LearnStage::led_mark : LearnStage::tape_stick;
    }
    state.learn = std::move(learn);
    state.sheet = SheetKind::learn;
}

void tell(AppState& state, const Surroundings& around, const learning::Tell& told) {
    LearnState& learn = *state.learn;
    learn.answers = told.answers;
    learn.typed.clear();
    learn.lamp_failed = false;
    if (told.next == LearnStage::list) {
        open_list(state, around);
    } else if (handles_cell(told.next) && !learn.adult) {
        learn.waiting = told.next;
        state.notice = Notice::asking;
    } else {
        learn.stage = told.next;
    }
}

// Whether a card has to do with what was learnt.
bool uses(const Card& card, const Learnt& learnt, const std::string& planned) {
    switch (learnt.sort) {
    case PartSort::led:
        return std::any_of(card.leds.begin(), card.leds.end(),
                           [&](const Led& led) { return led.type == learnt.id || led.type == planned; });
    case PartSort::tape:
        return std::any_of(card.laid.begin(), card.laid.end(), [&](const Laid& laid) {
            const Strip* strip = std::get_if<Strip>(&laid);
            return strip != nullptr && strip->tape == learnt.id;
        });
    case PartSort::foam:
        return card.foam.has_value();
    }
    return false;
}

// The build on the table goes on with what its maker now knows, and its record says so.
void tell_build(AppState& state, const Surroundings& around, const Learnt& learnt) {
    if (!state.build || state.place != Place::make || !state.build->looking_only.empty() ||
        state.build->record.finished || state.build->record.abandoned ||
        !uses(state.build->record.as_built, learnt, state.learn->planned)) {
        return;
    }
    Event event;
    event.kind = EventKind::learnt;
    event.step = std::min(state.build->record.step, kStepCount);
    event.text = learnt_line(around.words, learnt, state.learn->planned);
    event.parts = write_parts(learnt.parts);
    if (const Outcome<Done> done = confirm(around, *state.build, event); !done) {
        say(state, around, done.problem().sentence());
    }
}

void tell_plan(AppState& state, const Surroundings& around) {
    if (state.draw) {
        state.draw->parts = merged(known_parts(around), state.draw->history.card().own_parts);
        settle(*state.draw);
    }
}

void finish(AppState& state, const Surroundings& around, const LearnAnswers& answers) {
    LearnState& learn = *state.learn;
    learn.answers = answers;
    const std::string at = utc_text(around.now_s);
    const Outcome<Learnt> learnt =
        learn.sort == PartSort::led    ? learn_led(answers.touch, learn.known, at, around.words)
        : learn.sort == PartSort::tape ? learn_tape(answers.strips, learn.known, at, around.words)
                                       : learn_foam(answers.foam, at, around.words);
    if (!learnt) {
        say(state, around, learnt.problem().expected);
        return;
    }
    if (const Outcome<std::string> kept = keep_learnt(around.library, learnt.value()); !kept) {
        say(state, around, kept.problem().sentence());
        return;
    }
    learn.learnt = learnt.value();
    learn.stage = LearnStage::done;
    learn.typed.clear();
    read_own(learn, around);
    tell_build(state, around, learnt.value());
    tell_plan(state, around);
    refresh_shelf(state, around);
}

void forget(AppState& state, const Surroundings& around, const learning::Forget& what) {
    if (const Outcome<Done> done = forget_part(around.library, what.sort, what.id, utc_text(around.now_s));
        !done) {
        say(state, around, done.problem().sentence());
        return;
    }
    open_list(state, around);
    tell_plan(state, around);
    refresh_shelf(state, around);
}

void use_foam(AppState& state, const Surroundings& around, const std::string& id) {
    const auto foam = state.learn->known.foams.find(id);
    if (!state.draw || foam == state.learn->known.foams.end()) {
        return;
    }
    Foam next =
        state.draw->card.foam.value_or(Foam{0.0, 3, {Edge::top, Edge::right, Edge::bottom, Edge::left}, {}});
    next.thickness_mm = foam->second.thickness_mm;
    commit_edit(state, around, {edit::SetFoam{next}});
    state.sheet = SheetKind::none;
    state.learn.reset();
}

} // namespace

bool adult_confirms_test(AppState& state) {
    if (!state.learn || !state.learn->waiting) {
        return false;
    }
    state.learn->adult = true;
    state.learn->stage = *state.learn->waiting;
    state.learn->waiting.reset();
    state.notice = Notice::none;
    return true;
}

void stop_waiting(AppState& state) {
    if (state.learn) {
        state.learn->waiting.reset();
    }
}

void update_learn(AppState& state, const Surroundings& around, const LearnCommand& act) {
    std::visit(Overloaded{
                   [&](const learning::OpenList&) { open_list(state, around); },
                   [&](const learning::Begin& c) { begin(state, around, c); },
                   [&](const auto& c) {
                       if (!state.learn) {
                           return; // its sheet was closed in the same frame
                       }
                       using Act = std::decay_t<decltype(c)>;
                       if constexpr (std::is_same_v<Act, learning::Tell>) {
                           tell(state, around, c);
                       } else if constexpr (std::is_same_v<Act, learning::Type>) {
                           state.learn->typed = c.text;
                       } else if constexpr (std::is_same_v<Act, learning::NeverLit>) {
                           state.learn->lamp_failed = true;
                       } else if constexpr (std::is_same_v<Act, learning::Finish>) {
                           finish(state, around, c.answers);
                       } else if constexpr (std::is_same_v<Act, learning::Forget>) {
                           forget(state, around, c);
                       } else if constexpr (std::is_same_v<Act, learning::UseFoam>) {
                           use_foam(state, around, c.id);
                       }
                   },
               },
               act);
}

} // namespace lanternleaf
