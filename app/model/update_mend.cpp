#include "model/update_mend.h"

#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr std::size_t kCausesShown = 4;
constexpr std::size_t kTakenBack = 40; ///< as many as anybody says in one search

template <class... Ts>
struct Overloaded : Ts... {
    using Ts::operator()...;
};
template <class... Ts>
Overloaded(Ts...) -> Overloaded<Ts...>;

std::size_t known_events(const OpenBuild& build) {
    return static_cast<std::size_t>(
        std::count_if(build.events.begin(), build.events.end(), [](const Event& event) {
            return event.kind == EventKind::reading || event.kind == EventKind::change ||
                   event.kind == EventKind::verdict;
        }));
}

void settle_mend(MendState& mend) {
    mend.causes = causes(mend.session, kCausesShown);
    mend.chances = cause_chances(mend.session);
    mend.chances.resize(std::min(mend.chances.size(), mend.causes.size()));
    mend.test = next_test(mend.session, mend.tools);
    mend.chosen = -1;
}

// A step that is not reached yet cannot have gone wrong.
MendOptions options_for(const OpenBuild& build) {
    MendOptions options;
    for (int step = 1; step <= kStepCount; ++step) {
        const auto id = static_cast<StepId>(step);
        if (build.record.at(id).proved) {
            options.proved.push_back(id);
        }
    }
    for (int k = 0; k < kFaultKinds; ++k) {
        const auto kind = static_cast<FaultKind>(k);
        const bool always = kind == FaultKind::other || kind == FaultKind::as_built;
        if (!always && static_cast<int>(traits_of(kind).made_in) > build.record.step) {
            options.weights[static_cast<std::size_t>(k)] = 0.0;
        }
    }
    return options;
}

const Check* check_in(const Step& step, const std::string& id) {
    for (const Check& check : step.proof) {
        if (check.id == id) {
            return &check;
        }
    }
    for (const Move& move : step.moves) {
        if (move.check && move.check->id == id) {
            return &*move.check;
        }
    }
    return nullptr;
}

void start(AppState& state) {
    const OpenBuild& build = *state.build;
    MendState mend;
    if (state.mend) { // what the maker has at hand does not change with the search
        mend.tools = state.mend->tools;
        mend.warm_asked = state.mend->warm_asked && state.mend->journal == build.shelf.path;
    }
    mend.journal = build.shelf.path;
    mend.known = known_events(build);
    mend.lights_there = build.record.step >= static_cast<int>(StepId::place_leds);
    mend.session = start_mend(build.record.as_built, build.parts, options_for(build));
    for (int step = 1; step <= std::min(build.record.step, kStepCount); ++step) {
        for (const Reading& reading : build.record.at(static_cast<StepId>(step)).readings) {
            const Check* check = check_in(build.steps[static_cast<std::size_t>(step - 1)], reading.check);
            if (check != nullptr) {
                mend.session = observe_reading(mend.session, *check, reading);
            }
        }
    }
    // Lights tapped in the proof but not saved are known too.
    for (const LightExpectation& seen : state.seen) {
        if (Outcome<MendSession> next = observe(mend.session, SeenLight{seen.led, look_from(seen.state)});
            next && mend.lights_there) {
            mend.session = std::move(next).value();
        }
    }
    mend.told = mend.session.evidence.count();
    settle_mend(mend);
    state.mend = std::move(mend);
}

void take_in(AppState& state, const Surroundings& around, const Observation& observation) {
    MendState& mend = *state.mend;
    Outcome<MendSession> next = observe(mend.session, observation);
    if (!next) {
        say(state, around, next.problem().sentence());
        return;
    }
    mend.before.push_back(std::move(mend.session));
    if (mend.before.size() > kTakenBack) {
        mend.before.erase(mend.before.begin());
    }
    mend.session = std::move(next).value();
    settle_mend(mend);
}

Look after(Look look) {
    switch (look) {
    case Look::unseen:
    case Look::flickers:
        return Look::lit;
    case Look::lit:
        return Look::dim;
    case Look::dim:
        return Look::dark;
    case Look::dark:
        return Look::flickers;
    }
    return Look::lit;
}

void tap(AppState& state, const Surroundings& around, const std::string& led) {
    const MendState& mend = *state.mend;
    if (!mend.lights_there) {
        say(state, around, "The lights are placed in step 6. Until then Mend works with your readings.");
        return;
    }
    const std::vector<Led>& leds = mend.session.model->card.leds;
    for (std::size_t i = 0; i < leds.size(); ++i) {
        if (leds[i].id == led) {
            take_in(state, around, SeenLight{led, after(mend.session.evidence.looks[i])});
            return;
        }
    }
}

void clear_lights(AppState& state) {
    MendState& mend = *state.mend;
    MendSession cleared = mend.session;
    std::fill(cleared.evidence.looks.begin(), cleared.evidence.looks.end(), Look::unseen);
    weigh(cleared);
    mend.before.push_back(std::move(mend.session));
    mend.session = std::move(cleared);
    settle_mend(mend);
}

