#include "view/log_view.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// "25 Nov": the year is in the record's heading.
std::string short_date(std::int64_t seconds) {
    const std::string date = spoken_day(seconds);
    const std::size_t month = date.find(' ');
    return month == std::string::npos ? date : date.substr(0, std::min(date.size(), month + 4));
}

LogRow row_of(const StoryStep& step) {
    LogRow row;
    row.step = step.number;
    row.title = std::to_string(step.number) + " " + step.title;
    row.state = step.state;
    row.stops = step.stops;
    if (step.state == StepState::proved || step.state == StepState::regardless) {
        row.time = spoken_span(step.time.worked_s);
    }
    row.reading = step.state == StepState::waiting ? std::string() : "not measured";
    if (step.shown_reading >= 0) {
        const StoryReading& reading = step.readings[static_cast<std::size_t>(step.shown_reading)];
        row.reading = reading.value;
        row.as_expected = reading.fits;
        row.has_range = reading.has_number && reading.high > 0;
        row.range = range_shares(reading);
    }
    if (step.state == StepState::regardless) {
        row.reading = step.state_text;
        row.has_range = false;
    }
    row.spoken = row.title;
    for (const std::string& words : {step.state_text, row.time, row.reading}) {
        if (!words.empty()) {
            row.spoken += ", ";
            row.spoken += words;
        }
    }
    return row;
}

void add_lines(const Story& story, std::vector<LogLine>& out) {
    for (const std::string& change : story.changes) {
        out.push_back({LogLineKind::change, change});
    }
    for (const std::string& mend : story.mends) {
        out.push_back({LogLineKind::mend, mend});
    }
    if (out.empty()) {
        out.push_back({LogLineKind::plain, "Built as planned."});
    }
    for (const std::string& note : story.notes) {
        out.push_back({LogLineKind::note, note});
    }
}

std::string with_pauses(const std::string& worked, const StepTime& time) {
    if (time.pauses == 0) {
        return worked;
    }
    return worked + ", and " +
           (time.pauses == 1 ? std::string("a pause") : std::to_string(time.pauses) + " pauses") + " of " +
           spoken_span(time.paused_s);
}

} // namespace

RangeShares range_shares(const StoryReading& reading) {
    const double from = std::min(reading.low, reading.value_si);
    const double to = std::max(reading.high, reading.value_si);
    const double room = std::max(to - from, 1e-9) * 0.45;
    const double start = std::max(0.0, from - room); // nothing is measured below nothing
    const double width = to + room - start;
    const auto share = [&](double value) { return static_cast<float>((value - start) / width); };
    return {share(reading.low), share(reading.high), share(reading.value_si)};
}

LogView make_log_view(const AppState& state) {
    LogView view;
    if (!state.log) {
        return view;
    }
    const Record& record = *state.log;
    const Story& story = state.log_page.story;
    view.title = story.title + ", build " + std::to_string(state.log_shelf.number);
    view.finished = record.finished;
    view.changed = !record.changes.empty();
    view.subtitle = story.started;
    if (!story.ended.empty()) {
        view.subtitle += " to ";
        view.subtitle += story.ended;
    }
    view.subtitle += ". Made with ";
    view.subtitle += story.made_with;
    view.subtitle += ".";
    if (!record.maker.empty()) {
        view.subtitle += " Maker: ";
        view.subtitle += record.maker;
        view.subtitle += ".";
    }
    if (story.walked) {
        view.subtitle += " A walk without hands: its figures are simulated.";
    }
    if (record.finished) {
        view.badge = record.outcome.empty() ? "Finished" : record.outcome;
        view.badge_line = "finished in " + spoken_span(story.worked_s);
    } else if (record.abandoned) {
        view.badge = "Put away";
        view.badge_line = "after " + spoken_span(story.worked_s);
    } else {
        view.badge = "Step " + std::to_string(std::min(record.step, kStepCount)) + " of 7";
        view.badge_line = "not finished yet";
    }
    for (const StoryStep& step : story.steps) {
        view.rows.push_back(row_of(step));
    }
    add_lines(story, view.as_built);
    for (const ShelfBuild& build : state.builds) {
        if (build.card_name == state.log_shelf.card_name && build.trouble.empty()) {
            LogView::Other other;
            other.number = std::to_string(build.number);
            other.when = short_date(build.started_s);
            other.when += ", ";
            other.when += spoken_clock(build.started_s);
            other.state = build.finished ? "finished" : "at step " + std::to_string(build.step);
            other.journal = build.path;
            other.finished = build.finished;
            other.chosen = build.path == state.log_shelf.path;
            for (const BuildDigest& digest : state.log_page.figures.digests) {
                if (digest.journal == build.path) {
                    other.time = digest.time;
                    other.put_right = digest.put_right == "none" ? "" : digest.put_right;
                    other.state = digest.outcome.empty() ? other.state : digest.outcome;
                }
            }
            view.others.push_back(std::move(other));
        }
    }
    return view;
}

LogStepView make_log_step_view(const AppState& state, int number) {
    LogStepView view;
    const Story& story = state.log_page.story;
    if (number < 1 || number > static_cast<int>(story.steps.size())) {
        return view;
    }
    const StoryStep& step = story.steps[static_cast<std::size_t>(number - 1)];
    view.title = std::to_string(number) + " " + step.title;
    view.state = step.state_text;
    if (!view.state.empty() && view.state[0] >= 'a' && view.state[0] <= 'z') {
        view.state[0] = static_cast<char>(view.state[0] - 'a' + 'A');
    }
    view.state += ".";
    if (step.time.worked_s > 0 || step.time.pauses > 0) {
        view.state += ' ';
        view.state += with_pauses(spoken_span(step.time.worked_s), step.time);
        view.state += '.';
    }
    view.verdict = step.verdict;
    std::int64_t longest_s = 1;
    for (const StoryMove& move : step.moves) {
        longest_s = std::max(longest_s, move.worked_s);
    }
    longest_s = std::max(longest_s, step.time.proving_s);
    const auto add_time = [&](const std::string& title, std::int64_t seconds) {
        view.moves.push_back(
            {title, spoken_span(seconds), static_cast<float>(seconds) / static_cast<float>(longest_s)});
    };
    for (const StoryMove& move : step.moves) {
        add_time(move.title, move.worked_s);
    }
    if (step.time.proving_s > 0) {
        add_time("Proving the step", step.time.proving_s);
    }
    for (const StoryReading& reading : step.readings) {
        LogStepView::ReadingRow row;
        row.title = reading.title;
        row.value = reading.value;
        if (!reading.expected.empty()) {
            row.expected = "expected ";
            row.expected += reading.expected;
        }
        if (reading.simulated) {
            row.expected += row.expected.empty() ? "simulated" : "; simulated";
        }
        row.fits = reading.fits;
        row.has_range = reading.has_number && reading.high > 0;
        row.range = range_shares(reading);
        view.readings.push_back(std::move(row));
    }
    const std::size_t changed = step.changes.size() - step.mended;
    for (std::size_t i = 0; i < step.changes.size(); ++i) {
        view.lines.push_back({i < changed ? LogLineKind::change : LogLineKind::mend, step.changes[i] + "."});
    }
    return view;
}

} // namespace lanternleaf
