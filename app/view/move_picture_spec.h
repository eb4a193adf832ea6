// MovePictureSpec: what the picture of one move shows, taken from the move and the card. Exists so that the
// drawing needs no card and a test can read which picture belongs to which move. Pure.
#pragma once

#include "card/parts.h"
#include "guide/step.h"
#include "view/board_view.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct MovePictureSpec {
    MoveKind kind = MoveKind::press;
    Side side = Side::positive;
    bool fabric = false;
    bool turn_right = true;     ///< fold
    double heading_deg = 270.0; ///< the way the tape runs before the move (270: towards the top edge)
    bool on_flap = false;       ///< a strip that starts inside the flap; else on the bed or on another strip
    bool on_bed = false;
    double led_turn_deg = 0.0;
    LightTint tint = LightTint::warm;
    std::string from_left; ///< "23 mm": for measuring
    std::string from_top;
    std::string overlap;               ///< "5 mm": for joints
    std::string id;                    ///< of the LED, resistor or patch
    int layers = 1;                    ///< foam
    double flap_turn_deg = 90.0;       ///< the way the open flap points
    bool plus_up = true;               ///< cell: the + face is the one that is seen
    std::vector<std::string> captions; ///< one per frame: "1 Fold back"
};

[[nodiscard]] MovePictureSpec picture_of(const Move& move, const Card& card, const Parts& parts,
                                         const Words& words = english());

} // namespace lanternleaf
