// Paper: the sheets a printer takes, and the frame every printed page shares: head, foot, margins.
// Exists so that each sheet is laid out in a content box and none draws where printers cannot.
#pragma once

#include "sheets/lettering.h"
#include "sheets/page.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// A4: 210 x 297 mm (ISO 216). US letter: 8.5 x 11 in = 215.9 x 279.4 mm.
enum class Paper { a4, letter };

[[nodiscard]] Vec2 size_of(Paper paper, bool landscape);
[[nodiscard]] const char* name_of(Paper paper); ///< "A4", "US letter"

/// Clear of what desktop printers leave blank: they reach within 3 to 6.4 mm of the edge (from memory).
inline constexpr double kMargin_mm = 10.0;

/// Text sizes (em), for reading at arm's length on a table.
inline constexpr double kTitle_mm = 6.0;
inline constexpr double kHead_mm = 5.0;
inline constexpr double kBody_mm = 3.7;
inline constexpr double kSmall_mm = 3.2;
inline constexpr double kLead = 1.28; ///< line to line, in ems

struct SheetHead {
    std::string card;  ///< the card's title
    std::string sheet; ///< "Template", "Steps", ...
    std::string note;  ///< one line under them
};

/// A page with its head drawn, and where content may go.
struct FramedPage {
    Page page;
    Box content;
};

[[nodiscard]] FramedPage framed_page(Paper paper, bool landscape, const SheetHead& head,
                                     const Lettering& lettering);
/// "Harbour lighthouse · Steps · page 2 of 5" at the foot of each page; call when all pages are there.
void number_pages(std::vector<Page>& pages, const SheetHead& head, const Lettering& lettering,
                  const Words& words = english());

/// Draws lines from `top_mm` (the top of the first line) down; returns the bottom of the last.
double draw_lines(PagePen& pen, const std::vector<std::string>& lines, Vec2 top_mm, double size_mm,
                  bool bold = false, Ink ink = kBlack);
/// What draw_lines takes.
[[nodiscard]] double height_of(std::size_t lines, double size_mm);

} // namespace lanternleaf
