// Batch state: the batch whose board is open, and one that is about to be begun. All of it is read from the
// library again whenever the board is looked at.
#pragma once

#include "batch/board.h"
#include "batch/needs.h"

#include <map>
#include <string>
#include <vector>

namespace lanternleaf {

/// One batch as the shelf shows it.
struct ShelfBatch {
    std::string id;
    std::string title;
    std::string card_name;
    int count = 0;
    int begun = 0;
    int done = 0;
    int stopped = 0;
    bool group = false;
    bool closed = false;
    std::int64_t started_s = 0;
    std::string picture;                         ///< empty until a build of it is begun
    std::string trouble;                         ///< why it cannot be shown
    std::map<std::string, std::string> shown_as; ///< nicknames that are hidden, and what is shown instead
};

/// A batch that is being thought of; nothing of it is kept yet.
struct NewBatch {
    std::string card; ///< its file
    std::string title;
    int count = 5;
    BatchFor purpose = BatchFor::repeater;
    int cells_each = 1;
};

struct BatchState {
    Words words = english();
    Batch batch;
    BatchBoard board;
    std::vector<NeedLine> needs; ///< empty when the card is not in the library
    int unreadable = 0;          ///< builds that could not be read
    std::int64_t seen_s = 0;     ///< when the board was read, UTC
    int count_out = 0;           ///< counted by the adult, not confirmed yet
    int count_back = 0;
    std::string name;    ///< being typed
    std::string builder; ///< whose sheet is open
    std::string build;   ///< and which build of theirs; empty: none
};

} // namespace lanternleaf
