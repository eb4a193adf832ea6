// BoardView: the card as shapes in millimetres, ready to be drawn: what is done, what is now, what comes
// later. Exists so that painting holds no searching and no sums, and so that a test can read the picture
// without a window.
//   Card + Conductors + BoardProgress -> make_board_view -> BoardView -> paint/board
// Every thing that can be tapped has a target name: "board/led/L3", "board/strip/N1", "board/joint/N2-N3",
// "board/patch/P1", "board/holder", "board/mark/0".
#pragma once

#include "card/parts.h"
#include "view/board_progress.h"
#include "words/words.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// A fold in a strip that is laid: where, and the way the tape runs before and after it.
struct FoldMark {
    Vec2 at_mm;
    Vec2 in;
    Vec2 out;
};

struct StripView {
    std::string id;
    std::string target;
    Side side = Side::negative;
    bool fabric = false;
    double width_mm = 5.0;
    int laid_index = 0;
    std::vector<Vec2> done_mm;  ///< centre line of the part that lies; fewer than two points: nothing
    std::vector<Vec2> now_mm;   ///< of the run under way
    std::vector<Vec2> later_mm; ///< of what is still to come
    std::vector<FoldMark> folds;
    std::vector<Vec2> ticks_mm; ///< where + or - stands on the part that lies
    bool active = false;        ///< the move under way is about it
};

struct PatchView {
    std::string id;
    std::string target;
    Vec2 at_mm;
    Vec2 size_mm;
    double turn_deg = 0.0;
    int laid_index = 0;
    ItemState state = ItemState::later;
};

/// Two strips that conduct into each other, once both lie there.
struct JointView {
    std::string target;
    Vec2 at_mm;
    double size_mm = 5.0;
    Side side = Side::negative;
};

enum class LightTint { warm, white, green, blue, red };

/// An LED or a resistor. Drawn larger than life round its true centre: the ends lie on its true pads.
struct PartView {
    std::string id;
    std::string target;
    Vec2 at_mm;
    double turn_deg = 0.0;
    double length_mm = 9.6;
    double width_mm = 5.6;
    bool resistor = false;
    std::string value; ///< "4.7 Ω" for a resistor
    ItemState state = ItemState::later;
    bool marked = true; ///< its pads are marked on the paper
    LightTint tint = LightTint::warm;
    double glow = 0.0; ///< predicted brightness 0..1 as the eye sees it
    Vec2 pill_mm;      ///< centre of its id pill
    Vec2 pill_size_mm;
};

struct HolderView {
    std::string target = "board/holder";
    bool flap = true;
    Vec2 bed_mm;
    Vec2 flap_mm;
    double cell_radius_mm = 10.0;
    std::vector<Vec2>
        flap_outline_mm; ///< the flap while it lies open: hinge first (two corners), then the foot
    std::vector<Vec2> base_outline_mm; ///< the paper under the cell; or the body of a ready-made holder
    Convex pad_mm[2];                  ///< ready-made holders: their two pads
    Vec2 label_mm;                     ///< middle of `label`
    std::string label;                 ///< "inside the flap"
    ItemState state = ItemState::later;
    bool cell_in = false;
};

/// What the move under way points at.
struct StartMark {
    Vec2 at_mm;
    std::string label; ///< "Start"
    Vec2 pill_mm;
    Vec2 pill_size_mm;
};

struct FoldToMake {
    Vec2 at_mm;
    Vec2 outside;  ///< unit direction away from the turn: the crease lies along it
    Vec2 badge_mm; ///< middle of the number badge
    int number = 0;
    bool right = true;
};

/// Chevrons along the run under way.
struct RunMark {
    std::vector<Vec2> path_mm;
    Side side = Side::positive;
    double width_mm = 5.0;
};

/// Suspects and findings on the card.
enum class MarkKind { suspect, problem, caution, note };

struct BoardMark {
    MarkKind kind = MarkKind::problem;
    Vec2 at_mm;
    std::string text;    ///< letter or number
    std::string title;   ///< callout, may be empty: "1.5 mm gap"
    std::string caption; ///< second line of the callout: "N2 to N1"
    bool first = false;  ///< the likeliest suspect is solid
};

struct BoardArt {
    std::string file;
    Vec2 at_mm;
    double width_mm = 0.0;
};

struct BoardView {
    Vec2 sheet_mm;
    std::vector<FoldLine> creases;
    std::vector<Keepout> keepouts;
    std::optional<BoardArt> art;
    std::vector<StripView> strips; ///< in order of laying
    std::vector<PatchView> patches;
    std::vector<JointView> joints;
    HolderView holder;
    std::vector<PartView> parts; ///< LEDs, then resistors
    std::optional<Foam> foam;
    ItemState foam_state = ItemState::later;
    std::vector<Vec2> halo_mm; ///< centre line of the amber halo of the move under way
    double halo_width_mm = 10.0;
    std::optional<RunMark> run;
    std::optional<StartMark> start;
    std::optional<FoldToMake> fold;
    std::optional<Vec2> place; ///< any other single place the move is about
    std::vector<BoardMark> marks;
};

struct BoardOptions {
    double ppm = 3.92;    ///< points per millimetre it will be drawn at: sizes of pills, pitch of ticks
    double label_em = 17; ///< em of the id pills, points
    double note_em = 16;  ///< em of "Start", points
    bool positive = true; ///< layers
    bool negative = true;
    bool picture = true;
    std::vector<double> glow; ///< one per Card::leds, 0..1; empty: dark
    std::vector<BoardMark> marks;
    Words words = english(); ///< what the few words on the card are told in
};

[[nodiscard]] BoardView make_board_view(const Card& card, const Parts& parts, const Conductors& conductors,
                                        const BoardProgress& progress, const BoardOptions& options);

/// The stretch of a path between two arc lengths; empty when it has no length.
[[nodiscard]] std::vector<Vec2> stretch(const Ribbon& ribbon, double from_mm, double to_mm);

} // namespace lanternleaf
