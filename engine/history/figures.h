// Figures: what a whole library of builds says: which steps pass at first, how long they take, how much tape
// goes. Exists so that a maker sees where the craft is hard. Builds are taken one by one and forgotten: the
// counter is a plain value of fixed size, however many builds went through it.
#pragma once

#include "history/timeline.h"
#include "record/record.h"

#include <array>
#include <cstdint>

namespace lanternleaf {

/// Durations by size: bucket i holds from kFirst * kRatio^i seconds on. 2 % a bucket, so that a median read
/// from it is within 1 % (and half a second) of the true one; from 1 s to some 45 days.
class SpanCount {
public:
    void add(std::int64_t seconds);
    /// The middle of the bucket in which the middle value lies (the lower of two); 0 when nothing was added.
    [[nodiscard]] std::int64_t median_s() const;

    [[nodiscard]] std::uint32_t count() const { return count_; }

    static constexpr int kBuckets = 768;
    static constexpr double kRatio = 1.02;

private:
    std::array<std::uint32_t, kBuckets> buckets_{};
    std::uint32_t count_ = 0;
};

struct StepFigures {
    int reached = 0;    ///< builds in which it was closed or stopped
    int first_pass = 0; ///< proved, never stopped and never passed regardless
    int stops = 0;
    std::int64_t median_s = 0; ///< worked time of builds in which it is closed
};

struct LibraryFigures {
    int builds = 0; ///< taken by hands; walks are counted apart
    int walks = 0;
    int finished = 0;
    int first_pass = 0;              ///< finished ones with all seven steps passed at first
    std::int64_t median_build_s = 0; ///< of finished ones
    std::array<StepFigures, kStepCount> steps{};
    int hardest_step = 0;       ///< the one with the lowest share passed at first; 0 when none ever failed
    double planned_tape_mm = 0; ///< of finished builds: as the plans say
    double used_tape_mm = 0;    ///< and as the cards as built hold, bridges and cut laps included

    [[nodiscard]] double first_pass_share() const {
        return finished == 0 ? 0.0 : static_cast<double>(first_pass) / finished;
    }
};

/// A share 0..1 of a step; 0 when it was never reached.
[[nodiscard]] double first_pass_share(const StepFigures& step);

class FigureCount {
public:
    /// `events` are those the record is the fold of, `parts` the shipped ones.
    void take(const Record& record, const std::vector<Event>& events, const Parts& parts);
    [[nodiscard]] LibraryFigures figures() const;

private:
    LibraryFigures sum_;
    std::array<SpanCount, kStepCount> spans_{};
    SpanCount whole_;
};

/// Tape to cut for a card, all kinds together: centre lines and what is turned under (see sheets/shopping.h).
[[nodiscard]] double tape_length_mm(const Card& card, const Parts& parts);

} // namespace lanternleaf