void warm_answer(AppState& state, const Surroundings& around, bool warm) {
    if (state.build->record.cell_in) {
        cell_out(state, around);
        if (state.build->record.cell_in) {
            return; // the disk refused; it has been said
        }
        state.said.clear();
    }
    state.mend->warm_asked = true;
    state.mend->warm = warm;
    take_in(state, around, TestAnswer{"warm", warm ? 1 : 0});
}

// What the mending of a found fault does to the card when the engine names no addition of its own: a light or
// a cell that lay the wrong way round, or of another type, is again as planned.
std::optional<Change> back_to_plan(const OpenBuild& build, const Change& found) {
    Change back = found;
    if (found.kind == ChangeKind::led_turned || found.kind == ChangeKind::cell_upside_down) {
        return back;
    }
    if (found.kind == ChangeKind::led_swapped) {
        for (const Led& led : build.record.as_built.leds) {
            if (led.id == found.part) {
                back.type = led.type;
                return back;
            }
        }
    }
    return std::nullopt;
}

bool write(AppState& state, const Surroundings& around, EventKind kind, const std::string& text,
           const Change& change = {}) {
    Event event;
    event.kind = kind;
    event.step = std::min(state.build->record.step, kStepCount);
    event.text = text;
    event.change = change;
    const Outcome<Done> done = confirm(around, *state.build, event);
    if (!done) {
        say(state, around, done.problem().sentence());
    }
    return done.ok();
}

// The fault as it was, what the mending added, and a line in words; then the step is proved again.
void found_it(AppState& state, const Surroundings& around, int index) {
    if (index < 0 || index >= static_cast<int>(state.mend->causes.size())) {
        return;
    }
    OpenBuild& build = *state.build;
    const Cause cause = state.mend->causes[static_cast<std::size_t>(index)];
    std::vector<Change> changes;
    if (cause.found) {
        const std::optional<Change> back = cause.mend ? cause.mend : back_to_plan(build, *cause.found);
        if (back) { // a fault with no known way back would leave the record believing that it is still there
            changes.push_back(*cause.found);
            changes.push_back(*back);
        }
    } else if (cause.mend) {
        changes.push_back(*cause.mend);
    }
    for (const Change& change : changes) {
        if (!write(state, around, EventKind::change, "", change)) {
            return;
        }
    }
    if (!write(state, around, EventKind::note, "Mended: " + cause.title + ".")) {
        return;
    }
    state.mend.reset();
    state.seen.clear();
    if (build.record.finished) {
        open_log(state, around, build.shelf.path);
        go_to(state, around, Place::log);
        say(state, around, "It is in the record. Look at the lights once more.");
        return;
    }
    build.verdict.reset();
    build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
    go_to(state, around, Place::make);
    say(state, around,
        build.face == MakeFace::proof ? "It is in the record. Now prove the step again."
                                      : "It is in the record. Go on with the move at hand.");
}

void take_back(AppState& state) {
    MendState& mend = *state.mend;
    if (mend.before.empty()) {
        return;
    }
    mend.session = std::move(mend.before.back());
    mend.before.pop_back();
    settle_mend(mend);
    const auto& answers = mend.session.evidence.answers;
    const MendTest* warm = find_test(*mend.session.model, "warm");
    mend.warm = std::any_of(answers.begin(), answers.end(), [&](const Evidence::Answer& answer) {
        return warm == &mend.session.model->tests[static_cast<std::size_t>(answer.test)] &&
               answer.outcome == 1;
    });
}

void have(MendState& mend, mend::Tool tool) {
    bool& has = tool == mend::Tool::foil         ? mend.tools.foil
                : tool == mend::Tool::known_cell ? mend.tools.known_cell
                                                 : mend.tools.meter;
    has = !has;
    mend.test = next_test(mend.session, mend.tools);
}

} // namespace

void enter_mend(AppState& state) {
    if (!state.build) {
        state.mend.reset();
        return;
    }
    if (!state.mend || state.mend->journal != state.build->shelf.path ||
        state.mend->known != known_events(*state.build)) {
        start(state);
    }
}

void update_mend(AppState& state, const Surroundings& around, const MendCommand& command) {
    if (!state.build || !state.mend) {
        return;
    }
    std::visit(Overloaded{
                   [&](const mend::WarmAnswer& c) { warm_answer(state, around, c.warm); },
                   [&](const mend::TapLight& c) { tap(state, around, c.led); },
                   [&](const mend::ClearLights&) { clear_lights(state); },
                   [&](const mend::Answer& c) {
                       if (state.mend->test) {
                           take_in(state, around, TestAnswer{std::string(state.mend->test->id), c.outcome});
                       }
                   },
                   [&](const mend::TakeBack&) { take_back(state); },
                   [&](const mend::Have& c) { have(*state.mend, c.tool); },
                   [&](const mend::LookAt& c) { state.mend->chosen = c.cause; },
                   [&](const mend::Found& c) { found_it(state, around, c.cause); },
                   [&](const mend::StartAgain&) {
                       state.mend->warm_asked = false;
                       start(state);
                   },
               },
               command);
}

} // namespace lanternleaf
