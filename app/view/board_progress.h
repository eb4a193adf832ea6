// BoardProgress: how far the card on the table has come, item by item, at one move of one step.
// Exists so that the card view shows what is done, what the hands do now and what comes later without knowing
// any step by heart: it is read off the moves the guide made. Pure.
#pragma once

#include "card/card.h"
#include "conductors/conductors.h"
#include "guide/step.h"

#include <string>
#include <vector>

namespace lanternleaf {

enum class ItemState { hidden, later, now, done };

/// A strip as far as it is laid: done up to `done_mm` of its centre line, now up to `now_mm`, the rest later.
struct StripProgress {
    double done_mm = 0.0;
    double now_mm = 0.0;
};

struct BoardProgress {
    ItemState holder = ItemState::later;
    bool cell_in = false;
    std::vector<ItemState> pads;       ///< LED pad marks on the paper, one per Card::leds
    std::vector<ItemState> leds;       ///< one per Card::leds
    std::vector<ItemState> resistors;  ///< one per Card::resistors
    std::vector<StripProgress> strips; ///< one per Conductors::strips
    std::vector<ItemState> patches;    ///< one per Conductors::patches
    ItemState foam = ItemState::later;
    MoveKind kind = MoveKind::press; ///< of the move that is under way
    bool moving = false;             ///< a move is under way (false: only the state is shown)
    int number = 0;                  ///< of the move in its step, from 1
    int strip = -1;                  ///< index of the strip the move is about, or -1
    std::vector<Vec2> path_mm;       ///< Move::path_mm
    double turn_deg = 0.0;           ///< Move::turn_deg
    std::vector<std::string> parts;  ///< Move::parts
};

/// Everything laid, placed and padded; no move under way.
[[nodiscard]] BoardProgress finished_board(const Card& card, const Conductors& conductors);
/// Everything up to and with `step`, nothing later; no move under way.
[[nodiscard]] BoardProgress board_after(const Card& card, const Conductors& conductors,
                                        const std::vector<Step>& steps, StepId step);
/// At move `move` (from 0) of `step`: earlier moves done, this one now. A `move` past the last shows the step
/// done.
[[nodiscard]] BoardProgress board_at(const Card& card, const Conductors& conductors,
                                     const std::vector<Step>& steps, StepId step, int move);

} // namespace lanternleaf
