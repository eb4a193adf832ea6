// Plan drawing: a card's plan at true size as printed marks, in the sheet's own millimetres.
// Exists so that the template, its tiles and its mirror image are one drawing placed differently.
#pragma once

#include "card/parts.h"
#include "conductors/conductors.h"
#include "sheets/lettering.h"
#include "sheets/page.h"
#include "words/words.h"

#include <vector>

namespace lanternleaf {

/// A band of foam: its centre line; kFoamBand_mm wide (what step 7 has the maker cut).
struct FoamBand {
    Vec2 from_mm;
    Vec2 to_mm;
    int layers = 1;
};

inline constexpr double kFoamBand_mm = 5.0;

/// The bands as the steps lay them.
[[nodiscard]] std::vector<FoamBand> foam_bands(const Card& card, const Parts& parts);

/// Sheet outline with rulers outside it, folds, keep-outs, foam, strips, patches, holder, pads and names.
/// Strips of the two sides differ in four ways: sign, name, line, grey.
[[nodiscard]] std::vector<PageMark> draw_plan(const Card& card, const Parts& parts,
                                              const Lettering& lettering, const Words& words);

/// What draw_plan covers: the sheet and the rulers along its top and left edge.
[[nodiscard]] Box plan_bounds(const Card& card);

} // namespace lanternleaf
