#include "sheets/flow.h"

namespace lanternleaf {

std::vector<Page> flow_pages(const std::vector<Block>& blocks, Columns columns, Paper paper,
                             const SheetHead& head, const Lettering& lettering) {
    std::vector<Page> pages;
    Box content;
    int column = 0;
    double y = 0.0;
    const auto next_page = [&] {
        FramedPage framed = framed_page(paper, false, head, lettering);
        content = framed.content;
        pages.push_back(std::move(framed.page));
        column = 0;
        y = content.min.y;
    };
    next_page();
    for (std::size_t i = 0; i < blocks.size();) {
        // A heading goes with all that must follow it.
        std::size_t end = i + 1;
        double height = blocks[i].height_mm;
        for (; end < blocks.size() && blocks[end - 1].with_next; ++end) {
            height += blocks[end].height_mm;
        }
        if (y + height > content.max.y && y > content.min.y) {
            y = content.min.y;
            if (++column == columns.count) {
                next_page();
            }
        }
        const double x = content.min.x + column * (columns.width_mm(content) + columns.gap_mm);
        for (; i < end; ++i) {
            place(blocks[i].marks, {{x, y}, 1.0, false}, pages.back().marks);
            y += blocks[i].height_mm;
        }
    }
    return pages;
}

std::vector<Page> flow(const std::vector<Block>& blocks, Columns columns, Paper paper, const SheetHead& head,
                       const Lettering& lettering, const Words& words) {
    std::vector<Page> pages = flow_pages(blocks, columns, paper, head, lettering);
    number_pages(pages, head, lettering, words);
    return pages;
}

} // namespace lanternleaf
