// Batch event: one line of a batch's journal: who takes part, which cells went out and came back. A batch is
// the fold of its events, as a build is (record/event.h); the builds themselves only name the batch.
#pragma once

#include "base/outcome.h"

#include <cstdint>
#include <string>
#include <vector>

namespace lanternleaf {

/// Who the cards are made by.
enum class BatchFor {
    repeater, ///< one maker, the same card again
    group,    ///< a class or club: many makers, each known by a nickname
};

enum class BatchEventKind {
    started,    ///< text = batch id; card, title, count, purpose and the rest below
    opened,     ///< text = batch id: another device writes here of the same batch
    joined,     ///< text = nickname
    shown_as,   ///< text = nickname, as = what is shown in its place from now on
    cells_out,  ///< cells handed out by an adult; below 0: counted too many before
    cells_back, ///< cells back on the adult's tray
    note,       ///< text
    closed,     ///< by an adult; out, back, in_cards, missing as counted then
    reopened,
};
inline constexpr int kBatchEventKindCount = 9;

struct BatchEvent {
    BatchEventKind kind = BatchEventKind::note;
    std::int64_t at_s = 0; ///< UTC, from the caller's clock
    std::string text;
    std::string as;    ///< shown_as
    std::string card;  ///< started: the card file's name, "harbour-lighthouse"
    std::string title; ///< started: of the card
    int count = 0;     ///< started: how many cards; cells_out, cells_back: how many cells
    BatchFor purpose = BatchFor::repeater;
    int cells_each = 1; ///< started: cells in one card
    /// Started: who will have the cards and what follows from that, asked once for all of them.
    std::string audience;   ///< "class", ...: see audience_from(); empty: not asked yet
    std::string holder;     ///< another type of holder than the card's; empty: the card's
    bool gives_cell = true; ///< false: the cards are given without their cells
    int out = 0;            ///< closed: cells that had gone out
    int back = 0;           ///< closed: cells that had come back
    int in_cards = 0;       ///< closed: cells that stay in finished cards
    int missing = 0;        ///< closed: out - back - in_cards, on record
    friend bool operator==(const BatchEvent&, const BatchEvent&) = default;
};

inline constexpr int kMostInBatch = 1000;
/// Longest nickname in characters: no room for a full name and an address.
inline constexpr std::size_t kLongestNickname = 16;

/// A nickname as it is kept: blanks at the ends and doubled ones taken out, cut to kLongestNickname
/// characters. Empty when nothing is left, or when it holds an @ or a control character.
[[nodiscard]] std::string tidy_nickname(const std::string& typed);

/// Whether a text may be a batch's id: 1 to 150 small letters, digits and dashes. It stands in file names.
[[nodiscard]] bool is_batch_id(const std::string& id);

[[nodiscard]] const char* name_of(BatchEventKind kind); ///< "cells-out"
[[nodiscard]] const char* name_of(BatchFor purpose);    ///< "repeater", "group"

/// One line, no newline. `number` runs from 1; the first line also carries the file's version and kind. Lines
/// are described by assets/schema/batch-line.schema.json.
[[nodiscard]] std::string write_batch_event(const BatchEvent& event, int number);
[[nodiscard]] Outcome<BatchEvent> read_batch_event(const std::string& line, const std::string& file,
                                                   int line_number);
/// All whole events of a file's text; its first must be 'started' or 'opened'. A torn last line is left out,
/// anything else that cannot be read is a Problem with its line. Empty for a text without a whole line.
[[nodiscard]] Outcome<std::vector<BatchEvent>> read_batch_journal(const std::string& text,
                                                                  const std::string& file);

} // namespace lanternleaf
