// Log view: a build's record as finished rows: what each step read, how long it took, how it differs from the
// plan. Exists so that a record's words and figures can be tested without a screen.
#pragma once

#include "model/app_state.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// A figure on its predicted range, as shares of a trough.
struct RangeShares {
    float low = 0;
    float high = 1;
    float value = 0;
};

struct LogRow {
    int step = 1;
    std::string title;     ///< "3 Lay the negative trace"
    std::string time;      ///< "4 min"; empty while open
    std::string reading;   ///< "0.3 Ω", "lit: 7 of 7", "not measured"
    bool measured = false; ///< the reading is one, not the words for none
    std::string spoken;    ///< the whole row in one sentence
    StepState state = StepState::waiting;
    int stops = 0;
    bool as_expected = false; ///< the reading shown
    bool has_range = false;   ///< `range` is to be drawn
    RangeShares range;
};

enum class LogLineKind { change, mend, note, plain };

struct LogLine {
    LogLineKind kind = LogLineKind::plain;
    std::string text;
};

struct LogView {
    std::string title;    ///< "Harbour lighthouse, build 3"
    std::string subtitle; ///< "25 November 2026, 14:10 to 15:14. Copper tape, 5 mm."
    std::string badge;    ///< "7 of 7 lit"
    std::string badge_line;
    bool finished = false;
    bool changed = false; ///< there are changes that could become the plan
    std::vector<LogRow> rows;
    std::vector<LogLine> as_built; ///< changes, mendings and notes

    struct Other {
        std::string number;
        std::string when;
        std::string who;   ///< nickname as shown; empty: not told
        std::string time;  ///< "1 h 04"; empty until it has been read
        std::string state; ///< "7 of 7 lit", "at step 4"
        std::string put_right;
        std::string journal;
        bool finished = false;
        bool chosen = false;
    };

    std::vector<Other> others; ///< builds of the same card, newest first
};

[[nodiscard]] LogView make_log_view(const AppState& state, const Words& words = english());

/// One step of the record, for its sheet.
struct LogStepView {
    std::string title; ///< "3 Lay the negative trace"
    std::string state; ///< "Proved after one stop. 11 min, and a pause of 8 h 20."
    std::string verdict;

    struct MoveRow {
        std::string title;
        std::string time;
        float share = 0; ///< of the longest move of the step
    };

    std::vector<MoveRow> moves;

    struct ReadingRow {
        std::string title;
        std::string value;
        std::string expected;
        bool fits = false;
        bool has_range = false;
        RangeShares range;
    };

    std::vector<ReadingRow> readings;
    std::vector<LogLine> lines;
};

[[nodiscard]] LogStepView make_log_step_view(const AppState& state, int step, const Words& words = english());

/// The shares for a reading on its range; the trough reaches past both on either side, never below 0.
[[nodiscard]] RangeShares range_shares(const StoryReading& reading);

} // namespace lanternleaf
