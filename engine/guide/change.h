// Change: how the real thing differs from the card ("Mine is different").
// Exists so that the maker's card is taken as right until the check says otherwise: a change gives the card
// as built, and every later prediction follows it.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

enum class ChangeKind {
    joint_cut,     ///< a fold became a cut and an overlapped joint: part = strip, at_mm = where, mm = overlap
    tape_swapped,  ///< part = strip, type = tape laid instead
    strip_moved,   ///< part = strip, at_mm = displacement
    tear,          ///< part = strip, at_mm = where, mm = gap (default 1)
    bridged,       ///< a piece of the same tape laid over a gap: part = strip, at_mm = where, mm = length
    led_turned,    ///< part = LED: turned by half
    led_swapped,   ///< part = LED, type = LED put instead
    led_moved,     ///< part = LED, at_mm = where it is now
    patch_missing, ///< part = patch
    patch_moved,   ///< part = patch, at_mm = where it is now
    patch_added,   ///< at_mm, mm = size of the square; laid on top of strip `part` and under what crosses it
    cells_stacked, ///< count = how many
    cell_upside_down, ///< the other face is on the bed
    cell_swapped,     ///< type = cell put instead
    holder_swapped,   ///< type = holder put instead
    foam_layers,      ///< count = layers really used
};

struct Change {
    ChangeKind kind = ChangeKind::led_turned;
    std::string part;
    Vec2 at_mm;
    double mm = 0.0;
    std::string type;
    int count = 0;
    friend bool operator==(const Change&, const Change&) = default;
};

/// The card as built; a Problem when the change names something the card has not got (the card is then
/// untouched).
[[nodiscard]] Outcome<Card> apply_change(const Card& card, const Parts& parts, const Change& change);

/// "L6 turned round", "P1 left out": for the record and the screen.
[[nodiscard]] std::string describe(const Change& change, const Words& words = english());
[[nodiscard]] const char* name_of(ChangeKind kind); ///< "led-turned"
/// From the name in a file; false when unknown.
[[nodiscard]] bool change_kind_from(const std::string& name, ChangeKind& out);
/// The step a change belongs to: where it would be made.
[[nodiscard]] int step_of(ChangeKind kind, const Card& card, const std::string& part);

} // namespace lanternleaf
