// Light: the parts of the Light sheet that its two files share.
#pragma once

#include "screens/screen.h"
#include "view/light_view.h"

namespace lanternleaf {

[[nodiscard]] Colour glow_colour(const Rgb& glow);

/// Plot, shares, hours and helps from y down, as wide as r. Gives their height.
float draw_light_figures(Screen& screen, const LightView& view, const Rect& r, float y);

} // namespace lanternleaf
