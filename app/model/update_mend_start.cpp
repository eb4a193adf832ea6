// The beginning of a search: what the steps proved, what this library mended before, what the build's record
// has read, and what was told before the app was left.
#include "mend/told.h"
#include "model/mend_history.h"
#include "model/update_mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::size_t known_events(const OpenBuild& build) {
    return static_cast<std::size_t>(
        std::count_if(build.events.begin(), build.events.end(), [](const Event& event) {
            return event.kind == EventKind::reading || event.kind == EventKind::change ||
                   event.kind == EventKind::verdict;
        }));
}

// A step that is not reached yet cannot have gone wrong.
MendOptions options_for(const OpenBuild& build, const MendHistory& history) {
    MendOptions options;
    options.weights = weights_from(history.past);
    for (int step = 1; step <= kStepCount; ++step) {
        const auto id = static_cast<StepId>(step);
        if (build.record.at(id).proved) {
            options.proved.push_back(id);
        }
    }
    for (int k = 0; k < kFaultKinds; ++k) {
        const auto kind = static_cast<FaultKind>(k);
        const bool always = kind == FaultKind::other || kind == FaultKind::as_built;
        if (!always && static_cast<int>(shows_from(kind)) > build.record.step) {
            options.weights[static_cast<std::size_t>(k)] = 0.0;
        }
    }
    return options;
}

// Of the steps that are not proved. A proof speaks of that day and is weighed as such: tape can crack after
// it.
void observe_readings(MendState& mend, const OpenBuild& build) {
    for (int step = 1; step <= std::min(build.record.step, kStepCount); ++step) {
        if (build.record.at(static_cast<StepId>(step)).proved) {
            continue;
        }
        for (const Reading& reading : build.record.at(static_cast<StepId>(step)).readings) {
            const Check* check = check_in(build.steps[static_cast<std::size_t>(step - 1)], reading.check);
            if (check != nullptr) {
                mend.session = observe_reading(mend.session, *check, reading);
            }
        }
    }
}

// A line about a part that is no longer there tells nothing, and still can be taken back.
void observe_told_before(MendState& mend, const Record& record) {
    for (const std::string& line : record.mend_told) {
        mend.before.push_back(mend.session);
        if (Outcome<MendSession> next = observe_told(mend.session, line)) {
            mend.session = std::move(next).value();
        }
    }
}

void find_warmth(MendState& mend) {
    const MendTest* warm = find_test(*mend.session.model, "warm");
    for (const Evidence::Answer& answer : mend.session.evidence.answers) {
        if (warm == &mend.session.model->tests[static_cast<std::size_t>(answer.test)]) {
            mend.warm_asked = true;
            mend.warm = answer.outcome == 1;
        }
    }
}

// Lights tapped in the proof but not saved are known too.
void tell_tapped_lights(AppState& state, const Surroundings& around) {
    const std::vector<LightExpectation> tapped = state.seen;
    for (const LightExpectation& seen : tapped) {
        const std::vector<Led>& leds = state.mend->session.model->card.leds;
        for (std::size_t i = 0; i < leds.size(); ++i) {
            if (leds[i].id == seen.led && state.mend->session.evidence.looks[i] == Look::unseen &&
                !tell_mend(state, around, write_told(SeenLight{seen.led, look_from(seen.state)}))) {
                return;
            }
        }
    }
}

} // namespace

void start_mend_search(AppState& state, const Surroundings& around) {
    const OpenBuild& build = *state.build;
    MendState mend;
    if (state.mend) { // what the maker has at hand does not change with the search
        mend.tools = state.mend->tools;
    }
    const MendHistory history = read_mend_history(around.library);
    mend.past_mends = history.mends;
    mend.journal = build.shelf.path;
    mend.known = known_events(build);
    mend.lights_there = build.record.step >= static_cast<int>(StepId::place_leds);
    mend.session = start_mend(build.record.as_built, build.parts, options_for(build, history), build.words);
    observe_readings(mend, build);
    mend.from_record = mend.session.evidence.count();
    observe_told_before(mend, build.record);
    find_warmth(mend);
    settle_mend(mend);
    state.mend = std::move(mend);
    if (state.mend->lights_there) {
        tell_tapped_lights(state, around);
    }
}

void enter_mend(AppState& state, const Surroundings& around) {
    if (!state.build) {
        state.mend.reset();
        return;
    }
    if (!state.mend || state.mend->journal != state.build->shelf.path ||
        state.mend->known != known_events(*state.build)) {
        start_mend_search(state, around);
    }
}

} // namespace lanternleaf
