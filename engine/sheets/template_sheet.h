// Template sheet: the card's plan on paper at true size, to lay under, trace from or prick through.
// Exists because a maker without a screen to trace from needs every pad where it belongs, and needs to see at
// once when a printer has shrunk it: so each page carries a bar of 100 mm and one a bank card's outline.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "words/words.h"

#include <optional>

namespace lanternleaf {

/// ISO/IEC 7810 ID-1: 85.60 x 53.98 mm, corners of 3.18 mm radius (the standard's figures, from memory).
inline constexpr Vec2 kBankCard_mm{85.60, 53.98};
inline constexpr double kBankCardRadius_mm = 3.18;
inline constexpr double kCheckBar_mm = 100.0;

/// What one template page shows and where, in page millimetres; for tests and for whoever draws on top.
struct TemplateView {
    std::optional<Placement> plan;   ///< sheet to page; empty on a page without plan
    Box window;                      ///< page box the plan shows in
    std::vector<Vec2> crosses_mm;    ///< registration crosses
    Vec2 bar_from_mm;                ///< left end of the check bar's middle line
    std::optional<Box> bank_card_mm; ///< where the outline stands
    int column = 0;                  ///< of a tile
    int row = 0;
};

struct TemplateSheet {
    std::vector<Page> pages;
    std::vector<TemplateView> views; ///< one a page
    int columns = 1;                 ///< of tiles
    int rows = 1;
};

/// One page where the card fits (upright or across), else tiles with a page that shows how they go together.
/// A Problem when it would take more than kMostTiles pages. Mirrored: as seen through the sheet from behind.
inline constexpr int kMostTiles = 40;
[[nodiscard]] Outcome<TemplateSheet> template_sheet(const Card& card, const Parts& parts, Paper paper,
                                                    bool mirrored, const Lettering& lettering,
                                                    const Words& words = english());

} // namespace lanternleaf
