#include "view/log_view.h"

#include "model/update_batch.h"
#include "view/part_words.h"

#include <algorithm>

namespace lanternleaf {

namespace {

LogRow row_of(const StoryStep& step, const Words& words) {
    LogRow row;
    row.step = step.number;
    row.title = std::to_string(step.number) + " " + step.title;
    row.state = step.state;
    row.stops = step.stops;
    if (step.state == StepState::proved || step.state == StepState::regardless) {
        row.time = spoken_span(step.time.worked_s);
    }
    row.reading = step.state == StepState::waiting ? std::string() : words("log_view.not_measured");
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
    row.measured = !row.reading.empty() && (step.shown_reading >= 0 || step.state == StepState::regardless);
    row.spoken = row.title;
    for (const std::string& part : {step.state_text, row.time, row.reading}) {
        if (!part.empty()) {
            row.spoken += ", ";
            row.spoken += part;
        }
    }
    return row;
}

void add_lines(const Story& story, std::vector<LogLine>& out, const Words& words) {
    for (const std::string& change : story.changes) {
        out.push_back({LogLineKind::change, change});
    }
    for (const std::string& mend : story.mends) {
        out.push_back({LogLineKind::mend, mend});
    }
    if (out.empty()) {
        out.push_back({LogLineKind::plain, words("log_view.as_planned")});
    }
    for (const std::string& note : story.notes) {
        out.push_back({LogLineKind::note, note});
    }
}

std::string worked_text(const StepTime& time, const Words& words) {
    const std::string worked = spoken_span(time.worked_s);
    if (time.pauses == 0) {
        return worked;
    }
    return words("log_view.with_pauses",
                 {{"worked", worked}, {"paused", spoken_span(time.paused_s)}, {"n", time.pauses}});
}

std::string subtitle_of(const Record& record, const Story& story, const std::string& maker,
                        const Words& words) {
    std::string text =
        story.ended.empty()
            ? words("log_view.since", {{"started", story.started}, {"tape", story.made_with}})
            : words("log_view.from_to",
                    {{"started", story.started}, {"ended", story.ended}, {"tape", story.made_with}});
    if (!record.maker.empty()) {
        text += ' ';
        text += words("log_view.maker", {{"name", maker}});
    }
    if (story.walked) {
        text += ' ';
        text += words("log_view.walked");
    }
    return text;
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

LogView make_log_view(const AppState& state, const Words& words) {
    LogView view;
    if (!state.log) {
        return view;
    }
    const Record& record = *state.log;
    const Story& story = state.log_page.story;
    view.title = words("log_view.title", {{"card", story.title}, {"number", state.log_shelf.number}});
    view.finished = record.finished;
    view.changed = !record.changes.empty();
    view.subtitle = subtitle_of(record, story, maker_shown(state, state.log_shelf), words);
    if (record.finished) {
        view.badge = story.outcome.empty() ? words("log_view.finished") : story.outcome;
        view.badge_line = words("log_view.finished_in", {{"span", spoken_span(story.worked_s)}});
    } else if (record.abandoned) {
        view.badge = words("log_view.put_away");
        view.badge_line = words("log_view.after", {{"span", spoken_span(story.worked_s)}});
    } else {
        view.badge =
            words("log_view.step_of", {{"step", std::min(record.step, kStepCount)}, {"steps", kStepCount}});
        view.badge_line = words("log_view.not_finished");
    }
    for (const StoryStep& step : story.steps) {
        view.rows.push_back(row_of(step, words));
    }
    add_lines(story, view.as_built, words);
    for (const ShelfBuild& build : state.builds) {
        if (build.card_name == state.log_shelf.card_name && build.trouble.empty()) {
            LogView::Other other;
            other.number = std::to_string(build.number);
            other.when = short_day(build.started_s, words);
            other.when += ", ";
            other.when += spoken_clock(build.started_s);
            other.state = build.finished ? words("log_view.other_finished")
                                         : words("log_view.other_at_step", {{"step", build.step}});
            other.journal = build.path;
            other.finished = build.finished;
            other.chosen = build.path == state.log_shelf.path;
            for (const BuildDigest& digest : state.log_page.figures.digests) {
                if (digest.journal == build.path) {
                    other.time = digest.time;
                    other.put_right = digest.put_right;
                    other.state = digest.outcome.empty() ? other.state : digest.outcome;
                }
            }
            other.who = maker_shown(state, build);
            view.others.push_back(std::move(other));
        }
    }
    return view;
}

LogStepView make_log_step_view(const AppState& state, int number, const Words& words) {
    LogStepView view;
    const Story& story = state.log_page.story;
    if (number < 1 || number > static_cast<int>(story.steps.size())) {
        return view;
    }
    const StoryStep& step = story.steps[static_cast<std::size_t>(number - 1)];
    view.title = std::to_string(number) + " " + step.title;
    view.state = capital(step.state_text);
    view.state += ".";
    if (step.time.worked_s > 0 || step.time.pauses > 0) {
        view.state += ' ';
        view.state += worked_text(step.time, words);
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
        add_time(words("log_view.proving"), step.time.proving_s);
    }
    for (const StoryReading& reading : step.readings) {
        LogStepView::ReadingRow row;
        row.title = reading.title;
        row.value = reading.value;
        if (reading.expected.empty()) {
            row.expected = reading.simulated ? words("log_view.simulated") : "";
        } else {
            row.expected = words(reading.simulated ? "log_view.expected_simulated" : "log_view.expected",
                                 {{"expected", reading.expected}});
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
