// The named screens of the Draw place, for pictures and tests.
#pragma once

#include "frame/frame.h"

namespace lanternleaf {

/// "draw" (the card's plan), "draw/empty", "draw/lights" (lights and nothing laid), "draw/laying",
/// "draw/part", "draw/strip", "draw/fault", "draw/suggest", "draw/card", "draw/box", "draw/box-measure".
/// False: no such one.
[[nodiscard]] bool show_draw(App& app, const std::string& name, const std::string& card_path);

} // namespace lanternleaf
