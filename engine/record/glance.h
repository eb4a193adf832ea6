// Glance: what a list of builds shows of a journal, without folding it. Exists because a library may hold ten
// thousand builds: a fold reads a card and derives it again for each, a glance only walks over the lines.
#pragma once

#include "base/outcome.h"

#include <cstdint>
#include <string>

namespace lanternleaf {

struct Glance {
    std::string id;
    std::string title; ///< of the card
    std::string batch; ///< the batch it belongs to; empty: none
    std::string maker; ///< nickname; empty: none
    std::int64_t started_s = 0;
    std::int64_t last_s = 0; ///< the last event
    int step = 1;            ///< as Record::step: 8 once all are closed
    bool finished = false;
    bool abandoned = false;
    bool stopped = false;       ///< the last verdict on the open step was 'stopped'
    std::int64_t stopped_s = 0; ///< since when
    int stops = 0;              ///< how often any step was stopped
    int events = 0;
};

/// The same steps and state as fold() gives for a journal that folds. Lines are taken as this program writes
/// them; a journal in another form of JSON, or not in order, is read event by event. A Problem for what is
/// not a journal. A text without a whole line gives a glance with no events.
[[nodiscard]] Outcome<Glance> glance_at(const std::string& text, const std::string& file);

} // namespace lanternleaf
