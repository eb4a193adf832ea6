#include "sheets/template_sheet.h"

#include "sheets/legend.h"
#include "sheets/plan_drawing.h"
#include "sheets/symbols.h"
#include "sheets/tiling.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr double kBarRow_mm = 10.0; // the check bar's band above the plan
constexpr double kGap_mm = 6.0;

struct Maker {
    const Card& card;
    const Parts& parts;
    Paper paper;
    bool mirrored;
    const Lettering& lettering;
    const Words& words;
    std::vector<PageMark> plan;
    Box bounds; ///< of the plan, in drawing space: mirrored already

    [[nodiscard]] SheetHead head() const {
        return {
            card.title, words(mirrored ? "sheets.template_mirrored" : "sheets.template"),
            words(mirrored ? "sheets.template_note_mirrored" : "sheets.template_note",
                  {{"width", words.mm(card.sheet.width_mm)}, {"height", words.mm(card.sheet.height_mm)}})};
    }

    [[nodiscard]] FramedPage page(bool landscape) const {
        return framed_page(paper, landscape, head(), lettering);
    }

    /// The content box less the bar's band.
    [[nodiscard]] static Box plan_room(const Box& content) {
        return {content.min + Vec2{0, kBarRow_mm}, content.max};
    }
};

void draw_bar(PagePen& pen, const Box& content, const Maker& maker, TemplateView& view) {
    view.bar_from_mm = content.min + Vec2{0.5, 2.5};
    draw_check_bar(pen, view.bar_from_mm - Vec2{0, 1.5}, kCheckBar_mm);
    const double x = view.bar_from_mm.x + kCheckBar_mm + 4.0;
    const bool inches = maker.words.unit() == LengthUnit::inch;
    const std::string length = inches ? "100 mm = " + maker.words.mm(kCheckBar_mm) : "100 mm";
    const std::string text = maker.words("sheets.check_bar", {{"length", length}});
    draw_lines(pen, maker.lettering.lines(text, kSmall_mm, content.max.x - x, false, 2),
               {x, content.min.y - 1.0}, kSmall_mm);
}

void draw_bank_card(PagePen& pen, Vec2 corner_mm, const Maker& maker, TemplateView& view) {
    view.bank_card_mm = Box{corner_mm, corner_mm + kBankCard_mm};
    pen.round_box(corner_mm, kBankCard_mm, kBankCardRadius_mm, Stroke{0.2, kBlack, {}}, {});
    const Vec2 at = corner_mm + Vec2{6, 16};
    const double y = draw_lines(pen, {maker.words("sheets.bank_card")}, at, kHead_mm, true);
    draw_lines(pen,
               maker.lettering.lines(maker.words("sheets.bank_card_how"), kSmall_mm, kBankCard_mm.x - 12.0),
               {at.x, y + 1.0}, kSmall_mm);
}

void place_plan(const Maker& maker, const Box& window, Vec2 drawing_from, Page& page, TemplateView& view) {
    PagePen pen(page.marks);
    view.plan = Placement{window.min - drawing_from, 1.0, maker.mirrored};
    view.window = window;
    pen.clip(window);
    std::vector<PageMark> placed;
    place(maker.plan, *view.plan, placed);
    for (PageMark& mark : placed) { // the other tiles' marks would only make the file large
        if (bounds(mark).touches(window)) {
            page.marks.push_back(std::move(mark));
        }
    }
    pen.clip_end();
}

// What goes below or beside the plan, when there is room for it.
bool draw_aids(const Maker& maker, const Box& room, Page& page, TemplateView& view) {
    const Vec2 size = room.max - room.min;
    if (size.x < kBankCard_mm.x || size.y < kBankCard_mm.y) {
        return false;
    }
    PagePen pen(page.marks);
    const bool wide = size.x >= kBankCard_mm.x + kGap_mm + kLegendWidth_mm;
    const bool tall = size.y >= kBankCard_mm.y + kGap_mm + kLegendHeight_mm;
    if (!wide && !tall) {
        return false;
    }
    draw_bank_card(pen, room.min + Vec2{0.5, 0}, maker, view);
    const Vec2 legend = wide ? Vec2{room.min.x + kBankCard_mm.x + kGap_mm, room.min.y}
                             : Vec2{room.min.x, room.min.y + kBankCard_mm.y + kGap_mm};
    draw_legend(pen, legend, maker.lettering, maker.words);
    return true;
}

// All on one page, upright if it can be.
bool one_page(const Maker& maker, TemplateSheet& sheet) {
    const Vec2 size = maker.bounds.max - maker.bounds.min;
    for (const bool with_aids : {true, false}) {
        for (const bool landscape : {false, true}) {
            FramedPage framed = maker.page(landscape);
            const Box room = Maker::plan_room(framed.content);
            const Vec2 free = room.max - room.min;
            if (size.x > free.x || size.y > free.y) {
                continue;
            }
            TemplateView view;
            PagePen pen(framed.page.marks);
            draw_bar(pen, framed.content, maker, view);
            place_plan(maker, {room.min, room.min + size}, maker.bounds.min, framed.page, view);
            const Box below{{room.min.x, room.min.y + size.y + kGap_mm}, room.max};
            const Box beside{{room.min.x + size.x + kGap_mm, room.min.y}, room.max};
            const bool aided =
                draw_aids(maker, below, framed.page, view) || draw_aids(maker, beside, framed.page, view);
            if (with_aids && !aided) {
                continue;
            }
            sheet.pages.push_back(std::move(framed.page));
            sheet.views.push_back(view);
            return true;
        }
    }
    return false;
}

