// Flow: blocks of marks set one below another, column after column, page after page.
// Exists so that the step sheet and the list only say what stands in a block, not where it lands.
#pragma once

#include "sheets/paper.h"

namespace lanternleaf {

/// Drawn from its own top-left corner. A block higher than a column is set alone and runs off the foot; keep
/// blocks small.
struct Block {
    std::vector<PageMark> marks;
    double height_mm = 0.0;
    bool with_next = false; ///< a heading: not left alone at a column's foot
};

struct Columns {
    int count = 1;
    double gap_mm = 8.0;

    [[nodiscard]] double width_mm(const Box& content) const {
        return (content.max.x - content.min.x - gap_mm * (count - 1)) / count;
    }
};

/// Not numbered yet: for a document that goes on after them.
[[nodiscard]] std::vector<Page> flow_pages(const std::vector<Block>& blocks, Columns columns, Paper paper,
                                           const SheetHead& head, const Lettering& lettering);

[[nodiscard]] std::vector<Page> flow(const std::vector<Block>& blocks, Columns columns, Paper paper,
                                     const SheetHead& head, const Lettering& lettering, const Words& words);

} // namespace lanternleaf
