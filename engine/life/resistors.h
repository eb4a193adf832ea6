// Resistors: a standard value that gives a starved colour its share. Exists because a red light beside a blue
// one takes nearly all the current of a cell, and one resistor at the red brings the blue back.
#pragma once

#include "conductors/conductors.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// Values resistors are sold in: the E12 series of IEC 60063, in ohm, from `low` to `high`.
[[nodiscard]] std::vector<double> e12_values(double low_ohm, double high_ohm);

/// Put `ohm` in series with each of `leds` (all of one type).
struct ResistorSuggestion {
    std::vector<int> leds;         ///< indices into Card::leds: the ones that take too much
    int starved = -1;              ///< the LED that gains most
    double ohm = 0.0;              ///< E12, in addition to what is there
    std::vector<double> before_mA; ///< every LED of the card, fresh cell, pressed
    std::vector<double> after_mA;  ///< with this suggestion and those before it
    std::string sentence;
};

/// Empty when no colour starves another: an LED below 1 mA while one of another type takes four times its
/// current or more. The value is the one that leaves the weakest LED of the card the most current. A second
/// suggestion stands on top of the first.
[[nodiscard]] std::vector<ResistorSuggestion> suggest_resistors(const Card& card, const Parts& parts,
                                                                const Conductors& conductors,
                                                                const Words& words = english());

} // namespace lanternleaf
