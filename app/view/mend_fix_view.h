// Mend fix view: how a fault is mended, as the picture of the move that does it, and the strip of tape that
// bridges a crack. Exists so that "what to do" is seen and not only read. Pure.
#pragma once

#include "mend/session.h"
#include "view/move_picture_spec.h"

#include <optional>
#include <vector>

namespace lanternleaf {

/// The move of the hands that mends it; empty where none of the known moves does.
[[nodiscard]] std::optional<MovePictureSpec> fix_picture(const Cause& cause, const Card& card,
                                                         const Parts& parts, const Words& words = english());

/// Centre line of the tape to lay over a crack or a loose joint, along its strip; empty when none is laid.
[[nodiscard]] std::vector<Vec2> bridge_path(const Cause& cause, const Card& card);

} // namespace lanternleaf
