#include "drawing/history.h"

#include <utility>

namespace lanternleaf {

History::History(Card first) {
    states_.push_back({"", std::move(first)});
}

void History::add(std::string label, Card card) {
    states_.resize(at_ + 1);
    states_.push_back({std::move(label), std::move(card)});
    ++at_;
}

std::string History::undo_label() const {
    return can_undo() ? states_[at_].label : "";
}

std::string History::redo_label() const {
    return can_redo() ? states_[at_ + 1].label : "";
}

std::string History::undo() {
    std::string label = undo_label();
    at_ -= can_undo() ? 1 : 0;
    return label;
}

std::string History::redo() {
    std::string label = redo_label();
    at_ += can_redo() ? 1 : 0;
    return label;
}

} // namespace lanternleaf
