// Helps: what would make a card last longer or look more even, found by trying it: fewer lights, another
// colour, a resistor, another cell. Exists so that advice is never canned: each line has been computed on
// this card, and what does not help is not said.
#pragma once

#include "conductors/conductors.h"
#include "life/life.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

enum class HelpKind { fewer_lights, other_colour, resistor, other_cell };

/// One change that was tried, against the card as it is. Typical LEDs; the shorter-lived maker's cell;
/// pressed or left on as the holder has it.
struct Help {
    HelpKind kind = HelpKind::fewer_lights;
    std::vector<int> leds; ///< which LEDs it is about; empty for a cell
    std::string type;      ///< the LED or cell type to take instead; empty for the others
    double ohm = 0.0;      ///< of a resistor in series with each of `leds`
    /// Hours of light until the first light is plainly dim, judged for both by the card as it is: half as
    /// bright, to the eye, as that LED's fresh light there, at least that of 1 mA. Lights that are dark from
    /// the start count: 0 h.
    double before_h = 0.0;
    double after_h = 0.0;
    /// Least ratio of neighbouring lights' intensities on a fresh cell (evenness.h).
    double before_ratio = 1.0;
    double after_ratio = 1.0;
    /// The fresh light of the LED that loses most, as the eye takes it, against before; at most 1.
    double fresh_seen = 1.0;
    bool estimate = false;     ///< the cell's figures are scaled ones
    bool other_holder = false; ///< the cell does not fit the card's holder
    double score = 0.0;        ///< octaves of hours gained and of evenness gained
    std::string sentence;
};

struct HelpOptions {
    double celsius = 23.0;
    double press_s = 5.0;
    double most_h = 3000.0;
    int most = 6; ///< how many to return
};

/// Best first; of each kind at most two. Empty when nothing tried makes 5 % more hours or evenness, or when
/// the card has no light.
[[nodiscard]] std::vector<Help> what_helps(const Card& card, const Parts& parts, const Conductors& conductors,
                                           const HelpOptions& options = {}, const Words& words = english());

[[nodiscard]] const char* name_of(HelpKind kind);

} // namespace lanternleaf
