#include "record/walk.h"

#include "cardfile/cardfile.h"
#include "guide/sequence.h"
#include "record/simulate.h"

#include <algorithm>

namespace lanternleaf {

namespace {

class Walker {
public:
    Walker(const Parts& parts, const BuildScript& script, const std::function<std::int64_t()>& now_s,
           const Words& words)
        : parts_(parts), script_(script), now_s_(now_s), words_(words) {}

    Outcome<Walk> run(const Card& card, const std::string& id);

private:
    // Nothing after the first problem is carried out.
    bool add(Event event, const std::string& place);
    bool say(EventKind kind, int step, std::string text = {});
    bool change(const std::vector<Change>& changes, int step, const std::string& key);
    bool begin(const Card& card, const std::string& id);
    bool walk_step(StepId step);
    bool do_moves(StepId step, StepWalk& out);
    bool judge(StepId step, const Observed& observed, StepWalk& out);

    struct Judging {
        StepVerdict verdict;
        std::vector<ReadingVerdict> fits;
    };

    // Judges without noting anything, in some language.
    [[nodiscard]] Judging judging(StepId step, const std::vector<Reading>& readings,
                                  const Words& words) const;
    bool take_readings(StepId step, const Observed& observed, const std::vector<Check>& planned,
                       const std::vector<Check>& built);
    bool put_right(StepId step, StepWalk& out);
    bool finish();
    bool knows(const Observed& observed, const std::vector<Check>& planned, const std::vector<Check>& built);
    void fail(const std::string& place, const std::string& expected);

