#include "batch/confirm_list.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// "N1" of "3/N1/fold-2": what a move is about.
std::string subject_of(const Move& move) {
    const std::size_t first = move.id.find('/');
    const std::size_t second = move.id.find('/', first + 1);
    return first == std::string::npos ? move.id : move.id.substr(first + 1, second - first - 1);
}

bool is_label(MoveKind kind) {
    return kind == MoveKind::close || kind == MoveKind::label;
}

// Closing and labelling are things to check one by one, whatever they are about.
bool same_line(const Move& a, const Move& b) {
    return subject_of(a) == subject_of(b) && !is_label(a.kind) && !is_label(b.kind);
}

/// The moves of one line.
struct Group {
    const Move* first = nullptr;
    const Move* last = nullptr; ///< within the same vector

    [[nodiscard]] int count(MoveKind kind) const {
        return static_cast<int>(
            std::count_if(first, last + 1, [kind](const Move& move) { return move.kind == kind; }));
    }
};

std::string text_of(const Group& group, StepId step, const Words& words) {
    const std::string part = subject_of(*group.first);
    const int folds = group.count(MoveKind::fold);
    switch (step) {
    case StepId::mount_holder:
        return words("confirm.holder");
    case StepId::mark_pads:
        return words("confirm.pads", {{"part", part}});
    case StepId::lay_negative:
    case StepId::lay_positive:
        if (group.count(MoveKind::leave_tail) > 0) {
            return words("confirm.strip_tail", {{"part", part}, {"n", folds}});
        }
        return words(group.count(MoveKind::joint) > 0 ? "confirm.strip_lapped" : "confirm.strip",
                     {{"part", part}, {"n", folds}});
    case StepId::insulate:
        return words(group.count(MoveKind::patch) > 0 ? "confirm.patch" : "confirm.carried",
                     {{"part", part}, {"n", folds}});
    case StepId::place_leds:
        return words(group.first->kind == MoveKind::place_led ? "confirm.light" : "confirm.part",
                     {{"part", part}});
    case StepId::pad_edges:
        break;
    }
    return group.first->kind == MoveKind::foam ? words("confirm.foam") : group.first->title;
}

// What is said again is what differs from card to card: the first move's figures or direction.
std::string detail_of(const Group& group) {
    if (group.first->kind == MoveKind::place_led) {
        return group.first->title;
    }
    return group.first->sentence;
}

} // namespace

std::vector<ConfirmLine> confirm_list(const Step& step, const Words& words) {
    std::vector<ConfirmLine> lines;
    Group group;
    for (const Move& move : step.moves) {
        if (move.adult_only) {
            break;
        }
        if (group.first == nullptr || !same_line(*group.last, move)) {
            group.first = &move;
            lines.emplace_back();
        }
        group.last = &move;
        lines.back().moves.push_back(move.id);
        lines.back().text = text_of(group, step.id, words);
        lines.back().detail = detail_of(group);
    }
    return lines;
}

} // namespace lanternleaf
