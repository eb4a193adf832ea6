#include "model/update_parts.h"

#include <algorithm>
#include <cstdlib>

namespace lanternleaf {

namespace {

void save(AppState& state, const Surroundings& around, Reading reading) {
    OpenBuild& build = *state.build;
    Event event;
    event.kind = EventKind::reading;
    event.step = std::min(build.record.step, kStepCount);
    event.reading = std::move(reading);
    const Check* check = find_check(build, event.reading.check);
    const ReadingVerdict fit =
        check != nullptr ? judge_reading(*check, event.reading, build.words) : ReadingVerdict{};
    if (const Outcome<Done> done = confirm(around, build, event); !done) {
        say(state, around, done.problem().sentence());
        return;
    }
    state.sheet = SheetKind::none;
    if (fit.fit != ReadingFit::as_expected) {
        // A reading that is off leads straight to the verdict, where it is put right.
        const auto step = static_cast<StepId>(event.step);
        build.verdict =
            judge_step(build.record.as_built, build.parts, step, build.record.at(step).readings, build.words);
        if (build.verdict->state == VerdictState::stopped) {
            build.face = MakeFace::verdict;
            return;
        }
    }
    say(state, around, fit.text.empty() ? around.words("model.saved") : fit.text);
}

} // namespace

const Check* find_check(const OpenBuild& build, const std::string& id) {
    return check_in(open_step(build), id);
}

const Reading* last_reading(const OpenBuild& build, const std::string& check) {
    const std::vector<Reading>& readings =
        build.record.steps[std::min(build.record.step, kStepCount) - 1].readings;
    const auto found = std::find_if(readings.rbegin(), readings.rend(),
                                    [&check](const Reading& reading) { return reading.check == check; });
    return found == readings.rend() ? nullptr : &*found;
}

std::vector<NeededCheck> needed_checks(const OpenBuild& build) {
    std::vector<NeededCheck> needed;
    for (const Check& check : open_step(build).proof) {
        if (check.needed) {
            needed.push_back({&check, last_reading(build, check.id)});
        }
    }
    return needed;
}

void open_keypad(AppState& state, const std::string& check) {
    state.entry = {check, ""};
    state.sheet = SheetKind::keypad;
}

void save_reading(AppState& state, const Surroundings& around) {
    if (!state.build || state.entry.text.empty()) {
        return;
    }
    Reading reading;
    reading.check = state.entry.check;
    reading.value = std::atof(state.entry.text.c_str());
    save(state, around, reading);
}

void meter_shows_open(AppState& state, const Surroundings& around) {
    if (!state.build) {
        return;
    }
    Reading reading;
    reading.check = state.entry.check;
    reading.open = true;
    save(state, around, reading);
}

void looked_at(AppState& state, const Surroundings& around, bool as_expected) {
    if (!state.build) {
        return;
    }
    Reading reading;
    reading.check = state.entry.check;
    reading.yes = as_expected;
    reading.meter = false;
    save(state, around, reading);
}

void looked_at_all(AppState& state, const Surroundings& around) {
    if (!state.build) {
        return;
    }
    std::vector<std::string> left;
    for (const NeededCheck& needed : needed_checks(*state.build)) {
        if (needed.reading == nullptr && needed.check->kind != CheckKind::lights) {
            left.push_back(needed.check->id);
        }
    }
    for (const std::string& check : left) {
        state.entry.check = check;
        looked_at(state, around, true);
    }
}

// Each tap goes lit, dim, dark and round again; a light not tapped yet starts as lit.
void tap_light(AppState& state, const std::string& led) {
    for (LightExpectation& light : state.seen) {
        if (light.led == led) {
            light.state = light.state == "lit" ? "dim" : light.state == "dim" ? "dark" : "lit";
            return;
        }
    }
    state.seen.push_back({led, "lit", 0.0});
}

void save_seen(AppState& state, const Surroundings& around) {
    if (!state.build) {
        return;
    }
    for (const Check& check : open_step(*state.build).proof) {
        if (check.kind == CheckKind::lights) {
            Reading reading;
            reading.check = check.id;
            reading.meter = false;
            for (const LightExpectation& light : check.lights) {
                const auto tapped =
                    std::find_if(state.seen.begin(), state.seen.end(),
                                 [&](const LightExpectation& s) { return s.led == light.led; });
                reading.seen.push_back({light.led, tapped == state.seen.end() ? "dark" : tapped->state, 0.0});
            }
            save(state, around, reading);
            return;
        }
    }
}

} // namespace lanternleaf
