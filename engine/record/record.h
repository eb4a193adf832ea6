// Record: one making of a card, as the fold of its journal. Pure: no files here (see journal.h).
#pragma once

#include "base/outcome.h"
#include "record/event.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// How the real thing differs, when it was said and while which step was open (0: none named).
struct ChangeMade {
    Change change;
    int step = 0;
    std::int64_t at_s = 0;
};

/// A fault that was found and put right.
struct MendMade {
    std::string fault; ///< its kinds, "led-turned"; two at once with a blank between
    std::string text;  ///< in words
    int step = 0;
    std::int64_t at_s = 0;
};

/// A picture of this build; its file lies in the build's own folder, beside the journal.
struct PhotoTaken {
    std::string file; ///< "photo-1.jpg"
    std::string caption;
    int step = 0; ///< 0: none named
    std::int64_t at_s = 0;
};

struct StepRecord {
    bool opened = false;
    bool proved = false;
    bool regardless = false; ///< the maker went on although it was not proved; stays when it is proved later
    std::string regardless_why;
    std::string verdict;                 ///< last sentence
    int stops = 0;                       ///< how often the verdict was 'stopped': 0 is passed first time
    std::vector<std::string> moves_done; ///< ids, in the order done
    std::vector<Reading> readings;       ///< the last one taken for each check, in the order first taken
    std::int64_t opened_s = 0;
    std::int64_t closed_s = 0;

    [[nodiscard]] bool closed() const { return proved || regardless; }
};

struct Record {
    std::string id;
    std::string title;
    std::string batch; ///< the batch it belongs to; empty: none
    std::string maker; ///< nickname; empty: not told
    std::int64_t started_s = 0;
    std::int64_t finished_s = 0; ///< when it was finished or abandoned
    bool finished = false;
    bool abandoned = false;
    bool walked = false; ///< no hands: the engine walked through the card
    std::string outcome; ///< what the finish, or why the build was abandoned
    Audience audience = Audience::small_children;
    bool audience_asked = false;
    bool adult_confirmed = false;
    bool cell_in = false;
    Card card;     ///< as planned
    Card as_built; ///< with every change applied
    std::vector<ChangeMade> changes;
    std::vector<std::string> notes;
    std::vector<MendMade> mends;
    std::vector<PhotoTaken> photos; ///< without those removed
    /// What was told in Mend about the card as it is now, oldest first (mend/told.h). A change, a proof or a
    /// mending ends it: after that it would speak of another card.
    std::vector<std::string> mend_told;
    StepRecord steps[kStepCount];
    int step = 1; ///< the first that is not closed: the one that is open now, 1..7; 8 once all are closed
    int event_count = 0;

    [[nodiscard]] StepRecord& at(StepId step_id) { return steps[static_cast<int>(step_id) - 1]; }

    [[nodiscard]] const StepRecord& at(StepId step_id) const { return steps[static_cast<int>(step_id) - 1]; }
};

/// How many of the seven steps are proved.
[[nodiscard]] int proved_count(const Record& record);

/// One event onto a record. A Problem names what cannot be (a change to a part that is not there); the record
/// is then unchanged. What closes and opens steps:
/// - a verdict 'proved' closes its step, and the first step that is not closed is then open;
/// - 'regardless' closes a step that is not proved;
/// - a verdict 'stopped' opens a proved step again, and step_opened opens any closed one again (going back).
/// Moves, readings and verdicts belong to steps that are or were open. After 'finished' only changes,
/// readings, verdicts, notes, photos and the cell's coming and going are taken; an abandoned build goes on
/// with step_opened.
[[nodiscard]] Outcome<Done> apply_event(Record& record, const Parts& parts, const Event& event);
/// `parts` are the shipped ones; the card's own are laid over them. The first event must be 'started'.
[[nodiscard]] Outcome<Record> fold(const std::vector<Event>& events, const Parts& parts);

/// The record as the JSON document that assets/schema/record.schema.json describes.
[[nodiscard]] std::string write_record(const Record& record, const Parts& parts);

} // namespace lanternleaf
