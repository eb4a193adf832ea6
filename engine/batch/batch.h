// Batch: several cards of one plan, as the fold of the files in which devices wrote about it. Exists so that
// a teacher or repeater sees who is in it and whether every coin cell is accounted for. Pure: no files, no
// clock.
#pragma once

#include "batch/batch_event.h"
#include "batch/progress.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// How a batch was closed.
struct BatchClosing {
    std::int64_t at_s = 0;
    int out = 0;
    int back = 0;
    int in_cards = 0;
    int missing = 0; ///< on record; above 0: fewer came back than went out
};

struct Batch {
    std::string id;
    std::string card;  ///< the card file's name
    std::string title; ///< of the card
    int count = 1;     ///< cards
    BatchFor purpose = BatchFor::repeater;
    int cells_each = 1;
    std::string audience;   ///< as in BatchEvent; empty: not asked yet
    std::string holder;     ///< empty: the card's own
    bool gives_cell = true; ///< false: the cards are given without their cells
    std::int64_t started_s = 0;
    std::vector<std::string> makers; ///< nicknames, in the order they joined, none twice
    /// What is shown in place of a nickname. Journals are never rewritten: the nickname stays in them.
    std::map<std::string, std::string> shown_as;
    int cells_out = 0;  ///< from the adult's tray, in all
    int cells_back = 0; ///< on the tray again, in all
    std::vector<std::string> notes;
    std::optional<BatchClosing> closed; ///< empty while it is open
};

/// The events of all files of one batch, in any order of files; exactly one must begin with 'started', all
/// must be of the same id. Between files, events count by their time, so that no device needs to wait for
/// another.
[[nodiscard]] Outcome<Batch> fold_batch(const std::vector<std::vector<BatchEvent>>& files);

/// What is shown for a nickname.
[[nodiscard]] std::string shown_maker(const Batch& batch, const std::string& nickname);

/// Where the cells of a batch are. A cell that leaves inside a finished card is given away with it.
struct CellBalance {
    int out = 0;
    int back = 0;
    int in_finished = 0; ///< in finished cards
    int in_open = 0;     ///< in cards that are still being made: to be taken out and counted back
    int missing = 0;     ///< out - back - in_finished; below 0: more came back than went out

    [[nodiscard]] bool matches() const { return missing == 0; }
};

[[nodiscard]] CellBalance cell_balance(const Batch& batch, const std::vector<BuildProgress>& builds);

} // namespace lanternleaf
