#include "history/story.h"

#include "guide/sequence.h"
#include "record/utc.h"
#include "safety/audience.h"
#include "safety/regions.h"

#include <algorithm>
#include <cstdio>
#include <iterator>

namespace lanternleaf {

namespace {

std::string tape_words(const Card& card, const Parts& parts, const Words& words) {
    std::vector<std::string> kinds;
    for (const Laid& laid : card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        const auto tape = strip == nullptr ? parts.tapes.end() : parts.tapes.find(strip->tape);
        if (tape == parts.tapes.end()) {
            continue;
        }
        // "copper-5" is spoken as "copper tape, 5 mm".
        const std::string kind = strip->tape.substr(0, strip->tape.find('-'));
        std::string key = "history.tape_" + kind;
        if (!words.has(key)) { // an own part
            key = "history.tape_other";
        }
        const std::string told = words(key, {{"kind", kind}, {"width", words.mm(tape->second.width_mm)}});
        if (std::find(kinds.begin(), kinds.end(), told) == kinds.end()) {
            kinds.push_back(told);
        }
    }
    std::string text;
    for (const std::string& kind : kinds) { // a comma stands in each: so "and" between all
        text = text.empty() ? kind : words.list({text, kind});
    }
    return text.empty() ? words("history.no_tape") : text;
}

// The fold writes a mending among the notes too, in the file's own words.
std::string note_of_mending(const std::string& text) {
    return "Mended: " + text + ".";
}

bool first_time(const Record& record) {
    return std::all_of(std::begin(record.steps), std::end(record.steps), [](const StepRecord& step) {
        return step.proved && !step.regardless && step.stops == 0;
    });
}

std::string title_of_move(const Step& step, const std::string& id) {
    for (const Move& move : step.moves) {
        if (move.id == id) {
            return move.title;
        }
    }
    return id;
}

// Journals have it in English, "7 of 7 lit"; anything else stays as it was written.
std::string tell_outcome(const std::string& recorded, const Words& words) {
    int lit = 0;
    int lights = 0;
    const bool counted = std::sscanf(recorded.c_str(), "%d of %d lit", &lit, &lights) == 2;
    const auto said = [&](const Words& in) {
        return in("history.outcome", {{"lit", lit}, {"lights", lights}});
    };
    return counted && said(english()) == recorded ? said(words) : recorded;
}

void tell_state(StoryStep& out, const StepRecord& step, const Record& record, const Words& words) {
    if (step.proved) {
        out.state = StepState::proved;
        out.state_text =
            step.stops == 0 ? words("history.proved") : words("history.proved_after", {{"n", step.stops}});
    } else if (step.regardless) {
        out.state = StepState::regardless;
        out.state_text = step.regardless_why.empty()
                             ? words("history.regardless")
                             : words("history.regardless_why", {{"why", step.regardless_why}});
    } else if (step.opened && !record.finished) {
        out.state = StepState::open;
        out.state_text = words("history.not_proved");
    } else {
        out.state = StepState::waiting;
        out.state_text = words("history.not_begun");
    }
}

// A figure as the meter showed it.
std::string figure_of(CheckKind kind, double value, const Words& words) {
    switch (kind) {
    case CheckKind::volts:
        return words.volts(value);
    case CheckKind::height:
        return words.mm(value);
    default:
        return words.ohm(value);
    }
}

StoryStep tell_step(const Record& record, int number, const Step& step, const StepTime& time,
                    const Words& words) {
    const StepRecord& done = record.steps[number - 1];
    StoryStep out;
    out.number = number;
    out.title = title_of(static_cast<StepId>(number), words);
    tell_state(out, done, record, words);
    out.verdict = done.verdict;
    out.stops = done.stops;
    out.time = time;
    for (const std::string& id : done.moves_done) {
        const auto same = std::find_if(time.moves.begin(), time.moves.end(),
                                       [&](const MoveTime& one) { return one.move == id; });
        out.moves.push_back({id, title_of_move(step, id), same == time.moves.end() ? 0 : same->worked_s});
    }
    for (const Reading& reading : done.readings) {
        out.readings.push_back(tell_reading(reading, check_in(step, reading.check), words));
        const auto worth = [](const StoryReading& one) { return one.lights ? 2 : one.has_number ? 1 : 0; };
        if (out.shown_reading < 0 ||
            worth(out.readings.back()) >= worth(out.readings[static_cast<std::size_t>(out.shown_reading)])) {
            out.shown_reading = static_cast<int>(out.readings.size()) - 1;
        }
    }
    for (const ChangeMade& made : record.changes) {
        if (made.step == number) {
            out.changes.push_back(describe(made.change, words));
        }
    }
    for (const MendMade& made : record.mends) {
        if (made.step == number) {
            out.changes.push_back(words("history.mended", {{"what", made.text}}));
            ++out.mended;
        }
    }
    return out;
}

} // namespace

std::string spoken_clock(std::int64_t seconds) {
    return utc_text(seconds).substr(11, 5);
}

std::string spoken_day(std::int64_t seconds, const Words& words) {
    return spoken_date(utc_text(seconds).substr(0, 10), words);
}

std::string short_day(std::int64_t seconds, const Words& words) {
    return short_date(utc_text(seconds).substr(0, 10), words);
}

StoryReading tell_reading(const Reading& reading, const Check* check, const Words& words) {
    StoryReading out;
    out.check = reading.check;
    out.title = check == nullptr ? reading.check : check->title;
    out.by_meter = reading.meter;
    out.simulated = reading.simulated;
    const auto looked = [&](bool yes) {
        return words(yes ? "history.as_it_should" : "history.not_as_it_should");
    };
    if (check == nullptr) {
        out.value = reading.open    ? "OL"
                    : reading.value ? words.number(*reading.value, 2)
                    : reading.yes   ? looked(*reading.yes)
                                    : words("history.seen");
        return out;
    }
    const ReadingVerdict verdict = judge_reading(*check, reading, words);
    out.fits = verdict.fit == ReadingFit::as_expected;
    out.expected = check->expect_text;
    out.lights = check->kind == CheckKind::lights;
    if (reading.yes) {
        out.value = looked(*reading.yes);
    } else if (out.lights && out.fits) {
        out.value = check->expect_text;
    } else if (out.lights || verdict.fit == ReadingFit::unreadable) {
        out.value = verdict.text;
    } else {
        out.value = reading.open ? "OL" : figure_of(check->kind, reading.value.value_or(0.0), words);
    }
    if (!reading.value) {
        return out;
    }
    out.unit = check->kind == CheckKind::volts ? "V" : check->kind == CheckKind::height ? "mm" : "ohm";
    out.value_si = *reading.value;
    out.has_number = check->kind == CheckKind::resistance || check->kind == CheckKind::volts ||
                     check->kind == CheckKind::height;
    out.low = check->low;
    out.high = check->high;
    return out;
}

Story tell(const Record& record, const std::vector<Event>& events, const Parts& shipped, const Words& words) {
    const Parts parts = merged(shipped, record.card.own_parts);
    const Timeline timeline = timeline_of(events);
    Story story;
    story.id = record.id;
    story.title = record.title;
    story.walked = record.walked;
    story.outcome = tell_outcome(record.outcome, words);
    story.state = words(record.finished    ? "history.state_finished"
                        : record.abandoned ? "history.state_put_away"
                                           : "history.state_not_finished");
    const auto day_and_clock = [&](std::int64_t seconds) {
        return words("history.started",
                     {{"day", spoken_day(seconds, words)}, {"clock", spoken_clock(seconds)}});
    };
    story.started = day_and_clock(record.started_s);
    if (record.finished || record.abandoned) {
        const bool same_day = spoken_day(record.finished_s) == spoken_day(record.started_s);
        story.ended = same_day ? spoken_clock(record.finished_s) : day_and_clock(record.finished_s);
    }
    story.made_with = tape_words(record.as_built, parts, words);
    story.audience = spoken(record.audience, words);
    story.passed_first_time = first_time(record);
    story.worked_s = worked_s(timeline);
    story.paused_s = paused_s(timeline);
    const std::vector<Step> steps = make_steps(record.as_built, parts, words);
    for (int i = 0; i < kStepCount; ++i) {
        story.steps.push_back(tell_step(record, i + 1, steps[static_cast<std::size_t>(i)],
                                        timeline[static_cast<std::size_t>(i)], words));
    }
    for (const ChangeMade& made : record.changes) {
        story.changes.push_back(describe(made.change, words) + ".");
    }
    for (const MendMade& made : record.mends) {
        story.mends.push_back(words("history.mended", {{"what", made.text}}) + ".");
        story.mended.push_back(made.text);
    }
    for (const std::string& note : record.notes) {
        const bool repeats = std::any_of(record.mends.begin(), record.mends.end(), [&](const MendMade& made) {
            return note == note_of_mending(made.text);
        });
        if (!repeats) {
            story.notes.push_back(note);
        }
    }
    int number = 0;
    for (const PhotoTaken& taken : record.photos) {
        ++number;
        std::string caption = taken.caption;
        if (caption.empty()) {
            caption = taken.step == 0 ? words("history.photo", {{"number", number}})
                                      : words("history.photo_of_step", {{"number", taken.step}});
        }
        story.photos.push_back({taken.file, caption, taken.step});
    }
    return story;
}

} // namespace lanternleaf
