// Sheet marks: the creases of a card and the places to keep clear, as things a finger can take hold of. They
// have no ids in a card file, so each goes by its place in the list: "crease-1", "clear-2".
// Exists so that they are moved, turned and sized like all that lies on the sheet, by the same edits.
#pragma once

#include "drawing/edit.h"
#include "words/words.h"

#include <optional>
#include <string>

namespace lanternleaf {

/// A window of this size is what a new place to keep clear begins as.
inline constexpr Vec2 kNewClear_mm{20.0, 15.0};
/// A place to keep clear is never sized below this.
inline constexpr double kLeastClear_mm = 4.0;

struct SheetMark {
    enum class Kind { crease, clear };
    Kind kind = Kind::crease;
    std::size_t index = 0; ///< in Sheet::folds or Sheet::keepouts
};

[[nodiscard]] std::string mark_id(SheetMark::Kind kind, std::size_t index);
/// Nothing when the id names no mark that the sheet has.
[[nodiscard]] std::optional<SheetMark> find_mark(const Sheet& sheet, const std::string& id);
/// The mark a place means: a place to keep clear that it lies in, else a crease within reach. Empty: none.
[[nodiscard]] std::string mark_at(const Sheet& sheet, Vec2 at_mm, double reach_mm);
/// The middle of a crease or of a place to keep clear.
[[nodiscard]] Vec2 place_of_mark(const Sheet& sheet, const SheetMark& mark);
/// "74 mm from the left", "20 mm × 15 mm".
[[nodiscard]] std::string words_of_mark(const Sheet& sheet, const SheetMark& mark,
                                        const Words& words = english());

/// One more crease, down the middle; one more place to keep clear, clear of the edges.
[[nodiscard]] Edit add_crease(const Sheet& sheet);
[[nodiscard]] Edit add_clear(const Sheet& sheet, const Words& words = english());

/// Moved by so much, kept on the sheet. A crease slides square to itself and stays as long as the sheet.
[[nodiscard]] Edit move_mark(const Sheet& sheet, const SheetMark& mark, Vec2 by_mm);
/// A corner of a place to keep clear moved to there. One with four square corners keeps them square.
[[nodiscard]] Edit move_mark_corner(const Sheet& sheet, const SheetMark& mark, std::size_t corner,
                                    Vec2 to_mm);
/// A crease down becomes one across and back; a place to keep clear is turned a quarter about its middle.
[[nodiscard]] Edit turn_mark(const Sheet& sheet, const SheetMark& mark);
[[nodiscard]] Edit remove_mark(const Sheet& sheet, const SheetMark& mark);

} // namespace lanternleaf
