#include "batch/progress.h"

#include "history/timeline.h"
#include "record/glance.h"
#include "record/journal.h"

#include <algorithm>

namespace lanternleaf {

namespace {

struct Marks {
    std::array<bool, kStepCount> proved{};
    std::array<bool, kStepCount> regardless{};
    std::array<bool, kStepCount> failed{}; ///< stopped or passed regardless at any time
};

// The rules are those of apply_event() in record/record.h.
void take_into(BuildProgress& out, Marks& marks, const Event& event) {
    if (event.kind == EventKind::cell_in || event.kind == EventKind::cell_out) {
        out.cell_in = event.kind == EventKind::cell_in;
    }
    if (event.step < 1 || event.step > kStepCount) {
        return;
    }
    const auto i = static_cast<std::size_t>(event.step - 1);
    if (event.kind == EventKind::verdict) {
        marks.proved[i] = event.state == VerdictState::proved;
        marks.failed[i] = marks.failed[i] || !marks.proved[i];
    } else if (event.kind == EventKind::regardless) {
        marks.regardless[i] = true;
        marks.failed[i] = true;
    } else if (event.kind == EventKind::step_opened) {
        marks.proved[i] = false;
        marks.regardless[i] = false;
    }
}

} // namespace

Outcome<BuildProgress> progress_of(const std::string& text, const std::string& file) {
    const Outcome<Glance> glance = glance_at(text, file);
    if (!glance) {
        return glance.problem();
    }
    const Outcome<std::vector<Event>> events = read_journal(text, file);
    if (!events) {
        return events.problem();
    }
    BuildProgress out;
    out.id = glance.value().id;
    out.batch = glance.value().batch;
    out.maker = glance.value().maker;
    out.started_s = glance.value().started_s;
    out.last_s = glance.value().last_s;
    out.step = glance.value().step;
    out.stopped_s = glance.value().stopped_s;
    out.finished = glance.value().finished;
    out.abandoned = glance.value().abandoned;
    Marks marks;
    for (const Event& event : events.value()) {
        take_into(out, marks, event);
    }
    const Timeline times = timeline_of(events.value());
    for (std::size_t i = 0; i < times.size(); ++i) {
        out.steps[i].worked_s = times[i].worked_s;
        out.steps[i].closed = marks.proved[i] || marks.regardless[i];
        out.steps[i].regardless = marks.regardless[i] && !marks.proved[i];
        out.steps[i].first_pass = marks.proved[i] && !marks.failed[i];
    }
    return out;
}

std::int64_t worked_in_all_s(const BuildProgress& build) {
    std::int64_t sum = 0;
    for (const StepProgress& step : build.steps) {
        sum += step.worked_s;
    }
    return sum;
}

bool passed_first_time(const BuildProgress& build) {
    return build.finished && std::all_of(build.steps.begin(), build.steps.end(),
                                         [](const StepProgress& step) { return step.first_pass; });
}

} // namespace lanternleaf
