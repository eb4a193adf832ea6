// Draw commands: everything a person can mean in the Draw place and on the light box.
#pragma once

#include "drawing/sheet_marks.h"
#include "model/draw_state.h"
#include "sheets/printout.h"

#include <variant>

namespace lanternleaf::draw {

struct Open {
    std::string path;
};

struct NewCard {
    double width_mm = 148.0;
    double height_mm = 105.0;
};

struct PickTool {
    DrawTool tool;
};

/// A tap on the card; `reach_mm` is how far off a finger may be at this zoom.
struct Tap {
    Vec2 at_mm;
    double reach_mm;
};

struct DragStart {
    Vec2 from_mm;
    double reach_mm;
};

struct DragTo {
    Vec2 to_mm;
    double reach_mm;
};

struct DragEnd {
    bool keep = true; ///< false: as if it had not been
};

struct Do {
    Edit edit;
};

/// What the title field shows now; `done`: that is the title.
struct TypeTitle {
    std::string text;
    bool done = false;
};

struct Undo {};

struct Redo {};

struct SelectPart {
    std::string id; ///< empty: nothing
};

struct FinishStrip {};

struct ChooseTape {
    std::string tape;
};

struct ChooseLight {
    std::string type;
    double ohm = 0.0; ///< above 0: a resistor instead
};

struct Nudge {
    Vec2 by_mm;
};

/// A crease or a place to keep clear, to be moved to where it belongs.
struct Add {
    SheetMark::Kind kind;
};

struct RemoveSelected {};

struct TurnSelected {
    double by_deg = 90.0;
};

struct CopySelected {};

struct ShowFinding {
    int index;
};

struct ApplyFix {
    int finding;
    int fix;
};

struct ShowLayers {
    bool lights;
    bool notes;
};

/// Looks for traces for all that stands on the sheet; what is laid is replaced once one is taken.
struct Suggest {};

/// One more piece of that work, each frame while it lasts; or enough of it.
struct SearchOn {};

struct StopSearch {};

/// Looks at one of those found, or takes it, or leaves them all.
struct LookAtSuggestion {
    int index;
};

struct TakeSuggestion {};

struct LeaveSuggestions {};

struct MakeThis {};

/// Gives the card's file to the person, to keep or to send.
struct SendCard {};

/// The sheets to print of the plan at hand, and the printing: one PDF, handed to the host.
struct WishPrint {
    PrintoutWish wish;
};

struct Print {};

/// The steps as a page in words alone, for a screen reader.
struct PrintPage {};

/// The picture under the plan: where it lies and how wide, or none.
struct PlaceArt {
    std::optional<Art> art;
};

/// The light box, with the plan at hand in Draw or in Make.
struct OpenLightBox {};

struct CloseLightBox {};

struct Calibrate {
    bool on;
};

struct SetScale {
    double px_per_mm;
};

struct KeepScale {};

struct LockLightBox {
    bool on;
};

struct LookAt {
    Vec2 mm;
};

} // namespace lanternleaf::draw

namespace lanternleaf {

using DrawCommand = std::variant<
    draw::Open, draw::NewCard, draw::PickTool, draw::Tap, draw::DragStart, draw::DragTo, draw::DragEnd,
    draw::Do, draw::TypeTitle, draw::Undo, draw::Redo, draw::SelectPart, draw::FinishStrip, draw::ChooseTape,
    draw::ChooseLight, draw::Nudge, draw::Add, draw::RemoveSelected, draw::TurnSelected, draw::CopySelected,
    draw::ShowFinding, draw::ApplyFix, draw::ShowLayers, draw::Suggest, draw::SearchOn, draw::StopSearch,
    draw::LookAtSuggestion, draw::TakeSuggestion, draw::LeaveSuggestions, draw::MakeThis, draw::SendCard,
    draw::WishPrint, draw::Print, draw::PrintPage, draw::PlaceArt, draw::OpenLightBox, draw::CloseLightBox,
    draw::Calibrate, draw::SetScale, draw::KeepScale, draw::LockLightBox, draw::LookAt>;

} // namespace lanternleaf
