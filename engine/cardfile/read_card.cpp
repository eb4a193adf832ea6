#include "cardfile/cardfile.h"
#include "cardfile/json_cursor.h"
#include "cardfile/known_types.h"
#include "cardfile/read_laid.h"
#include "cardfile/read_parts.h"

#include <cmath>

namespace lanternleaf {

namespace cardfile {

namespace {

constexpr std::size_t kMostFolds = 500;
constexpr std::size_t kMostKeepouts = 500;
constexpr std::size_t kMostCorners = 500;
constexpr int kMostCells = 10;
constexpr int kMostLayers = 100;

void read_audience(const Cursor& cursor, Card& card) {
    Members members(cursor);
    const auto word = [](Audience audience) { return std::make_pair(name_of(audience), audience); };
    card.audience = members.need("who").choice<Audience>(
        {word(Audience::adults), word(Audience::children), word(Audience::small_children),
         word(Audience::school_class), word(Audience::sale)});
    card.audience_given = true;
    card.audience_extras.json = members.extras();
}

FoldLine read_fold(const Cursor& cursor) {
    Members members(cursor);
    FoldLine fold;
    fold.from_mm = members.need("from_mm").point();
    const Cursor to = members.need("to_mm");
    fold.to_mm = to.point();
    if (fold.from_mm == fold.to_mm) {
        to.refuse("another place than \"from_mm\"");
    }
    fold.extras.json = members.extras();
    return fold;
}

Keepout read_keepout(const Cursor& cursor) {
    Members members(cursor);
    Keepout keepout;
    keepout.why = members.need("why").text();
    const Cursor outline = members.need("outline_mm");
    keepout.outline_mm = outline.points(3, kMostCorners);
    double twice_area_mm2 = 0.0;
    for (std::size_t i = 0; i < keepout.outline_mm.size(); ++i) {
        const Vec2 next = keepout.outline_mm[(i + 1) % keepout.outline_mm.size()];
        twice_area_mm2 += cross(keepout.outline_mm[i], next);
    }
    if (std::fabs(twice_area_mm2) < 1e-6) {
        outline.refuse_saying("expected an outline round an area, found one without");
    }
    keepout.extras.json = members.extras();
    return keepout;
}

// A picture is only ever taken from beside the card: a file that someone sent must not reach elsewhere.
Art read_art(const Cursor& cursor) {
    Members members(cursor);
    Art art;
    const Cursor file = members.need("file");
    art.file = file.name();
    if (art.file.find_first_of("/\\:") != std::string::npos || art.file.find("..") != std::string::npos ||
        art.file == ".") {
        file.refuse("the name of a file beside the card, without folders");
    }
    art.at_mm = members.need("at_mm").point();
    art.width_mm = members.need("width_mm").number(kSize);
    art.extras.json = members.extras();
    return art;
}

Sheet read_sheet(const Cursor& cursor) {
    Members members(cursor);
    Sheet sheet;
    sheet.width_mm = members.need("width_mm").number(kSize);
    sheet.height_mm = members.need("height_mm").number(kSize);
    if (const auto folds = members.maybe("folds")) {
        for (const Cursor& item : folds->items(kMostFolds, "folds")) {
            sheet.folds.push_back(read_fold(item));
        }
    }
    if (const auto keepouts = members.maybe("keepouts")) {
        for (const Cursor& item : keepouts->items(kMostKeepouts, "keep-outs")) {
            sheet.keepouts.push_back(read_keepout(item));
        }
    }
    if (const auto art = members.maybe("art")) {
        sheet.art = read_art(*art);
    }
    sheet.extras.json = members.extras();
    return sheet;
}

CellChoice read_cell(const Cursor& cursor, const Parts& own, const Parts& shipped) {
    Members members(cursor);
    CellChoice cell;
    const Cursor type = members.need("type");
    cell.type = type.name();
    require_primary(type, cell.type);
    require_known(type, cell.type, "cell", own.cells, &shipped.cells);
    cell.count = members.need("count").integer(1, kMostCells);
    cell.face_down = members.need("face_down")
                         .choice<CellFace>({{name_of(CellFace::negative), CellFace::negative},
                                            {name_of(CellFace::positive), CellFace::positive}});
    cell.extras.json = members.extras();
    return cell;
}

HolderChoice read_holder(const Cursor& cursor, const Parts& own, const Parts& shipped) {
    Members members(cursor);
    HolderChoice holder;
    const Cursor type = members.need("type");
    holder.type = type.name();
    require_known(type, holder.type, "holder", own.holders, &shipped.holders);
    holder.at_mm = members.need("at_mm").point();
    holder.turn_deg = members.need("turn_deg").number(kTurn);
    holder.extras.json = members.extras();
    return holder;
}

Foam read_foam(const Cursor& cursor) {
    Members members(cursor);
    Foam foam;
    foam.thickness_mm = members.need("thickness_mm").number(kSize);
    foam.layers = members.need("layers").integer(1, kMostLayers);
    const auto word = [](Edge edge) { return std::make_pair(name_of(edge), edge); };
    for (const Cursor& item : members.need("edges").items(4, "edges")) {
        const Edge edge =
            item.choice<Edge>({word(Edge::top), word(Edge::right), word(Edge::bottom), word(Edge::left)});
        for (const Edge before : foam.edges) {
            if (before == edge) {
                item.refuse("each edge once");
            }
        }
        foam.edges.push_back(edge);
    }
    foam.extras.json = members.extras();
    return foam;
}

Card read_card_object(const Tree& tree, const Parts& shipped) {
    Members members(Cursor(tree, ""));
    check_heading(members, "card");
    Card card;
    card.title = members.need("title").text();
    if (const auto note = members.maybe("note")) {
        card.note = note->text();
    }
    if (const auto audience = members.maybe("for")) {
        read_audience(*audience, card);
    }
    if (const auto own = members.maybe("parts")) {
        // The heading of a parts file may stand here too; apart, so that both keys stay unknown and are kept.
        Members heading(*own);
        if (heading.maybe("lanternleaf") || heading.maybe("kind")) {
            check_heading(heading, "parts");
        }
        Members parts(*own);
        card.own_parts = read_parts_object(parts, &shipped);
    }
    card.sheet = read_sheet(members.need("sheet"));
    card.cell = read_cell(members.need("cell"), card.own_parts, shipped);
    card.holder = read_holder(members.need("holder"), card.own_parts, shipped);
    read_things(members, shipped, card);
    if (const auto foam = members.maybe("foam")) {
        card.foam = read_foam(*foam);
    }
    card.extras.json = members.extras();
    return card;
}

} // namespace

} // namespace cardfile

Outcome<Card> read_card(const std::string& text, const std::string& file, const Parts& shipped) {
    try {
        return cardfile::read_card_object(cardfile::parse_tree(text), shipped);
    } catch (cardfile::Refused& refused) {
        refused.problem.file = file;
        return std::move(refused.problem);
    }
}

} // namespace lanternleaf
