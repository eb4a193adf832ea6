// History: every state a plan has been in since it was opened, each with the name of what led to it.
// Exists so that any edit can be taken back and done again without limit. It keeps whole cards: a card is a
// few kilobytes, and a whole card cannot be undone wrongly.
#pragma once

#include "card/card.h"

#include <string>
#include <vector>

namespace lanternleaf {

class History {
public:
    /// Begins with one card and nothing to undo.
    explicit History(Card first);

    /// A new state after the one at hand; what had been undone is forgotten.
    void add(std::string label, Card card);

    [[nodiscard]] const Card& card() const { return states_[at_].card; }

    [[nodiscard]] bool can_undo() const { return at_ > 0; }

    [[nodiscard]] bool can_redo() const { return at_ + 1 < states_.size(); }

    /// What undo() would take back; empty when there is nothing.
    [[nodiscard]] std::string undo_label() const;
    [[nodiscard]] std::string redo_label() const;
    /// Gives the name of what was taken back; empty, and no change, when there is nothing.
    std::string undo();
    std::string redo();

    /// How many states there are, the first one included.
    [[nodiscard]] std::size_t size() const { return states_.size(); }

    [[nodiscard]] std::size_t place() const { return at_; }

private:
    struct State {
        std::string label;
        Card card;
    };

    std::vector<State> states_;
    std::size_t at_ = 0;
};

} // namespace lanternleaf
