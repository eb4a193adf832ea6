// Walk: a whole build without hands or window: every step's moves, readings and verdict, as the events of a
// journal. Exists so that a card can be proved before anyone cuts tape, and so that a build can be replayed
// with its mistakes. What no script gives is simulated on the card as built, and every such reading says so.
#pragma once

#include "record/record.h"
#include "record/script.h"
#include "words/words.h"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace lanternleaf {

/// How one step went. `verdict` and `readings` are those of its last judging.
struct StepWalk {
    StepId step = StepId::mount_holder;
    VerdictState state = VerdictState::proved;
    std::string sentence;
    int moves = 0;
    int stops = 0; ///< judgings that stopped it
    bool regardless = false;
    std::vector<Reading> readings;
    std::vector<ReadingVerdict> fits; ///< one per reading
    std::vector<Finding> findings;
    std::vector<std::string> to_do;
};

struct Walk {
    std::vector<Event> events;
    Record record;
    std::vector<StepWalk> steps; ///< up to and with the one it stopped at

    [[nodiscard]] bool all_proved() const { return proved_count(record) == kStepCount; }
};

[[nodiscard]] const char* name_of(ReadingFit fit); ///< "as-expected", "off", "unreadable"

/// The steps' sentences are in `words`; events and record are English, as files are. Nothing is written: the
/// caller puts the events into a journal. `parts` are the card's own laid over the shipped. A Problem when
/// the script names a part, check or LED that the card has not got.
[[nodiscard]] Outcome<Walk> walk_build(const Card& card, const Parts& parts, const BuildScript& script,
                                       const std::string& id, const std::function<std::int64_t()>& now_s,
                                       const Words& words = english());

} // namespace lanternleaf
