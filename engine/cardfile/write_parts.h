// Write parts: the parts object as a tree, shared by the parts file and a card's own "parts". Private to this
// module.
#pragma once

#include "card/parts.h"
#include "cardfile/json_tree.h"
#include "geometry/vec2.h"

namespace lanternleaf::cardfile {

/// Appends the members of a parts object, unknown keys last.
void append_parts(Tree& object, const Parts& parts);
[[nodiscard]] Tree pair_tree(Vec2 pair);

} // namespace lanternleaf::cardfile
