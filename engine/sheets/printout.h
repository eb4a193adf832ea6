// Printout: the sheets a maker asked for, as one PDF. The one call that the app and the command line make.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "cardfile/prices.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "sheets/shopping.h"
#include "words/words.h"

#include <optional>
#include <string>

namespace lanternleaf {

struct PrintoutWish {
    Paper paper = Paper::a4;
    bool mirrored = false;
    bool with_template = true;
    bool with_steps = true;
    bool with_list = true;
    bool with_label = true;
    int cards = 1; ///< 1 to kMostCards
    std::optional<Prices> prices;
    PrintFonts fonts; ///< empty: the built-in face
};

struct Printout {
    std::string pdf; ///< the file's bytes; the same wish gives the same bytes
    int pages = 0;
    int template_pages = 0;
    int template_columns = 1;
    int template_rows = 1;
};

/// A Problem has no file name: the card's own is the caller's to add.
[[nodiscard]] Outcome<Printout> print_card(const Card& card, const Parts& parts, const PrintoutWish& wish,
                                           const Words& words = english());

} // namespace lanternleaf
