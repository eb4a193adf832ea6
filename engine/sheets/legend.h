// Legend: what the lines of the template mean. Internal to sheets/.
#pragma once

#include "sheets/lettering.h"
#include "sheets/page.h"
#include "words/words.h"

namespace lanternleaf {

inline constexpr double kLegendWidth_mm = 92.0;
inline constexpr double kLegendHeight_mm = 54.0;

void draw_legend(PagePen& pen, Vec2 corner_mm, const Lettering& lettering, const Words& words);

} // namespace lanternleaf
