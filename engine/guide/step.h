// Step and move: what the hands do, in which order, and what proves it.
// A card becomes seven steps; a step is a list of moves, each one action with one picture; a check is a
// reading to take (or a thing to look for) with the figure the engine expects. Made from the card, never
// written by hand.
#pragma once

#include "card/card.h"
#include "geometry/vec2.h"
#include "words/words.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

enum class StepId {
    mount_holder = 1,
    mark_pads,
    lay_negative,
    lay_positive,
    insulate,
    place_leds,
    pad_edges
};
inline constexpr int kStepCount = 7;

enum class MoveKind {
    measure,      ///< a position from two edges
    peel,         ///< backing off
    press,        ///< press down and burnish
    flap_way,     ///< which way the flap opens
    mark_pad,     ///< one LED's (or resistor's) two pads
    start_strip,  ///< where a strip begins
    run,          ///< a straight length of tape
    fold,         ///< fold and turn
    joint,        ///< lap onto a strip already there
    cut,          ///< cut the strip
    leave_tail,   ///< stop before a crossing, leave the rest loose
    patch,        ///< insulate
    carry_across, ///< take the tail over the patch and on
    place_resistor,
    place_led,
    adult_notice, ///< the coin-cell notice, confirmed by an adult
    cell_in,
    light_test,
    foam,
    close,
    label,
};

/// How a reading is taken.
enum class CheckKind {
    resistance, ///< ohm between two places, within low..high
    open,       ///< no path: the meter shows OL
    lights,     ///< which LEDs show, and how bright against each other
    volts,      ///< loaded voltage at the cell
    height,     ///< mm, by ruler
    look,       ///< something to see or feel; yes or no
};

struct LightExpectation {
    std::string led;
    std::string state;       ///< "lit", "dim", "dark"
    double brightness = 0.0; ///< against that LED at 5 mA
};

/// A reading with the figure to expect.
struct Check {
    std::string id; ///< stable within a build: "flap-to-L3+", "flap-to-bed"
    CheckKind kind = CheckKind::look;
    std::string from; ///< "bed", "flap", an LED pad "L3+"
    std::string to;
    double expected = 0.0; ///< SI unit of the kind: ohm, volt; mm for height
    double low = 0.0;
    double high = 0.0;
    std::vector<LightExpectation> lights; ///< for CheckKind::lights
    std::string title;                    ///< "flap to L3+"
    std::string expect_text;              ///< "0.1–0.6 Ω", "OL (no path)", "7 of 7 lit"
    std::string without_meter;            ///< what to look for, one sentence
    bool needed = true;                   ///< part of the step's proof; else only a help on the way
};

/// One thing the hands do.
struct Move {
    std::string id; ///< stable within a card: "3/N1/fold-2"
    MoveKind kind = MoveKind::press;
    std::string title;              ///< what to do now: "Fold right at the corner below L3"
    std::string sentence;           ///< one sentence of instruction with its numbers
    std::string why;                ///< one sentence
    std::vector<std::string> parts; ///< ids it is about
    std::vector<Vec2> path_mm;      ///< where on the sheet: the run, or the single place
    double length_mm = 0.0;         ///< tape or foam used by this move
    double turn_deg = 0.0;          ///< fold: positive turns right
    bool adult_only = false;
    std::optional<Check> check; ///< taken after this move
};

struct Step {
    StepId id = StepId::mount_holder;
    std::string title; ///< "Lay the negative trace"
    std::string goal;  ///< one line
    std::vector<Move> moves;
    std::vector<Check> proof; ///< what proves the step as a whole (besides the moves' checks)
};

/// A check of the step's proof or of one of its moves; null when it has none of that id.
[[nodiscard]] const Check* check_in(const Step& step, const std::string& id);

[[nodiscard]] std::string title_of(StepId step, const Words& words = english());
[[nodiscard]] const char* name_of(StepId step);    ///< "mount_holder"
[[nodiscard]] const char* name_of(MoveKind kind);  ///< "start_strip"
[[nodiscard]] const char* name_of(CheckKind kind); ///< "resistance"

} // namespace lanternleaf
