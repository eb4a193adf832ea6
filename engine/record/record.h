// Record: one making of a card, as the fold of its journal. Pure: no files here (see journal.h).
#pragma once

#include "base/outcome.h"
#include "record/event.h"

#include <set>

namespace lanternleaf {

struct StepRecord {
    bool opened = false;
    bool proved = false;
    bool regardless = false;
    std::string regardless_why;
    std::string verdict;                 ///< last sentence
    std::vector<std::string> moves_done; ///< ids, in the order done
    std::vector<Reading> readings;
    std::int64_t opened_s = 0;
    std::int64_t closed_s = 0;
};

struct Record {
    std::string id;
    std::string title;
    std::int64_t started_s = 0;
    std::int64_t finished_s = 0;
    bool finished = false;
    bool abandoned = false;
    std::string outcome;
    Audience audience = Audience::small_children;
    bool audience_asked = false;
    bool adult_confirmed = false;
    bool cell_in = false;
    Card card;     ///< as planned
    Card as_built; ///< with every change applied
    std::vector<Change> changes;
    std::vector<std::string> notes;
    StepRecord steps[kStepCount];
    int step = 1; ///< the one that is open now, 1..7; 8 once all are done
    int event_count = 0;

    [[nodiscard]] StepRecord& at(StepId step_id) { return steps[static_cast<int>(step_id) - 1]; }

    [[nodiscard]] const StepRecord& at(StepId step_id) const { return steps[static_cast<int>(step_id) - 1]; }
};

/// One event onto a record. A Problem names what cannot be (a change to a part that is not there); the record
/// is then unchanged.
[[nodiscard]] Outcome<Done> apply_event(Record& record, const Parts& parts, const Event& event);
[[nodiscard]] Outcome<Record> fold(const std::vector<Event>& events, const Parts& parts);

} // namespace lanternleaf
