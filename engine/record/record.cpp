#include "record/record.h"

#include "cardfile/cardfile.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace lanternleaf {

namespace {

Problem cannot(const Event& event, const std::string& why) {
    return {"", std::string("event ") + name_of(event.kind), why};
}

bool step_in_range(const Event& event) {
    return event.step >= 1 && event.step <= kStepCount;
}

// A step that is open now or was open once.
bool step_reached(const Record& record, int step) {
    return step <= record.step || record.steps[step - 1].opened;
}

// Sets Record::step to the first step that is not closed, and opens it.
void open_first_unclosed(Record& record, std::int64_t at_s) {
    record.step = 1;
    while (record.step <= kStepCount && record.steps[record.step - 1].closed()) {
        ++record.step;
    }
    if (record.step <= kStepCount && !record.steps[record.step - 1].opened) {
        record.steps[record.step - 1].opened = true;
        record.steps[record.step - 1].opened_s = at_s;
    }
}

Outcome<Done> start(Record& record, const Parts& parts, const Event& event) {
    if (record.event_count != 0) {
        return cannot(event, "expected once, as the first event of a build");
    }
    if (event.text.empty()) {
        return cannot(event, "expected the build's id");
    }
    Outcome<Card> card = read_card(event.card, "the card in the build", parts);
    if (!card) {
        return card.problem();
    }
    record.id = event.text;
    record.batch = event.batch;
    record.maker = event.maker;
    record.started_s = event.at_s;
    record.walked = event.walked;
    record.card = std::move(card).value();
    record.as_built = record.card;
    record.title = record.card.title;
    record.audience = record.card.audience;
    open_first_unclosed(record, event.at_s);
    return Done{};
}

Outcome<Done> set_audience(Record& record, const Event& event) {
    Audience audience = record.audience;
    if (!audience_from(event.text, audience)) {
        return cannot(event, "expected adults, children, small-children, class or sale; found " + event.text);
    }
    record.audience = audience;
    record.audience_asked = true;
    // The findings about who can reach the cell follow the answer.
    record.as_built.audience = audience;
    record.as_built.audience_given = true;
    return Done{};
}

Outcome<Done> move(Record& record, const Event& event) {
    if (!step_in_range(event) || !step_reached(record, event.step)) {
        return cannot(event, "step " + std::to_string(event.step) + " is not open yet");
    }
    std::vector<std::string>& done = record.steps[event.step - 1].moves_done;
    const auto found = std::find(done.begin(), done.end(), event.text);
    if (event.kind == EventKind::move_done) {
        if (event.text.empty()) {
            return cannot(event, "expected a move's id");
        }
        if (found == done.end()) { // said twice, it is still done once
            done.push_back(event.text);
        }
        return Done{};
    }
    if (found == done.end()) {
        return cannot(event, "the move " + event.text + " is not done");
    }
    done.erase(found);
    return Done{};
}

Outcome<Done> take_reading(Record& record, const Event& event) {
    if (!step_in_range(event) || !step_reached(record, event.step)) {
        return cannot(event, "step " + std::to_string(event.step) + " is not open yet");
    }
    if (event.reading.check.empty()) {
        return cannot(event, "expected the check it answers");
    }
    if (event.reading.value && !std::isfinite(*event.reading.value)) {
        return cannot(event, "expected a number");
    }
    std::vector<Reading>& readings = record.steps[event.step - 1].readings;
    const auto same = std::find_if(readings.begin(), readings.end(),
                                   [&](const Reading& taken) { return taken.check == event.reading.check; });
    if (same == readings.end()) {
        readings.push_back(event.reading);
    } else {
        *same = event.reading; // measured again: the last one counts
    }
    return Done{};
}

Outcome<Done> change(Record& record, const Parts& parts, const Event& event) {
    if (!std::isfinite(event.change.at_mm.x) || !std::isfinite(event.change.at_mm.y) ||
        !std::isfinite(event.change.mm)) {
        return cannot(event, "expected numbers");
    }
    Outcome<Card> built =
        apply_change(record.as_built, merged(parts, record.as_built.own_parts), event.change);
    if (!built) {
        return built.problem();
    }
    record.as_built = std::move(built).value();
    record.mend_told.clear();
    record.changes.push_back({event.change, event.step, event.at_s});
    return Done{};
}

Outcome<Done> judge(Record& record, const Event& event) {
    if (!step_in_range(event) || !step_reached(record, event.step)) {
        return cannot(event, "step " + std::to_string(event.step) + " is not open yet");
    }
    StepRecord& step = record.steps[event.step - 1];
    step.verdict = event.text;
    if (event.state == VerdictState::stopped) {
        ++step.stops;
        step.proved = false;
    } else {
        step.proved = true;
        record.mend_told.clear();
    }
    step.closed_s = !step.closed() ? 0 : step.closed_s != 0 ? step.closed_s : event.at_s;
    open_first_unclosed(record, event.at_s);
    return Done{};
}

Outcome<Done> go_on(Record& record, const Event& event) {
    if (!step_in_range(event) || !step_reached(record, event.step)) {
        return cannot(event, "step " + std::to_string(event.step) + " is not open yet");
    }
    StepRecord& step = record.steps[event.step - 1];
    if (step.proved) {
        return cannot(event, "step " + std::to_string(event.step) + " is proved already");
    }
    step.regardless = true;
    step.regardless_why = event.text;
    step.closed_s = event.at_s;
    open_first_unclosed(record, event.at_s);
    return Done{};
}

Outcome<Done> open_step(Record& record, const Event& event) {
    if (!step_in_range(event) || !step_reached(record, event.step)) {
        return cannot(event, "step " + std::to_string(event.step) +
                                 " cannot open before the one before it is closed");
    }
    StepRecord& step = record.steps[event.step - 1];
    if (step.closed()) { // going back to it
        step.proved = false;
        step.regardless = false;
        step.closed_s = 0;
    } else if (step.moves_done.empty() && step.readings.empty()) {
        step.opened_s = event.at_s; // nothing was done yet: the time at the table starts now
    }
    record.abandoned = false;
    record.finished_s = 0;
    open_first_unclosed(record, event.at_s);
    return Done{};
}

Outcome<Done> end(Record& record, const Event& event) {
    if (event.kind == EventKind::finished) {
        if (record.step <= kStepCount) {
            return cannot(event, "step " + std::to_string(record.step) + " is still open");
        }
        record.finished = true;
    } else {
        record.abandoned = true;
    }
    record.outcome = event.text;
    record.finished_s = event.at_s;
    return Done{};
}

Outcome<Done> mend_told(Record& record, const Event& event) {
    if (event.text.empty()) {
        return cannot(event, "expected what was seen, tried or measured");
    }
    if (event.text == kToldAgain) {
        record.mend_told.clear();
    } else if (event.text != kTakenBack) {
        record.mend_told.push_back(event.text);
    } else if (!record.mend_told.empty()) {
        record.mend_told.pop_back();
    }
    return Done{};
}

Outcome<Done> mended(Record& record, const Event& event) {
    if (event.text.empty() || event.fault.empty()) {
        return cannot(event, "expected what was wrong");
    }
    record.mends.push_back({event.fault, event.text, event.step, event.at_s});
    record.notes.push_back("Mended: " + event.text + ".");
    record.mend_told.clear();
    return Done{};
}

// Of the card as it is on this table: planned and built are of the same roll and the same bag.
Outcome<Done> learnt(Record& record, const Parts& parts, const Event& event) {
    if (event.text.empty()) {
        return cannot(event, "expected what was learnt");
    }
    const Outcome<Parts> own =
        read_own_parts(event.parts, "the parts in the build", merged(parts, record.card.own_parts));
    if (!own) {
        return own.problem();
    }
    record.card.own_parts = merged(record.card.own_parts, own.value());
    record.as_built.own_parts = merged(record.as_built.own_parts, own.value());
    if (record.as_built.foam && !own.value().foams.empty()) {
        // What is on the table is what pads this card: the height window of step 7 follows.
        record.as_built.foam->thickness_mm = own.value().foams.begin()->second.thickness_mm;
    }
    record.notes.push_back(event.text);
    record.mend_told.clear();
    return Done{};
}

auto find_photo(Record& record, const std::string& file) {
    return std::find_if(record.photos.begin(), record.photos.end(),
                        [&](const PhotoTaken& taken) { return taken.file == file; });
}

Outcome<Done> photo(Record& record, const Event& event) {
    if (!is_photo_name(event.photo)) {
        return cannot(event, "expected the name of a picture in the build's folder");
    }
    const auto there = find_photo(record, event.photo);
    if (event.kind == EventKind::photo_removed) {
        if (there == record.photos.end()) {
            return cannot(event, "the picture " + event.photo + " is not in the record");
        }
        record.photos.erase(there);
        return Done{};
    }
    if (there != record.photos.end()) {
        return cannot(event, "the picture " + event.photo + " is in the record already");
    }
    record.photos.push_back({event.photo, event.text, event.step, event.at_s});
    return Done{};
}

bool allowed_after_end(EventKind kind) {
    switch (kind) {
    case EventKind::reading:
    case EventKind::change:
    case EventKind::verdict:
    case EventKind::adult:
    case EventKind::cell_in:
    case EventKind::cell_out:
    case EventKind::note:
    case EventKind::audience:
    case EventKind::mend_told:
    case EventKind::mended:
    case EventKind::photo:
    case EventKind::photo_removed:
    case EventKind::learnt:
        return true;
    default:
        return false;
    }
}

Outcome<Done> apply(Record& record, const Parts& parts, const Event& event) {
    switch (event.kind) {
    case EventKind::started:
        return start(record, parts, event);
    case EventKind::audience:
        return set_audience(record, event);
    case EventKind::move_done:
    case EventKind::move_undone:
        return move(record, event);
    case EventKind::reading:
        return take_reading(record, event);
    case EventKind::change:
        return change(record, parts, event);
    case EventKind::verdict:
        return judge(record, event);
    case EventKind::regardless:
        return go_on(record, event);
    case EventKind::step_opened:
        return open_step(record, event);
    case EventKind::finished:
    case EventKind::abandoned:
        return end(record, event);
    case EventKind::adult:
        record.adult_confirmed = true;
        return Done{};
    case EventKind::cell_in:
        record.cell_in = true;
        return Done{};
    case EventKind::cell_out:
        record.cell_in = false;
        return Done{};
    case EventKind::note:
        record.notes.push_back(event.text);
        return Done{};
    case EventKind::mend_told:
        return mend_told(record, event);
    case EventKind::mended:
        return mended(record, event);
    case EventKind::photo:
    case EventKind::photo_removed:
        return photo(record, event);
    case EventKind::learnt:
        return learnt(record, parts, event);
    }
    return Done{};
}

} // namespace