std::string tile_name(const Tile& tile) {
    std::string name(1, static_cast<char>('A' + tile.row % 26));
    return name.append(std::to_string(tile.column + 1));
}

// Bank card, legend, and (with tiles) how the pages go together.
void aid_page(const Maker& maker, const Tiling* tiling, TemplateSheet& sheet) {
    FramedPage framed = maker.page(false);
    TemplateView view;
    PagePen pen(framed.page.marks);
    draw_bar(pen, framed.content, maker, view);
    Box room = Maker::plan_room(framed.content);
    draw_aids(maker, room, framed.page, view);
    if (tiling != nullptr) {
        double y = room.min.y + std::max(kBankCard_mm.y, kLegendHeight_mm) + kGap_mm;
        y = draw_lines(pen, {maker.words("sheets.tiles")}, {room.min.x, y}, kHead_mm, true);
        y = draw_lines(
                pen,
                maker.lettering.lines(maker.words("sheets.tiles_how"), kBody_mm, room.max.x - room.min.x),
                {room.min.x, y + 1.0}, kBody_mm) +
            4.0;
        const Vec2 step = tiling->tiles.front().window.max - tiling->tiles.front().window.min -
                          Vec2{kTileOverlap_mm, kTileOverlap_mm};
        const Vec2 whole{step.x * tiling->columns + kTileOverlap_mm, step.y * tiling->rows + kTileOverlap_mm};
        const double scale = std::min((room.max.x - room.min.x) / whole.x, (room.max.y - y) / whole.y);
        const Placement map{Vec2{room.min.x, y} - maker.bounds.min * scale, scale, false};
        const Placement plan{map.shift_mm, scale, maker.mirrored};
        std::vector<PageMark> small;
        PagePen small_pen(small);
        small_pen.box({0, 0}, {maker.card.sheet.width_mm, maker.card.sheet.height_mm},
                      Stroke{0.4 / scale, kBlack, {}}, grey(0.93));
        place(small, plan, framed.page.marks);
        for (const Tile& tile : tiling->tiles) {
            const Vec2 from = map(tile.window.min);
            const Vec2 to = map(tile.window.max);
            pen.box(from, to - from, Stroke{0.2, grey(0.3), {2.0, 1.0}}, {});
            pen.text((from + to) * 0.5 + Vec2{0, 2}, tile_name(tile), kTitle_mm, true, TextAlign::centre);
        }
    }
    sheet.pages.push_back(std::move(framed.page));
    sheet.views.push_back(view);
}

void tile_page(const Maker& maker, const Tile& tile, bool landscape, TemplateSheet& sheet) {
    FramedPage framed = maker.page(landscape);
    const Box room = Maker::plan_room(framed.content);
    TemplateView view;
    view.column = tile.column;
    view.row = tile.row;
    PagePen pen(framed.page.marks);
    draw_bar(pen, framed.content, maker, view);
    place_plan(maker, room, tile.window.min, framed.page, view);
    const auto on_page = [&](Vec2 p) { return p + room.min - tile.window.min; };
    pen.clip(room);
    for (const auto& [from, to] : tile.seams) {
        pen.line(on_page(from), on_page(to), {0.15, grey(0.35), {3.0, 2.0}});
    }
    pen.clip_end();
    for (const Vec2 cross : tile.crosses) {
        draw_registration(pen, on_page(cross));
        view.crosses_mm.push_back(on_page(cross));
    }
    pen.text({framed.content.max.x, framed.content.min.y + 7.8},
             maker.words("sheets.tile", {{"name", tile_name(tile)}}), kHead_mm, true, TextAlign::right);
    sheet.pages.push_back(std::move(framed.page));
    sheet.views.push_back(view);
}

} // namespace

Outcome<TemplateSheet> template_sheet(const Card& card, const Parts& parts, Paper paper, bool mirrored,
                                      const Lettering& lettering, const Words& words) {
    Maker maker{card, parts, paper, mirrored, lettering, words, {}, plan_bounds(card)};
    if (mirrored) {
        maker.bounds = {{-maker.bounds.max.x, maker.bounds.min.y}, {-maker.bounds.min.x, maker.bounds.max.y}};
    }
    Tiling best; // the page's way round that takes fewer pages
    bool landscape = false;
    for (const bool across : {false, true}) {
        const Box room = Maker::plan_room(maker.page(across).content);
        Tiling tried = tile(maker.bounds, room.max - room.min);
        if (!across || tried.columns * tried.rows < best.columns * best.rows) {
            best = std::move(tried);
            landscape = across;
        }
    }
    if (best.columns * best.rows > kMostTiles) {
        return Problem{"", "/sheet",
                       "expected a sheet that prints on at most " + std::to_string(kMostTiles) +
                           " pages of " + name_of(paper) + ", found one that takes " +
                           std::to_string(best.columns * best.rows)};
    }
    maker.plan = draw_plan(card, parts, lettering, words);
    TemplateSheet sheet;
    if (best.tiles.size() == 1) {
        one_page(maker, sheet);
        if (!sheet.views.front().bank_card_mm) {
            aid_page(maker, nullptr, sheet);
        }
    } else {
        sheet.columns = best.columns;
        sheet.rows = best.rows;
        aid_page(maker, &best, sheet);
        for (const Tile& one : best.tiles) {
            tile_page(maker, one, landscape, sheet);
        }
    }
    number_pages(sheet.pages, maker.head(), lettering, words);
    return sheet;
}

} // namespace lanternleaf
