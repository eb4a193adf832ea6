// Batch view: the board of a batch as finished rows and sentences. Exists so that what a teacher reads at
// arm's length can be tested without a screen.
#pragma once

#include "model/update.h"

#include <array>
#include <string>
#include <vector>

namespace lanternleaf {

struct BatchRowView {
    std::string who;
    std::string line;   ///< "Step 4: Lay the positive trace, stopped for 3 min"
    std::string action; ///< "Carry on", "Begin", "Record"
    std::string maker;
    std::string build;   ///< its id; empty while not begun
    std::string journal; ///< its path
    BuilderState state = BuilderState::not_begun;
    int step = 1;
    std::array<bool, kStepCount> closed{};
};

struct BatchCountView {
    BuilderState state = BuilderState::done;
    int count = 0;
    std::string word;
};

struct BatchStepView {
    std::string title; ///< "3 Lay the negative trace"
    std::string time;
    std::string first; ///< "5 of 6 at once"
};

struct BatchView {
    std::string title;    ///< "Harbour lighthouse × 20"
    std::string subtitle; ///< "For a class or club. Begun 25 November 2026."
    bool closed = false;
    std::vector<BatchRowView> rows;
    std::vector<BatchCountView> counts; ///< those that are not 0, and done
    CellBalance cells;
    std::string cells_words;
    std::string figures; ///< may hold **bold**
    std::vector<BatchStepView> steps;
    std::string primary; ///< what begins the next card; empty when all are begun or it is closed
    std::string unreadable;
};

/// Of state.batch, which must be open.
[[nodiscard]] BatchView make_batch_view(const AppState& state);
/// "Every cell is accounted for.", "2 cells are out on the tables."
[[nodiscard]] std::string cells_in_words(const CellBalance& cells, const Words& words);

} // namespace lanternleaf