int proved_count(const Record& record) {
    return static_cast<int>(std::count_if(std::begin(record.steps), std::end(record.steps),
                                          [](const StepRecord& step) { return step.proved; }));
}

Outcome<Done> apply_event(Record& record, const Parts& parts, const Event& event) {
    if (record.event_count == 0 && event.kind != EventKind::started) {
        return cannot(event, "expected a build to begin with the event started");
    }
    const bool taken_up = record.abandoned && !record.finished && event.kind == EventKind::step_opened;
    if ((record.finished || record.abandoned) && !taken_up && !allowed_after_end(event.kind)) {
        return cannot(event, record.finished ? "the build is finished"
                                             : "the build was put away; open a step first");
    }
    Outcome<Done> done = apply(record, parts, event);
    if (done) {
        ++record.event_count;
    }
    return done;
}

Outcome<Record> fold(const std::vector<Event>& events, const Parts& parts) {
    if (events.empty()) {
        return Problem{"", "", "expected a build to begin with the event started; there is none"};
    }
    Record record;
    int number = 0;
    for (const Event& event : events) {
        ++number;
        if (Outcome<Done> done = apply_event(record, parts, event); !done) {
            Problem problem = done.problem();
            problem.place =
                "line " + std::to_string(number) + (problem.place.empty() ? "" : ", " + problem.place);
            return problem;
        }
    }
    return record;
}

} // namespace lanternleaf
