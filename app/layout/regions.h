// Regions: where the parts of a screen lie, for each form: top bar, rail, card, tools, panel, action bar.
// Exists so that screens are arranged by one pure function that a test can check at every size and inset.
#pragma once

#include "layout/metrics.h"

namespace lanternleaf {

/// What a screen is made of. A part a screen does not have takes no room.
struct RegionWish {
    bool rail = false;        ///< the step rail or a tool bar under the top bar
    float rail_h = 0;         ///< 0: the metrics' rail
    bool actions = true;      ///< the action bar
    float actions_h = 0;      ///< 0: the metrics' action bar
    float panel_w = 520;      ///< landscape: the panel's width at a window of 1180
    float panel_h = 330;      ///< portrait: the panel's height at 100 % text
    float phone_card_h = 270; ///< phone: what the card gets; the panel takes the rest
};

/// Rectangles in points. Bars reach to the window's edges; their content keeps clear of the insets by itself:
/// use content() for what is drawn in a bar.
struct Regions {
    Form form = Form::Landscape;
    Rect window;
    Rect top;
    Rect rail; ///< empty when not wished
    Rect page; ///< all between the bars
    Rect card; ///< the card with its ruler, legend and tools
    Rect panel;
    Rect actions; ///< empty when not wished
    Insets insets;

    /// The part of a bar or page that no notch or rounded corner covers.
    [[nodiscard]] Rect content(const Rect& bar) const;
};

/// Divides the window. Landscape: card left, panel right (520 to 600 wide, the rest to the card, at most 1600
/// in all); portrait: card above panel; phone: the same, tighter. All regions lie inside the window and do
/// not overlap.
[[nodiscard]] Regions make_regions(const Metrics& metrics, const RegionWish& wish);

} // namespace lanternleaf
