// Edit: one thing a maker does to a plan, as a value: it can be named, tried, kept, undone.
// Exists so that touch, keyboard, fixes and undo all change a card in one way. apply_edit() never changes its
// input; what cannot be done comes back as one sentence for the maker.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "card/parts.h"
#include "words/words.h"

#include <string>
#include <variant>
#include <vector>

namespace lanternleaf {

/// Names the holder where an edit asks for a part's id.
inline constexpr const char* kHolderId = "holder";

/// The smallest and largest sheet, in mm: from a gift tag to A2.
inline constexpr double kLeastSheet_mm = 30.0;
inline constexpr double kMostSheet_mm = 600.0;

namespace edit {

// ---- the holder and the parts on the sheet ----

struct SetHolder {
    std::string type;
};

struct PlaceLed {
    std::string type;
    Vec2 at_mm;
    double turn_deg = 0.0;
};

struct PlaceResistor {
    double ohm = 0.0;
    Vec2 at_mm;
    double turn_deg = 0.0;
};

/// On top of all that lies there.
struct PlacePatch {
    Vec2 at_mm;
    Vec2 size_mm;
    double turn_deg = 0.0;
};

/// Moves an LED, resistor, patch or the holder to a place.
struct MovePart {
    std::string id;
    Vec2 to_mm;
};

/// Turns an LED, resistor, patch or the holder to an angle.
struct TurnPart {
    std::string id;
    double turn_deg = 0.0;
};

/// Takes away an LED, resistor, patch or strip. A card keeps its holder.
struct RemovePart {
    std::string id;
};

/// A second one of an LED, resistor, patch or strip, moved by so much.
struct CopyPart {
    std::string id;
    Vec2 by_mm;
};

struct SetLedType {
    std::string id;
    std::string type;
};

struct SetOhm {
    std::string id;
    double ohm = 0.0;
};

// ---- strips and patches ----

/// A new strip on top of all that lies there.
struct LayStrip {
    Side side = Side::negative;
    std::string tape;
    std::vector<Vec2> path_mm;
};

struct MoveStrip {
    std::string id;
    Vec2 by_mm;
};

struct MoveCorner {
    std::string id;
    int corner = 0; ///< place in Strip::path_mm, ends included
    Vec2 to_mm;
};

/// Moves one straight run square to itself; its two corners go with it.
struct MoveRun {
    std::string id;
    int run = 0;        ///< from corner `run` to `run + 1`
    double by_mm = 0.0; ///< to the right of the direction of laying (clockwise on the table)
};

/// A new corner before place `before`; 0 lengthens at the start, path_mm.size() at the end.
struct InsertCorner {
    std::string id;
    int before = 0;
    Vec2 at_mm;
};

struct RemoveCorner {
    std::string id;
    int corner = 0;
};

/// Cuts a strip at the place of its centre line nearest to `at_mm`; the second piece begins one tape width
/// earlier and lies on the first, so that the two stay joined.
struct SplitStrip {
    std::string id;
    Vec2 at_mm;
};

/// Makes one uncut strip of two: the ends that lie nearest to each other become one fold or straight run.
struct JoinStrips {
    std::string first;
    std::string second;
};

struct SetSide {
    std::string id;
    Side side = Side::negative;
};

struct SetTape {
    std::string id;
    std::string tape;
};

struct SetEnd {
    std::string id;
    int end = 0; ///< 0 start, 1 end
    EndStyle style = EndStyle::plain;
};

/// A patch between two strips that lie over each other near `at_mm`, sized and turned to cover the crossing
/// with room to spare. Patches that lie between them there already are taken away.
struct PatchCrossing {
    std::string first;
    std::string second;
    Vec2 at_mm;
};

/// Takes everything laid away and lays this instead (suggested traces).
struct ReplaceLaid {
    std::vector<Laid> laid;
};

// ---- the sheet, the cell and the rest of the card ----

struct SetSheetSize {
    double width_mm = 0.0;
    double height_mm = 0.0;
};

struct SetFolds {
    std::vector<FoldLine> folds;
};

struct SetKeepouts {
    std::vector<Keepout> keepouts;
};

struct SetArt {
    std::optional<Art> art;
};

struct SetFoam {
    std::optional<Foam> foam;
};

struct SetAudience {
    Audience audience = Audience::small_children;
};

struct SetCell {
    std::string type;
    int count = 1;
    CellFace face_down = CellFace::negative;
};

struct SetTitle {
    std::string title;
};

} // namespace edit

struct Edit;

/// Several edits under one name, done one after the other or not at all.
struct EditList {
    std::string label;
    std::vector<Edit> edits;
};

struct Edit {
    std::variant<edit::SetHolder, edit::PlaceLed, edit::PlaceResistor, edit::PlacePatch, edit::MovePart,
                 edit::TurnPart, edit::RemovePart, edit::CopyPart, edit::SetLedType, edit::SetOhm,
                 edit::LayStrip, edit::MoveStrip, edit::MoveCorner, edit::MoveRun, edit::InsertCorner,
                 edit::RemoveCorner, edit::SplitStrip, edit::JoinStrips, edit::SetSide, edit::SetTape,
                 edit::SetEnd, edit::PatchCrossing, edit::ReplaceLaid, edit::SetSheetSize, edit::SetFolds,
                 edit::SetKeepouts, edit::SetArt, edit::SetFoam, edit::SetAudience, edit::SetCell,
                 edit::SetTitle, EditList>
        what;
};

/// The card with the edit done. `parts` are the shipped ones with the card's own laid over. A Problem has
/// empty file and place: its text is the whole sentence.
[[nodiscard]] Outcome<Card> apply_edit(const Card& card, const Parts& parts, const Edit& edit,
                                       const Words& words = english());

/// What was done, for undo and redo: "lay a + strip", "turn L3".
[[nodiscard]] std::string label_of(const Edit& edit, const Words& words = english());

/// The id that a new thing of this kind gets: the first free of "L1", "L2", ... over all ids of the card.
[[nodiscard]] std::string free_id(const Card& card, char letter);

/// An empty sheet of that size with a cell and a press-flap holder near its lower left corner and foam round
/// its edges. Nothing is said of who will have it: that is asked.
[[nodiscard]] Card blank_card(const Parts& parts, double width_mm, double height_mm,
                              const Words& words = english());

} // namespace lanternleaf
