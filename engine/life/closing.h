// Closing: the card folded shut: how thick it is, whether the foam keeps the switch off and still lets a
// press through, what the post will make of it, and what to do before it goes. Exists so that the last step
// and the preview state the same figures.
#pragma once

#include "card/card.h"
#include "life/letters.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct ClosingOptions {
    double stock_mm = 0.25; ///< one layer of card: 300 g/m2, about 0.25-0.3 mm; ask the maker to measure ten
    int layers = 4;         ///< front, the sheet and its cover, back: common practice
    double spare_mm = 0.2;  ///< glue and air, as the finding mail-thick has it
    double envelope_mm = 10.0; ///< an envelope is so much larger than the card, both ways (common practice)
};

struct LetterFit {
    const LetterClass* letter = nullptr;
    bool fits = false;
    std::string why_not; ///< "", or the first limit that is passed
};

/// How the switch stands in the closed card.
enum class SwitchRisk {
    none,    ///< foam holds the flap off by half a millimetre or more
    close,   ///< by less: a weight in the post could close it
    pressed, ///< foam lower than holder and cell: on all the time
    no_foam, ///< nothing holds the flap off
    slide    ///< a ready-made holder: off when switched off
};

struct Closing {
    double holder_mm = 0.0;    ///< holder and cell
    double foam_mm = 0.0;      ///< 0 without foam
    double foam_low_mm = 0.0;  ///< the window: foam may be this high...
    double foam_high_mm = 0.0; ///< ...to this
    bool foam_fits = false;
    int foam_layers =
        0; ///< layers of the card's own foam that would fit; 0 when none does or there is no foam
    double closed_mm = 0.0;
    double width_mm = 0.0; ///< folded shut
    double height_mm = 0.0;
    SwitchRisk risk = SwitchRisk::none;
    std::vector<LetterFit> letters;  ///< in the table's order; weight is not known and not judged
    std::vector<std::string> advice; ///< sentences, most important first
};

[[nodiscard]] Closing close_up(const Card& card, const Parts& parts, const ClosingOptions& options = {},
                               const Words& words = english());

[[nodiscard]] const char* name_of(SwitchRisk risk);

} // namespace lanternleaf