    const Parts& parts_;
    const BuildScript& script_;
    const std::function<std::int64_t()>& now_s_;
    const Words& words_;
    std::vector<Step> plan_;
    Walk walk_;
    std::optional<Problem> problem_;
};

std::string step_place(int step) {
    return "step " + std::to_string(step);
}

std::vector<Check> checks_at(const std::vector<Step>& steps, StepId step) {
    return checks_of(steps[static_cast<std::size_t>(step) - 1]);
}

void Walker::fail(const std::string& place, const std::string& expected) {
    problem_ = Problem{script_.file, place, expected};
}

bool Walker::add(Event event, const std::string& place) {
    event.at_s = now_s_();
    if (const Outcome<Done> done = apply_event(walk_.record, parts_, event); !done) {
        const Problem& why = done.problem();
        fail(place, why.place.empty() ? why.expected : why.place + ": " + why.expected);
        return false;
    }
    walk_.events.push_back(std::move(event));
    return true;
}

bool Walker::say(EventKind kind, int step, std::string text) {
    return add(event_at(0, kind, step, std::move(text)), step == 0 ? "" : step_place(step));
}

bool Walker::change(const std::vector<Change>& changes, int step, const std::string& key) {
    for (std::size_t i = 0; i < changes.size(); ++i) {
        Event event = event_at(0, EventKind::change, step);
        event.change = changes[i];
        if (!add(std::move(event), step_place(step) + ", " + key + " " + std::to_string(i + 1))) {
            return false;
        }
    }
    return true;
}

bool Walker::begin(const Card& card, const std::string& id) {
    Event started = event_at(0, EventKind::started, 0, id);
    started.card = write_card(card);
    started.walked = true;
    return add(std::move(started), "") &&
           say(EventKind::note, 0,
               "Walked through without hands: nobody stuck or measured anything, and readings marked "
               "simulated are what the card as built should give.") &&
           (!script_.audience || say(EventKind::audience, 0, name_of(*script_.audience)));
}

// Checks and LEDs that the script names must be there; passing a slip over would change what is being tried.
bool Walker::knows(const Observed& observed, const std::vector<Check>& planned,
                   const std::vector<Check>& built) {
    const int step = walk_.record.step;
    for (const Reading& reading : observed.readings) {
        if (find_check(planned, reading.check) == nullptr && find_check(built, reading.check) == nullptr) {
            std::string known;
            for (const Check& check : planned) {
                known += (known.empty() ? "" : ", ") + check.id;
            }
            fail(step_place(step), "expected a check of this step (" + known + "), found " + reading.check);
            return false;
        }
    }
    for (const LightExpectation& light : observed.seen) {
        if (find_led(walk_.record.card, light.led) == nullptr) {
            fail(step_place(step), "expected an LED of the card, found " + light.led);
            return false;
        }
    }
    return true;
}

// The step's look at the lights with what the script saw put over what the simulation shows.
void overlay(Reading& reading, const std::vector<LightExpectation>& seen) {
    for (const LightExpectation& light : seen) {
        const auto same = std::find_if(reading.seen.begin(), reading.seen.end(),
                                       [&](const LightExpectation& other) { return other.led == light.led; });
        if (same == reading.seen.end()) {
            reading.seen.push_back(light);
        } else {
            *same = light;
        }
        reading.simulated = false;
    }
}

bool Walker::take_readings(StepId step, const Observed& observed, const std::vector<Check>& planned,
                           const std::vector<Check>& built) {
    std::vector<Check> all = planned;
    for (const Check& check : built) {
        if (find_check(planned, check.id) == nullptr) {
            all.push_back(check);
        }
    }
    bool saw_lights = false;
    for (const Check& check : all) {
        const auto given = std::find_if(observed.readings.begin(), observed.readings.end(),
                                        [&](const Reading& reading) { return reading.check == check.id; });
        std::optional<Reading> reading =
            given != observed.readings.end()
                ? *given
                : simulated_reading(walk_.record.as_built, parts_, step, check, find_check(built, check.id));
        if (!reading) {
            continue;
        }
        if (check.kind == CheckKind::lights) {
            overlay(*reading, observed.seen);
            saw_lights = true;
        }
        Event event = event_at(0, EventKind::reading, static_cast<int>(step));
        event.reading = *reading;
        if (!add(std::move(event), step_place(static_cast<int>(step)))) {
            return false;
        }
    }
    if (!observed.seen.empty() && !saw_lights) {
        fail(step_place(static_cast<int>(step)), "expected \"seen\" only in the step with the light-up test");
        return false;
    }
    return true;
}

bool Walker::do_moves(StepId step, StepWalk& out) {
    const int number = static_cast<int>(step);
    const std::vector<Step> steps = make_steps(walk_.record.as_built, parts_, words_);
    for (const Move& move : steps[static_cast<std::size_t>(number) - 1].moves) {
        if (move.kind == MoveKind::adult_notice && !say(EventKind::adult, number, "walked")) {
            return false;
        }
        if (move.kind == MoveKind::cell_in && !say(EventKind::cell_in, number)) {
            return false;
        }
        if (!say(EventKind::move_done, number, move.id)) {
            return false;
        }
        ++out.moves;
    }
    return true;
}

Walker::Judging Walker::judging(StepId step, const std::vector<Reading>& readings, const Words& words) const {
    const std::vector<Check> planned =
        checks_at(&words == &words_ ? plan_ : make_steps(walk_.record.card, parts_, words), step);
    const std::vector<Check> built = checks_at(make_steps(walk_.record.as_built, parts_, words), step);
    Judging told{judge_step(walk_.record.as_built, parts_, step, readings, words), {}};
    for (const Reading& reading : readings) {
        const Check* as_planned = find_check(planned, reading.check);
        const Check* as_built = find_check(built, reading.check);
        if (as_planned == nullptr && as_built == nullptr) {
            // A change since then did away with the check: its reading stands in the record, and proves
            // nothing.
            told.fits.push_back({reading.check, ReadingFit::as_expected, words("walk.no_longer_asked")});
            continue;
        }
        const Check& check = as_planned != nullptr ? *as_planned : *as_built;
        told.fits.push_back(judge_against_plan(check, as_built, reading, words));
        if (check.needed && told.fits.back().fit == ReadingFit::off &&
            told.verdict.state == VerdictState::proved) {
            told.verdict.state = VerdictState::stopped;
            told.verdict.sentence =
                words("walk.check_is", {{"check", check.title}, {"reading", told.fits.back().text}});
        }
    }
    return told;
}

bool Walker::judge(StepId step, const Observed& observed, StepWalk& out) {
    const std::vector<Check> planned = checks_at(plan_, step);
    const std::vector<Check> built = checks_at(make_steps(walk_.record.as_built, parts_, words_), step);
    if (!knows(observed, planned, built) || !take_readings(step, observed, planned, built)) {
        return false;
    }
    out.readings = walk_.record.at(step).readings;
    Judging told = judging(step, out.readings, words_);
    out.state = told.verdict.state;
    out.sentence = std::move(told.verdict.sentence);
    out.findings = std::move(told.verdict.findings);
    out.to_do = std::move(told.verdict.to_do);
    out.fits = std::move(told.fits);
    out.stops += out.state == VerdictState::stopped ? 1 : 0;
    // In files: English.
    const bool english_told = words_.language() == english().language() && words_.unit() == english().unit();
    Event event =
        event_at(0, EventKind::verdict, static_cast<int>(step),
                 english_told ? out.sentence : judging(step, out.readings, english()).verdict.sentence);
    event.state = out.state;
    return add(std::move(event), step_place(static_cast<int>(step)));
}

// What the script does about a stopped step: fixes, a second judging, and going on regardless.
bool Walker::put_right(StepId step, StepWalk& out) {
    const int number = static_cast<int>(step);
    const ScriptStep& script = script_.steps[number - 1];
    if (!script.fixes.empty() || !script.observed_after.readings.empty() ||
        !script.observed_after.seen.empty()) {
        // Nothing is mended with the cell in.
        const bool cell_in = walk_.record.cell_in;
        const bool done =
            (!cell_in || say(EventKind::cell_out, number)) && change(script.fixes, number, "fix") &&
            (!cell_in || say(EventKind::cell_in, number)) && judge(step, script.observed_after, out);
        if (!done) {
            return false;
        }
    }
    if (out.state == VerdictState::stopped && script.regardless) {
        out.regardless = true;
        return say(EventKind::regardless, number, *script.regardless);
    }
    return true;
}

bool Walker::walk_step(StepId step) {
    const int number = static_cast<int>(step);
    const ScriptStep& script = script_.steps[number - 1];
    StepWalk& out = walk_.steps.emplace_back();
    out.step = step;
    return say(EventKind::step_opened, number) &&
           (script.note.empty() || say(EventKind::note, number, script.note)) &&
           change(script.changes, number, "change") && do_moves(step, out) &&
           judge(step, script.observed, out) && (out.state == VerdictState::proved || put_right(step, out));
}

bool Walker::finish() {
    int lit = 0;
    const Reading* lights = nullptr;
    for (const Reading& reading : walk_.record.at(StepId::place_leds).readings) {
        lights = reading.seen.empty() ? lights : &reading;
    }
    if (lights != nullptr) {
        lit = static_cast<int>(
            std::count_if(lights->seen.begin(), lights->seen.end(),
                          [](const LightExpectation& light) { return light.state == "lit"; }));
    }
    return say(EventKind::finished, 0,
               english()("walk.outcome", {{"lit", lit},
                                          {"all", walk_.record.card.leds.size()},
                                          {"proved", proved_count(walk_.record)},
                                          {"steps", kStepCount}}));
}

Outcome<Walk> Walker::run(const Card& card, const std::string& id) {
    plan_ = make_steps(card, parts_, words_);
    bool going = begin(card, id);
    for (int step = 1; going && step <= kStepCount && walk_.record.step == step; ++step) {
        going = walk_step(static_cast<StepId>(step));
    }
    if (going && walk_.record.step > kStepCount) {
        going = finish();
    }
    if (problem_) {
        return *problem_;
    }
    return std::move(walk_);
}

} // namespace

const char* name_of(ReadingFit fit) {
    switch (fit) {
    case ReadingFit::as_expected:
        return "as-expected";
    case ReadingFit::off:
        return "off";
    case ReadingFit::unreadable:
        return "unreadable";
    }
    return "";
}

Outcome<Walk> walk_build(const Card& card, const Parts& parts, const BuildScript& script,
                         const std::string& id, const std::function<std::int64_t()>& now_s,
                         const Words& words) {
    return Walker(parts, script, now_s, words).run(card, id);
}

} // namespace lanternleaf
