#include "history/story.h"

#include "base/readout.h"
#include "guide/sequence.h"
#include "record/utc.h"
#include "safety/audience.h"
#include "safety/regions.h"

#include <algorithm>
#include <iterator>

namespace lanternleaf {

namespace {

std::string tape_words(const Card& card, const Parts& parts) {
    std::vector<std::string> kinds;
    for (const Laid& laid : card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        const auto tape = strip == nullptr ? parts.tapes.end() : parts.tapes.find(strip->tape);
        if (tape == parts.tapes.end()) {
            continue;
        }
        // "copper-5" is spoken as "copper tape, 5 mm".
        const std::string words =
            strip->tape.substr(0, strip->tape.find('-')) + " tape, " + readout_mm(tape->second.width_mm);
        if (std::find(kinds.begin(), kinds.end(), words) == kinds.end()) {
            kinds.push_back(words);
        }
    }
    std::string text;
    for (const std::string& kind : kinds) {
        text += (text.empty() ? "" : " and ") + kind;
    }
    return text.empty() ? "no tape" : text;
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

void tell_state(StoryStep& out, const StepRecord& step, const Record& record) {
    if (step.proved) {
        out.state = StepState::proved;
        out.state_text = step.stops == 0   ? "proved"
                         : step.stops == 1 ? "proved after one stop"
                                           : "proved after " + std::to_string(step.stops) + " stops";
    } else if (step.regardless) {
        out.state = StepState::regardless;
        out.state_text = "went on regardless";
        if (!step.regardless_why.empty()) {
            out.state_text += ": " + step.regardless_why;
        }
    } else if (step.opened && !record.finished) {
        out.state = StepState::open;
        out.state_text = "not proved yet";
    } else {
        out.state = StepState::waiting;
        out.state_text = "not begun";
    }
}

StoryStep tell_step(const Record& record, int number, const Step& step, const StepTime& time) {
    const StepRecord& done = record.steps[number - 1];
    StoryStep out;
    out.number = number;
    out.title = title_of(static_cast<StepId>(number));
    tell_state(out, done, record);
    out.verdict = done.verdict;
    out.stops = done.stops;
    out.time = time;
    for (const std::string& id : done.moves_done) {
        const auto same = std::find_if(time.moves.begin(), time.moves.end(),
                                       [&](const MoveTime& one) { return one.move == id; });
        out.moves.push_back({id, title_of_move(step, id), same == time.moves.end() ? 0 : same->worked_s});
    }
    for (const Reading& reading : done.readings) {
        out.readings.push_back(tell_reading(reading, check_in(step, reading.check)));
        const auto worth = [](const StoryReading& one) { return one.lights ? 2 : one.has_number ? 1 : 0; };
        if (out.shown_reading < 0 ||
            worth(out.readings.back()) >= worth(out.readings[static_cast<std::size_t>(out.shown_reading)])) {
            out.shown_reading = static_cast<int>(out.readings.size()) - 1;
        }
    }
    for (const ChangeMade& made : record.changes) {
        if (made.step == number) {
            out.changes.push_back(describe(made.change));
        }
    }
    for (const MendMade& made : record.mends) {
        if (made.step == number) {
            out.changes.push_back("Mended: " + made.text);
        }
    }
    return out;
}

} // namespace

std::string spoken_clock(std::int64_t seconds) {
    return utc_text(seconds).substr(11, 5);
}

std::string spoken_day(std::int64_t seconds) {
    return spoken_date(utc_text(seconds).substr(0, 10));
}

StoryReading tell_reading(const Reading& reading, const Check* check) {
    StoryReading out;
    out.check = reading.check;
    out.title = check == nullptr ? reading.check : check->title;
    out.by_meter = reading.meter;
    out.simulated = reading.simulated;
    if (check == nullptr) {
        out.value = reading.open    ? "OL"
                    : reading.value ? readout_number(*reading.value, 2)
                    : reading.yes   ? (*reading.yes ? "as it should be" : "not as it should be")
                                    : "seen";
        return out;
    }
    const ReadingVerdict verdict = judge_reading(*check, reading);
    out.fits = verdict.fit == ReadingFit::as_expected;
    out.expected = check->expect_text;
    out.lights = check->kind == CheckKind::lights;
    out.value = verdict.text.substr(0, verdict.text.find(", "));
    if (check->kind == CheckKind::lights && !out.fits) {
        out.value = verdict.text;
    }
    if (reading.yes) {
        out.value = *reading.yes ? "as it should be" : "not as it should be";
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

Story tell(const Record& record, const std::vector<Event>& events, const Parts& shipped) {
    const Parts parts = merged(shipped, record.card.own_parts);
    const Timeline timeline = timeline_of(events);
    Story story;
    story.id = record.id;
    story.title = record.title;
    story.walked = record.walked;
    story.outcome = record.outcome;
    story.state = record.finished ? "finished" : record.abandoned ? "put away" : "not finished";
    story.started = spoken_day(record.started_s) + ", " + spoken_clock(record.started_s);
    if (record.finished || record.abandoned) {
        story.ended = spoken_clock(record.finished_s);
        if (spoken_day(record.finished_s) != spoken_day(record.started_s)) {
            story.ended = spoken_day(record.finished_s) + ", " + story.ended;
        }
    }
    story.made_with = tape_words(record.as_built, parts);
    story.audience = spoken(record.audience);
    story.passed_first_time = first_time(record);
    story.worked_s = worked_s(timeline);
    story.paused_s = paused_s(timeline);
    const std::vector<Step> steps = make_steps(record.as_built, parts);
    for (int i = 0; i < kStepCount; ++i) {
        story.steps.push_back(tell_step(record, i + 1, steps[static_cast<std::size_t>(i)],
                                        timeline[static_cast<std::size_t>(i)]));
    }
    for (const ChangeMade& made : record.changes) {
        story.changes.push_back(describe(made.change) + ".");
    }
    for (const MendMade& made : record.mends) {
        story.mends.push_back("Mended: " + made.text + ".");
    }
    for (const std::string& note : record.notes) {
        if (std::find(story.mends.begin(), story.mends.end(), note) == story.mends.end()) {
            story.notes.push_back(note);
        }
    }
    int number = 0;
    for (const PhotoTaken& taken : record.photos) {
        ++number;
        std::string caption = taken.caption;
        if (caption.empty()) {
            caption =
                taken.step == 0 ? "Photo " + std::to_string(number) : "Step " + std::to_string(taken.step);
        }
        story.photos.push_back({taken.file, caption, taken.step});
    }
    return story;
}

} // namespace lanternleaf
