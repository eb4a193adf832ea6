// Batch commands: everything a person can mean about a batch: making several, the board, the cells, the
// lists.
#pragma once

#include "batch/batch_event.h"

#include <string>
#include <variant>

namespace lanternleaf::batching {

/// Of a card: asks how many and for whom.
struct BeginSeveral {
    std::string card; ///< its file; empty: which card is asked first
};

struct SetCount {
    int count = 1;
};

struct SetPurpose {
    BatchFor purpose = BatchFor::repeater;
};

struct AskAudience {}; ///< who will have the cards; the answer starts the batch

struct Open {
    std::string id;
};

struct Leave {}; ///< back to the shelf

struct LookAgain {}; ///< reads what other devices wrote

struct OpenCells {};

/// What the adult counted and has not confirmed yet.
struct CountCells {
    int out = 0;
    int back = 0;
};

struct KeepCells {}; ///< confirmed by an adult

struct OpenName {};

struct TypeName {
    std::string text;
};

/// The nickname joins; `begin`: and their card is begun at once.
struct KeepName {
    bool begin = false;
};

/// Begins the next card of a maker; empty: nobody named.
struct Begin {
    std::string maker;
};

struct OpenBuilder {
    std::string maker;
    std::string build; ///< its id; empty: not begun
};

struct HideName {}; ///< of the builder whose sheet is open

struct OpenTake {}; ///< what to take along

struct OpenClose {};

struct Close {}; ///< confirmed by an adult

struct Reopen {};

/// Lists to confirm instead of move by move, or the other way round.
struct UseList {
    bool list = false;
};

struct ConfirmLine {
    int line = 0; ///< of the open step's list
};

} // namespace lanternleaf::batching

namespace lanternleaf {

using BatchCommand =
    std::variant<batching::BeginSeveral, batching::SetCount, batching::SetPurpose, batching::AskAudience,
                 batching::Open, batching::Leave, batching::LookAgain, batching::OpenCells,
                 batching::CountCells, batching::KeepCells, batching::OpenName, batching::TypeName,
                 batching::KeepName, batching::Begin, batching::OpenBuilder, batching::HideName,
                 batching::OpenTake, batching::OpenClose, batching::Close, batching::Reopen,
                 batching::UseList, batching::ConfirmLine>;

} // namespace lanternleaf
