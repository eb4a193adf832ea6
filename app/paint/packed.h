// packed: a colour as the drawing library takes it. For pen*.cpp only.
#pragma once

#include "paint/theme.h"

#include <imgui.h>

namespace lanternleaf {

[[nodiscard]] inline ImU32 packed(Colour c) {
    return IM_COL32(c.r, c.g, c.b, c.a);
}

} // namespace lanternleaf
