#include "history/figures.h"

#include "sheets/shopping.h"

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace lanternleaf {

// A plain value of fixed size holds no build: memory stays flat whatever the library's size.
static_assert(std::is_trivially_copyable_v<FigureCount>);

namespace {

bool all_at_first(const Record& record) {
    return std::all_of(std::begin(record.steps), std::end(record.steps), [](const StepRecord& step) {
        return step.proved && !step.regardless && step.stops == 0;
    });
}

} // namespace

void SpanCount::add(std::int64_t seconds) {
    const double s = static_cast<double>(std::max<std::int64_t>(seconds, 1));
    const int bucket = std::clamp(static_cast<int>(std::log(s) / std::log(kRatio)), 0, kBuckets - 1);
    ++buckets_[static_cast<std::size_t>(bucket)];
    ++count_;
}

std::int64_t SpanCount::median_s() const {
    if (count_ == 0) {
        return 0;
    }
    std::uint32_t below = (count_ - 1) / 2;
    for (int i = 0; i < kBuckets; ++i) {
        const std::uint32_t here = buckets_[static_cast<std::size_t>(i)];
        if (below < here) {
            return static_cast<std::int64_t>(std::llround(std::pow(kRatio, i + 0.5)));
        }
        below -= here;
    }
    return 0;
}

double first_pass_share(const StepFigures& step) {
    return step.reached == 0 ? 0.0 : static_cast<double>(step.first_pass) / step.reached;
}

double tape_length_mm(const Card& card, const Parts& parts) {
    double sum_mm = 0.0;
    for (const StripCut& cut : shopping(card, parts, 1, SpareRules{}).cuts) {
        sum_mm += cut.length_mm;
    }
    return sum_mm;
}

void FigureCount::take(const Record& record, const std::vector<Event>& events, const Parts& shipped) {
    if (record.walked) { // nobody's hands were at work
        ++sum_.walks;
        return;
    }
    ++sum_.builds;
    const Timeline timeline = timeline_of(events);
    for (std::size_t i = 0; i < static_cast<std::size_t>(kStepCount); ++i) {
        const StepRecord& step = record.steps[i];
        StepFigures& figures = sum_.steps[i];
        figures.stops += step.stops;
        if (!step.closed() && step.stops == 0) {
            continue;
        }
        ++figures.reached;
        if (step.proved && !step.regardless && step.stops == 0) {
            ++figures.first_pass;
        }
        if (step.closed()) {
            spans_[i].add(timeline[i].worked_s);
        }
    }
    if (!record.finished) {
        return;
    }
    ++sum_.finished;
    sum_.first_pass += all_at_first(record) ? 1 : 0;
    whole_.add(worked_s(timeline));
    const Parts parts = merged(shipped, record.card.own_parts);
    sum_.planned_tape_mm += tape_length_mm(record.card, parts);
    sum_.used_tape_mm += tape_length_mm(record.as_built, parts);
}

LibraryFigures FigureCount::figures() const {
    LibraryFigures figures = sum_;
    figures.median_build_s = whole_.median_s();
    double lowest = 1.0;
    for (std::size_t i = 0; i < figures.steps.size(); ++i) {
        figures.steps[i].median_s = spans_[i].median_s();
        const double share = first_pass_share(figures.steps[i]);
        if (figures.steps[i].reached > 0 && share < lowest) {
            lowest = share;
            figures.hardest_step = static_cast<int>(i) + 1;
        }
    }
    return figures;
}

} // namespace lanternleaf
