// Lens: a close-up of one place of the card for a verdict: the tape at 13 points a millimetre, a measured gap
// with its arrows, the repair drawn dashed, and names where they help.
#pragma once

#include "paint/board.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

struct LensDimension {
    Vec2 from_mm;
    Vec2 to_mm;
    std::string text; ///< "1.5 mm"
};

struct LensRepair {
    std::vector<Vec2> path_mm; ///< centre line of the tape to lay
    double width_mm = 5.0;
    std::string text; ///< "bridge, 15 mm of tape"
};

struct LensName {
    Vec2 at_mm; ///< the label stands above this place
    std::string text;
};

struct LensSpec {
    Vec2 centre_mm;
    std::optional<LensDimension> dimension;
    std::optional<LensRepair> repair;
    std::vector<LensName> names;
};

void draw_lens(Pen& pen, const Theme& theme, const Rect& frame, const BoardView& view, const LensSpec& spec,
               float label_em = 17.0f, float ppm = 13.0f);

} // namespace lanternleaf
