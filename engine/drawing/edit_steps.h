// The edits by theme, and what they share. Private to this module; apply_edit.cpp picks the right one.
// Each works on its own copy of the card and gives a sentence when it cannot be done, empty when it was.
#pragma once

#include "drawing/edit.h"

namespace lanternleaf::edits {

/// What an edit works on.
struct Bench {
    Card& card;
    const Parts& parts;
    const Words& words;
};

[[nodiscard]] bool is_finite(Vec2 p);
/// 0 up to 360.
[[nodiscard]] double wrapped_deg(double deg);

[[nodiscard]] Led* led_of(Card& card, const std::string& id);
[[nodiscard]] ResistorPart* resistor_of(Card& card, const std::string& id);
[[nodiscard]] Patch* patch_of(Card& card, const std::string& id);
[[nodiscard]] Strip* strip_of(Card& card, const std::string& id);
/// Place in Card::laid; -1 when there is none of that id.
[[nodiscard]] int laid_place(const Card& card, const std::string& id);

// edit_parts.cpp
[[nodiscard]] std::string apply(Bench on, const edit::SetHolder& e);
[[nodiscard]] std::string apply(Bench on, const edit::PlaceLed& e);
[[nodiscard]] std::string apply(Bench on, const edit::PlaceResistor& e);
[[nodiscard]] std::string apply(Bench on, const edit::PlacePatch& e);
[[nodiscard]] std::string apply(Bench on, const edit::MovePart& e);
[[nodiscard]] std::string apply(Bench on, const edit::TurnPart& e);
[[nodiscard]] std::string apply(Bench on, const edit::RemovePart& e);
[[nodiscard]] std::string apply(Bench on, const edit::CopyPart& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetLedType& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetOhm& e);

// edit_strips.cpp
[[nodiscard]] std::string apply(Bench on, const edit::LayStrip& e);
[[nodiscard]] std::string apply(Bench on, const edit::MoveStrip& e);
[[nodiscard]] std::string apply(Bench on, const edit::MoveCorner& e);
[[nodiscard]] std::string apply(Bench on, const edit::MoveRun& e);
[[nodiscard]] std::string apply(Bench on, const edit::InsertCorner& e);
[[nodiscard]] std::string apply(Bench on, const edit::RemoveCorner& e);
[[nodiscard]] std::string apply(Bench on, const edit::SplitStrip& e);
[[nodiscard]] std::string apply(Bench on, const edit::JoinStrips& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetSide& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetTape& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetEnd& e);
[[nodiscard]] std::string apply(Bench on, const edit::PatchCrossing& e);
[[nodiscard]] std::string apply(Bench on, const edit::ReplaceLaid& e);

// edit_sheet.cpp
[[nodiscard]] std::string apply(Bench on, const edit::SetSheetSize& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetFolds& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetKeepouts& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetArt& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetFoam& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetAudience& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetCell& e);
[[nodiscard]] std::string apply(Bench on, const edit::SetTitle& e);

} // namespace lanternleaf::edits
