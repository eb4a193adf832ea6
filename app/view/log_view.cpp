#include "view/log_view.h"

#include "base/readout.h"
#include "guide/sequence.h"
#include "record/utc.h"

#include <algorithm>
#include <cstdio>

namespace lanternleaf {

namespace {

const Check* check_of(const Step& step, const std::string& id) {
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

// The reading worth a row: the last number measured, else the last thing seen.
void fill_reading(LogRow& row, const Step& step, const std::vector<Reading>& readings) {
    row.reading = "not measured";
    for (const Reading& reading : readings) {
        const Check* check = check_of(step, reading.check);
        if (check == nullptr) {
            continue;
        }
        const bool number = reading.value.has_value();
        if (number || !row.has_value) {
            row.reading = judge_reading(*check, reading).text;
            if (check->kind == CheckKind::look && reading.yes.value_or(false)) {
                row.reading = "looked: as it should be";
            }
        }
        if (number && check->kind == CheckKind::resistance) {
            row.has_value = true;
            row.low = check->low;
            row.high = check->high;
            row.value = *reading.value;
        }
    }
}

// "25 Nov": the year is in the record's heading.
std::string short_date(std::int64_t seconds) {
    const std::string date = date_text(seconds);
    const std::size_t month = date.find(' ');
    return month == std::string::npos ? date : date.substr(0, std::min(date.size(), month + 4));
}

std::string tape_text(const Card& card, const Parts& parts) {
    for (const Laid& laid : card.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        const auto tape = strip == nullptr ? parts.tapes.end() : parts.tapes.find(strip->tape);
        if (tape != parts.tapes.end()) {
            // "copper-5" is spoken as "copper tape, 5 mm".
            return strip->tape.substr(0, strip->tape.find('-')) + " tape, " +
                   readout_mm(tape->second.width_mm);
        }
    }
    return "no tape";
}

} // namespace

std::string clock_text(std::int64_t seconds) {
    return utc_text(seconds).substr(11, 5);
}

std::string date_text(std::int64_t seconds) {
    return spoken_date(utc_text(seconds).substr(0, 10));
}

std::string span_text(std::int64_t seconds) {
    const int minutes = static_cast<int>((seconds + 30) / 60);
    if (minutes < 60) {
        return std::to_string(std::max(minutes, 1)) + " min";
    }
    char text[32];
    std::snprintf(text, sizeof text, "%d h %02d", minutes / 60, minutes % 60);
    return text;
}

LogView make_log_view(const AppState& state, const Parts& shipped) {
    LogView view;
    if (!state.log) {
        return view;
    }
    const Record& record = *state.log;
    const Parts parts = merged(shipped, record.card.own_parts);
    view.title = record.title + ", build " + std::to_string(state.log_shelf.number);
    view.finished = record.finished;
    view.subtitle = date_text(record.started_s) + ", " + clock_text(record.started_s);
    if (record.finished) {
        view.subtitle += " to " + clock_text(record.finished_s);
        view.badge = record.outcome;
        view.badge_line = "finished in " + span_text(record.finished_s - record.started_s);
    } else {
        view.badge = "Step " + std::to_string(std::min(record.step, kStepCount)) + " of 7";
        view.badge_line = "not finished yet";
    }
    view.subtitle += ". Made with " + tape_text(record.as_built, parts) + ".";
    const std::vector<Step> steps = make_steps(record.as_built, parts);
    for (int i = 0; i < kStepCount; ++i) {
        const StepRecord& done = record.steps[i];
        LogRow row;
        row.step = i + 1;
        row.title = std::to_string(i + 1) + " " + title_of(static_cast<StepId>(i + 1));
        row.proved = done.proved;
        row.regardless = done.regardless;
        if (done.closed_s > done.opened_s && done.opened_s > 0) {
            row.time = span_text(done.closed_s - done.opened_s);
        }
        fill_reading(row, steps[static_cast<std::size_t>(i)], done.readings);
        if (done.regardless) {
            row.reading = "went on regardless" +
                          (done.regardless_why.empty() ? std::string() : ": " + done.regardless_why);
        }
        view.rows.push_back(std::move(row));
    }
    for (const ChangeMade& made : record.changes) {
        view.as_built.push_back(describe(made.change) + ".");
    }
    for (const std::string& note : record.notes) {
        view.as_built.push_back(note);
    }
    if (view.as_built.empty()) {
        view.as_built.push_back("Built as planned.");
    }
    for (const ShelfBuild& build : state.builds) {
        if (build.card_name == state.log_shelf.card_name) {
            view.others.push_back({std::to_string(build.number),
                                   short_date(build.started_s) + ", " + clock_text(build.started_s),
                                   build.finished ? "finished" : "at step " + std::to_string(build.step),
                                   build.path, build.path == state.log_shelf.path});
        }
    }
    return view;
}

} // namespace lanternleaf
