// Event: one line of a build's journal. The record is the fold of its journal, so an event holds everything
// needed to replay it; nothing about a build is kept anywhere else.
#pragma once

#include "guide/change.h"
#include "guide/verdict.h"

#include <cstdint>
#include <string>

namespace lanternleaf {

enum class EventKind {
    started,     ///< text = build id; card = the card file's text; walked
    audience,    ///< text = "adults", ...: who will have this card
    move_done,   ///< step, text = move id
    move_undone, ///< step, text = move id
    reading,     ///< step, reading
    change,      ///< step, change
    verdict,     ///< step, verdict state and sentence (text)
    regardless,  ///< step: the maker goes on although it is not proved; text = why, may be empty
    adult,       ///< an adult confirmed the coin-cell notice
    cell_in,
    cell_out,
    note,        ///< text
    step_opened, ///< step
    finished,    ///< text = outcome
    abandoned,   ///< text = why, may be empty
    mend_told,   ///< text = one thing seen, tried or measured in Mend (mend/told.h), kTakenBack or kToldAgain
    mended,      ///< text = what was wrong, in words; fault = its kinds
    photo,       ///< photo = the picture's file in the build's own folder; text = caption, may be empty
    photo_removed, ///< photo
    learnt,        ///< parts = what the maker measured of a part while building; text = in words
};
inline constexpr int kEventKindCount = 20;

/// What a mend_told event says instead of something seen: the last one is unsaid; all are.
inline constexpr const char* kTakenBack = "taken back";
inline constexpr const char* kToldAgain = "from the beginning";

struct Event {
    EventKind kind = EventKind::note;
    std::int64_t at_s = 0; ///< seconds since 1970, UTC, from the caller's clock
    int step = 0;          ///< 1..7, 0 when it belongs to none
    std::string text;
    std::string fault; ///< mended: the kinds of fault, "led-turned", two with a blank between
    std::string photo; ///< photo, photo_removed: a file's name, see is_photo_name
    std::string card;  ///< started: the card file as JSON text
    std::string parts; ///< learnt: a parts file as JSON text
    std::string batch; ///< started: the id of the batch it belongs to; empty: none
    std::string maker; ///< started: the nickname of who makes it; empty: not told
    Change change;
    Reading reading;
    VerdictState state = VerdictState::proved;
    bool walked = false; ///< started: no hands; the engine walked through the card (see record/walk.h)
};

[[nodiscard]] const char* name_of(EventKind kind); ///< "move-done"
/// From the name in a file; false when unknown.
[[nodiscard]] bool event_kind_from(const std::string& name, EventKind& out);
[[nodiscard]] const char* name_of(VerdictState state); ///< "proved", "stopped"

/// An audience by its name in files, "small-children"; false when unknown.
[[nodiscard]] bool audience_from(const std::string& name, Audience& out);

/// Whether a name may stand for a photo's file: 1 to 60 small letters, digits, dashes and dots, not opening
/// or ending with a dot, no two dots together. A journal may come from anywhere: nothing else can lead out of
/// the build's folder.
[[nodiscard]] bool is_photo_name(const std::string& name);

/// A new event with its kind, time and step set; the rest is for the caller to fill in.
[[nodiscard]] Event event_at(std::int64_t at_s, EventKind kind, int step = 0, std::string text = {});

} // namespace lanternleaf
