#include "sheets/label_sheet.h"

#include "safety/audience.h"
#include "sheets/symbols.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kWidest_mm = 90.0;
constexpr double kNarrowest_mm = 40.0;
constexpr double kEdge_mm = 5.0; // of the card's back left free all round
constexpr double kPad_mm = 3.0;
constexpr double kBand_mm = 12.0;
constexpr Ink kOrange{1.0, 0.58, 0.05}; // black on it reads at 9 to 1
constexpr double kCellGap_mm = 6.0;

constexpr double kSignal_mm = 8.6; // the signal word's em, where the label is wide enough
constexpr double kLeast_mm = 2.6;
constexpr double kSignalAt_mm = kPad_mm + 11.0;

std::string cell_line(const Card& card, const Words& say) {
    return say(card.cell.count > 1 ? "sheets.label_cells" : "sheets.label_cell",
               {{"type", clean_text(card.cell.type, 40)}, {"count", card.cell.count}});
}

struct Wording {
    double width_mm;
    double size_mm;
    std::string signal; ///< "WARNING"
    double signal_mm;
    std::vector<std::string> caution;
    std::vector<std::string> burns;
    std::vector<std::string> cell;
    double height_mm;
};

Wording wording_for(const Card& card, const Lettering& lettering, const Words& say) {
    Wording words;
    words.width_mm = std::clamp(card.sheet.width_mm - 2.0 * kEdge_mm, kNarrowest_mm, kWidest_mm);
    words.size_mm = words.width_mm < 70.0 ? 2.9 : 3.6;
    const double column = words.width_mm - 2.0 * kPad_mm;
    words.signal = say("sheets.label_warning");
    const double room = words.width_mm - kSignalAt_mm - kPad_mm;
    words.signal_mm = std::min(kSignal_mm, room / lettering.width_mm(words.signal, 1.0, true));
    // A wordier language takes smaller letters before it outgrows a small card.
    for (;; words.size_mm -= 0.1) {
        words.caution = lettering.lines(back_label(say), words.size_mm, column, true);
        words.burns = lettering.lines(say("sheets.label_burns"), words.size_mm, column);
        words.cell = lettering.lines(cell_line(card, say), words.size_mm - 0.4, column);
        words.height_mm = kBand_mm + height_of(words.caution.size() + words.burns.size(), words.size_mm) +
                          height_of(words.cell.size(), words.size_mm - 0.4) + 3.5 + kPad_mm;
        if (words.height_mm <= card.sheet.height_mm || words.size_mm <= kLeast_mm) {
            break;
        }
    }
    return words;
}

void draw_label(PagePen& pen, Vec2 corner, const Wording& words) {
    const Vec2 size{words.width_mm, words.height_mm};
    pen.box(corner, {size.x, kBand_mm}, {}, kOrange);
    pen.round_box(corner, size, 0.0, Stroke{0.6, kBlack, {}}, {});
    pen.line(corner + Vec2{0, kBand_mm}, corner + Vec2{size.x, kBand_mm}, {0.6, kBlack, {}});
    // The triangle comes before the word, stands on its line and is at least as high as its letters.
    const double base = corner.y + 9.0;
    draw_warning_triangle(pen, {corner.x + kPad_mm + 4.4, base}, 7.4);
    pen.text({corner.x + kSignalAt_mm, base}, words.signal, words.signal_mm, true);
    double y = corner.y + kBand_mm + 1.5;
    y = draw_lines(pen, words.caution, {corner.x + kPad_mm, y}, words.size_mm, true) + 1.0;
    y = draw_lines(pen, words.burns, {corner.x + kPad_mm, y}, words.size_mm) + 1.0;
    draw_lines(pen, words.cell, {corner.x + kPad_mm, y}, words.size_mm - 0.4);
}

} // namespace

Vec2 label_size(const Card& card, const Lettering& lettering, const Words& say) {
    const Wording words = wording_for(card, lettering, say);
    return {words.width_mm, words.height_mm};
}

std::vector<Page> label_sheet(const Card& card, int cards, Paper paper, const Lettering& lettering,
                              const Words& say) {
    const SheetHead head{card.title, say("sheets.label"), say("sheets.label_note")};
    FramedPage framed = framed_page(paper, false, head, lettering);
    PagePen pen(framed.page.marks);
    const Wording words = wording_for(card, lettering, say);
    const Vec2 cell{words.width_mm + kCellGap_mm, words.height_mm + kCellGap_mm};
    const Vec2 room = framed.content.max - framed.content.min;
    const double foot = 18.0;
    const int across = std::max(1, static_cast<int>((room.x + kCellGap_mm - 3.0) / cell.x));
    const int down = std::max(1, static_cast<int>((room.y - foot) / cell.y));
    const int labels = std::min(cards, across * down);
    for (int i = 0; i < labels; ++i) {
        const Vec2 corner =
            framed.content.min + Vec2{1.5 + cell.x * (i % across), 2.0 + cell.y * (i / across)};
        pen.box(corner - Vec2{1.5, 1.5}, Vec2{words.width_mm + 3.0, words.height_mm + 3.0},
                Stroke{0.12, grey(0.4), {1.6, 1.2}}, {});
        draw_label(pen, corner, words);
    }
    const int rows = (labels + across - 1) / across;
    double y = framed.content.min.y + cell.y * rows + 2.0;
    if (labels < cards) {
        const std::string again =
            say("sheets.label_again", {{"times", (cards + labels - 1) / labels}, {"cards", cards}});
        y = draw_lines(pen, {again}, {framed.content.min.x, y}, kBody_mm, true);
    }
    draw_lines(pen, lettering.lines(say("sheets.label_not_safe"), kSmall_mm, room.x),
               {framed.content.min.x, y}, kSmall_mm);
    std::vector<Page> pages{std::move(framed.page)};
    number_pages(pages, head, lettering, say);
    return pages;
}

} // namespace lanternleaf
