#include "sheets/paper.h"

namespace lanternleaf {

namespace {

constexpr double kFoot_mm = 5.0;
constexpr double kHeadRoom_mm = 15.5;

} // namespace

Vec2 size_of(Paper paper, bool landscape) {
    const Vec2 size = paper == Paper::a4 ? Vec2{210.0, 297.0} : Vec2{215.9, 279.4};
    return landscape ? Vec2{size.y, size.x} : size;
}

const char* name_of(Paper paper) {
    return paper == Paper::a4 ? "A4" : "US letter";
}

FramedPage framed_page(Paper paper, bool landscape, const SheetHead& head, const Lettering& lettering) {
    FramedPage made;
    made.page.size_mm = size_of(paper, landscape);
    PagePen pen(made.page.marks);
    const double left = kMargin_mm;
    const double right = made.page.size_mm.x - kMargin_mm;
    const double sheet_width = lettering.width_mm(head.sheet, kTitle_mm, true);
    pen.text({left, kMargin_mm + 5.4}, head.sheet, kTitle_mm, true);
    const double room = right - left - sheet_width - 8.0;
    pen.text({right, kMargin_mm + 5.4}, lettering.fitted(clean_text(head.card, 200), kHead_mm, room),
             kHead_mm, false, TextAlign::right, grey(0.2));
    pen.text({left, kMargin_mm + 10.8}, lettering.fitted(head.note, kBody_mm, right - left), kBody_mm, false,
             TextAlign::left, grey(0.2));
    pen.line({left, kMargin_mm + 13.2}, {right, kMargin_mm + 13.2}, {0.3, kBlack, {}});
    made.content = {{left, kMargin_mm + kHeadRoom_mm}, {right, made.page.size_mm.y - kMargin_mm - kFoot_mm}};
    return made;
}

void number_pages(std::vector<Page>& pages, const SheetHead& head, const Lettering& lettering,
                  const Words& words) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        Page& page = pages[i];
        PagePen pen(page.marks);
        const double foot = page.size_mm.y - kMargin_mm;
        const std::string number =
            words("sheets.page_of", {{"sheet", head.sheet}, {"page", i + 1}, {"pages", pages.size()}});
        const double room = page.size_mm.x - 2.0 * kMargin_mm - lettering.width_mm(number, kSmall_mm) - 6.0;
        pen.text({page.size_mm.x - kMargin_mm, foot}, number, kSmall_mm, false, TextAlign::right, grey(0.3));
        pen.text({kMargin_mm, foot},
                 lettering.fitted("Lanternleaf · " + clean_text(head.card, 200), kSmall_mm, room), kSmall_mm,
                 false, TextAlign::left, grey(0.3));
    }
}

double draw_lines(PagePen& pen, const std::vector<std::string>& lines, Vec2 top_mm, double size_mm, bool bold,
                  Ink ink) {
    double baseline = top_mm.y + size_mm * 0.95;
    for (const std::string& line : lines) {
        pen.text({top_mm.x, baseline}, line, size_mm, bold, TextAlign::left, ink);
        baseline += size_mm * kLead;
    }
    return top_mm.y + height_of(lines.size(), size_mm);
}

double height_of(std::size_t lines, double size_mm) {
    return static_cast<double>(lines) * size_mm * kLead;
}

} // namespace lanternleaf
