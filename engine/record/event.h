// Event: one line of a build's journal. The record is the fold of its journal, so an event holds everything
// needed to replay it; nothing about a build is kept anywhere else.
#pragma once

#include "guide/change.h"
#include "guide/verdict.h"

#include <cstdint>
#include <string>

namespace lanternleaf {

enum class EventKind {
    started,     ///< text = build id; card = the card file's text; audience
    audience,    ///< text = "adults", ...: who will have this card
    move_done,   ///< step, text = move id
    move_undone, ///< step, text = move id
    reading,     ///< step, reading
    change,      ///< step, change
    verdict,     ///< step, verdict state and sentence
    regardless,  ///< step: the maker goes on although it is not proved; text = why, may be empty
    adult,       ///< an adult confirmed the coin-cell notice
    cell_in,
    cell_out,
    note,        ///< text
    step_opened, ///< step
    finished,    ///< text = outcome
    abandoned,
};

struct Event {
    EventKind kind = EventKind::note;
    std::int64_t at_s = 0; ///< seconds since 1970, UTC, from the caller's clock
    int step = 0;          ///< 1..7, 0 when it belongs to none
    std::string text;
    std::string card; ///< started: the card file as JSON text
    Change change;
    Reading reading;
    VerdictState state = VerdictState::proved;
};

[[nodiscard]] const char* name_of(EventKind kind); ///< "move-done"

} // namespace lanternleaf
