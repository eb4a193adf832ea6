// LearnState: a test of a part under way: which part, how far, what was answered. Plain data; only
// update_learn.cpp changes it. What was learnt lives in files of the library, never here alone.
#pragma once

#include "learn/own_parts.h"

#include <optional>
#include <string>

namespace lanternleaf {

/// What the sheet shows. `led_*` end at a mark's meaning, `tape_*` at a joint's figure, `foam_*` at a height.
enum class LearnStage {
    list,         ///< the three tests and what was learnt so far
    choose,       ///< which light or tape it is
    led_mark,     ///< what the mark looks like
    led_touch,    ///< across the cell: where the marked side lay when it lit. With an adult.
    led_colour,   ///< as planned, or another
    tape_stick,   ///< two strips: overlap, and how far apart they are tried
    tape_meter,   ///< is there a meter?
    tape_leads,   ///< tips together
    tape_reading, ///< end to end
    tape_light,   ///< a light through the joint. With an adult.
    foam_stack,   ///< layers and height
    foam_squeeze, ///< pressed down
    done,
};

/// What the maker said so far.
struct LearnAnswers {
    TouchTest touch;
    TwoStripTest strips;
    FoamTest foam{4, 6.0, 0.0};
};

struct LearnState {
    LearnStage stage = LearnStage::list;
    PartSort sort = PartSort::led;
    LearnAnswers answers;
    std::string typed;                 ///< on the keypad
    bool adult = false;                ///< an adult confirmed the notice for this test
    std::optional<LearnStage> waiting; ///< opens once an adult has confirmed
    bool lamp_failed = false;          ///< it lit neither way round
    std::optional<Learnt> learnt;      ///< the result, kept
    std::string planned;               ///< the type it was taken for
    OwnParts own;                      ///< of the library, as last read
    Parts known;                       ///< to choose from
};

} // namespace lanternleaf
