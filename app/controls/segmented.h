// Segmented: two to four choices side by side of which one holds.
// Exists for views of one thing (front or traces, lit or dim or dark) where a tap should show the other at
// once.
#pragma once

#include <span>

#include "controls/ui.h"

namespace lanternleaf {

struct Segment {
    std::string label{};
    Icon icon = Icon::None;
    std::string name{}; ///< last part of the target's name; the segment's number when empty
};

/// True when another segment was chosen; `index` is then the new one. Targets NAME/0, NAME/1 … or NAME/name.
bool segmented(Ui& ui, std::string_view name, const Rect& r, std::span<const Segment> segments, int& index);
[[nodiscard]] float segmented_width(const Ui& ui, std::span<const Segment> segments);

} // namespace lanternleaf
