// Log view: a build's record as finished rows: what each step read, how long it took, how it differs from the
// plan.
#pragma once

#include "model/app_state.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct LogRow {
    int step = 1;
    std::string title;
    std::string time;    ///< "4 min"; empty while open
    std::string reading; ///< "0.3 Ω, expected 0.1–0.6 Ω", "not measured"
    bool proved = false;
    bool regardless = false;
    bool has_value = false;
    double low = 0.0;
    double high = 0.0;
    double value = 0.0;
};

struct LogView {
    std::string title;    ///< "Harbour lighthouse, build 3"
    std::string subtitle; ///< "25 November 2026, 14:10 to 15:14. Copper tape, 5 mm."
    std::string badge;    ///< "7 of 7 lit"
    std::string badge_line;
    bool finished = false;
    std::vector<LogRow> rows;
    std::vector<std::string> as_built; ///< changes and notes

    struct Other {
        std::string number;
        std::string when;
        std::string state;
        std::string journal;
        bool chosen = false;
    };

    std::vector<Other> others; ///< builds of the same card, newest first
};

[[nodiscard]] LogView make_log_view(const AppState& state, const Parts& shipped);

/// "14:10", "25 November 2026" from UTC seconds (the host shifts them to local time beforehand).
[[nodiscard]] std::string clock_text(std::int64_t seconds);
[[nodiscard]] std::string date_text(std::int64_t seconds);
/// "4 min", "1 h 04".
[[nodiscard]] std::string span_text(std::int64_t seconds);

} // namespace lanternleaf
