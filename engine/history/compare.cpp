#include "history/compare.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace lanternleaf {

namespace {

const StoryReading* reading_of(const StoryStep& step, const std::string& check) {
    for (const StoryReading& reading : step.readings) {
        if (reading.check == check) {
            return &reading;
        }
    }
    return nullptr;
}

const StoryReading* shown_of(const StoryStep& step) {
    return step.shown_reading < 0 ? nullptr : &step.readings[static_cast<std::size_t>(step.shown_reading)];
}

// The reading to set side by side: a number that both took, else what each shows.
void choose_readings(const StoryStep& left, const StoryStep& right, const StoryReading*& a,
                     const StoryReading*& b) {
    a = shown_of(left);
    b = shown_of(right);
    const StoryReading* both = nullptr;
    for (const StoryReading& one : left.readings) {
        const StoryReading* other = reading_of(right, one.check);
        if (other == nullptr) {
            continue;
        }
        // The pair that is furthest apart is the one worth seeing.
        const bool off = one.fits != other->fits;
        if (both == nullptr || off || (one.has_number && other->has_number)) {
            both = &one;
        }
        if (off) {
            break;
        }
    }
    if (both != nullptr) {
        a = both;
        b = reading_of(right, both->check);
    }
}

StepSide side_of(const StoryStep& step, const StoryReading* reading, const Words& words) {
    StepSide side;
    side.outcome = step.state_text;
    side.worked_s = step.time.worked_s;
    if (step.state == StepState::proved || step.state == StepState::regardless) {
        side.time = spoken_span(step.time.worked_s);
    }
    side.reading = reading == nullptr ? words("history.not_measured") : reading->value;
    if (step.stops > 0) {
        side.stops = words("history.stops", {{"n", step.stops}});
    }
    side.changes = step.changes;
    return side;
}

bool times_differ(std::int64_t a, std::int64_t b) {
    const std::int64_t apart = std::abs(a - b);
    return apart > 60 && apart * 4 > std::max(a, b);
}

bool readings_differ(const StoryReading* a, const StoryReading* b) {
    if (a == nullptr || b == nullptr) {
        return a != b;
    }
    if (a->fits != b->fits) {
        return true;
    }
    if (!a->has_number || !b->has_number || a->check != b->check) {
        return false;
    }
    const double apart = std::abs(a->value_si - b->value_si);
    return apart > 0.1 + 1e-9 && apart * 4 > std::max(a->value_si, b->value_si);
}

std::string whole_outcome(const Story& story, const Words& words) {
    return words("history.outcome_in", {{"outcome", story.outcome.empty() ? story.state : story.outcome},
                                        {"span", spoken_span(story.worked_s)}});
}

std::string sum_up(const Comparison& rows, const Story& left, const Story& right,
                   const std::string& left_name, const std::string& right_name, const Words& words) {
    std::string text;
    if (times_differ(left.worked_s, right.worked_s)) {
        const bool left_longer = left.worked_s > right.worked_s;
        text =
            words("history.took_longer", {{"build", left_longer ? left_name : right_name},
                                          {"span", spoken_span(std::abs(left.worked_s - right.worked_s))}});
        text += ' ';
    }
    std::vector<std::string> steps;
    for (const StepCompared& step : rows.steps) {
        if (step.differs.any()) {
            steps.push_back(std::to_string(step.number));
        }
    }
    return text + (steps.empty()
                       ? words("history.no_step_differs")
                       : words("history.steps_differ", {{"n", steps.size()}, {"steps", words.list(steps)}}));
}

} // namespace

Comparison compare(const Story& left, const Story& right, const std::string& left_name,
                   const std::string& right_name, const Words& words) {
    Comparison rows;
    rows.left_outcome = whole_outcome(left, words);
    rows.right_outcome = whole_outcome(right, words);
    const std::size_t count = std::min(left.steps.size(), right.steps.size());
    for (std::size_t i = 0; i < count; ++i) {
        const StoryStep& a = left.steps[i];
        const StoryStep& b = right.steps[i];
        const StoryReading* reading_a = nullptr;
        const StoryReading* reading_b = nullptr;
        choose_readings(a, b, reading_a, reading_b);
        StepCompared row;
        row.number = a.number;
        row.title = a.title;
        if (reading_a != nullptr && reading_b != nullptr && reading_a->check == reading_b->check) {
            row.check = reading_a->title;
        }
        row.left = side_of(a, reading_a, words);
        row.right = side_of(b, reading_b, words);
        row.differs.time = !row.left.time.empty() && !row.right.time.empty() &&
                           times_differ(a.time.worked_s, b.time.worked_s);
        row.differs.reading = readings_differ(reading_a, reading_b);
        row.differs.stops = a.stops != b.stops;
        std::vector<std::string> ours = a.changes;
        std::vector<std::string> theirs = b.changes;
        std::sort(ours.begin(), ours.end());
        std::sort(theirs.begin(), theirs.end());
        row.differs.changes = ours != theirs;
        row.differs.outcome = a.state != b.state;
        rows.steps.push_back(std::move(row));
    }
    rows.summary = sum_up(rows, left, right, left_name, right_name, words);
    return rows;
}

} // namespace lanternleaf
