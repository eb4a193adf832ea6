// Story: a build's record as finished words and figures, step by step.
// Exists so that the screen, the printed record, the page for a screen reader and the table of readings tell
// the same build in the same words.
#pragma once

#include "history/timeline.h"
#include "record/record.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

enum class StepState { proved, regardless, open, waiting };

struct StoryReading {
    std::string check;       ///< Check::id
    std::string title;       ///< "flap to L3+"; the id when the card as built has no such check
    std::string value;       ///< "0.3 Ω", "OL", "7 of 7 lit", "as it should be"
    std::string expected;    ///< "0.1–0.6 Ω"
    std::string unit;        ///< "ohm", "V", "mm" for a number, else empty
    bool has_number = false; ///< value_si with low and high: a range to draw
    double value_si = 0.0;
    double low = 0.0;
    double high = 0.0;
    bool fits = false; ///< as expected on the card as built
    bool by_meter = false;
    bool simulated = false; ///< nobody measured it
    bool lights = false;    ///< which lights show
};

struct StoryMove {
    std::string id;
    std::string title;
    std::int64_t worked_s = 0;
};

struct StoryStep {
    int number = 1;
    std::string title;
    StepState state = StepState::waiting;
    std::string state_text; ///< "proved", "went on regardless: no meter", "not proved yet"
    std::string verdict;
    int stops = 0;
    StepTime time;
    std::vector<StoryMove> moves; ///< those done, in order
    std::vector<StoryReading> readings;
    std::vector<std::string> changes; ///< made while this step was open, and what was mended in it
    std::size_t mended = 0;           ///< how many of `changes`, at their end, are what was mended
    int shown_reading =
        -1; ///< the one worth a row: the lights, else the last number, else the last thing seen
};

struct StoryPhoto {
    std::string file;
    std::string caption; ///< never empty
    int step = 0;
};

struct Story {
    std::string id;
    std::string title;
    std::string started;   ///< "25 November 2026, 14:10"
    std::string ended;     ///< "15:14", or with its day when it is another; empty while it goes on
    std::string state;     ///< "finished", "put away", "not finished"
    std::string outcome;   ///< "7 of 7 lit"
    std::string made_with; ///< "copper tape, 5 mm"
    std::string audience;
    bool walked = false;
    bool passed_first_time = false;
    std::int64_t worked_s = 0;
    std::int64_t paused_s = 0;
    std::vector<StoryStep> steps;     ///< seven
    std::vector<std::string> changes; ///< all of them, as sentences
    std::vector<std::string> mends;   ///< "Mended: L6 lies the wrong way round."
    std::vector<std::string> mended;  ///< the same as the record has it: "L6 lies the wrong way round"
    std::vector<std::string> notes;   ///< without the lines that only repeat a mending
    std::vector<StoryPhoto> photos;
};

/// `events` are those the record is the fold of; `parts` the shipped ones.
[[nodiscard]] Story tell(const Record& record, const std::vector<Event>& events, const Parts& parts,
                         const Words& words = english());

/// "14:10" and "25 November 2026" from seconds since 1970; the caller's clock decides the time zone.
[[nodiscard]] std::string spoken_clock(std::int64_t seconds);
[[nodiscard]] std::string spoken_day(std::int64_t seconds, const Words& words = english());
/// "25 Nov": where the year is told elsewhere.
[[nodiscard]] std::string short_day(std::int64_t seconds, const Words& words = english());

/// One reading in words; `check` null when the card as built has none of that id.
[[nodiscard]] StoryReading tell_reading(const Reading& reading, const Check* check,
                                        const Words& words = english());

} // namespace lanternleaf
