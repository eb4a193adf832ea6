#include "sheets/list_sheet.h"

#include "base/readout.h"
#include "sheets/flow.h"
#include "sheets/symbols.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace lanternleaf {

namespace {

constexpr double kListRow_mm = 6.6;
constexpr double kBox_mm = 4.0;
constexpr std::size_t kMostNames = 12; // of unpriced things before "and more"

struct Column {
    double at_mm = 0.0; ///< left edge, or right edge when set right
    double width_mm = 0.0;
    TextAlign align = TextAlign::left;
};

std::string metres(double mm) {
    return readout_number(std::ceil(mm / 100.0 - 1e-9) / 10.0, 1) + " m"; // up to the next decimetre
}

std::string money(double sum, const std::string& currency) {
    char digits[48];
    std::snprintf(digits, sizeof digits, "%.2f", sum);
    return std::string(digits) + " " + currency;
}

std::string counted(int count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

struct Writer {
    const Lettering& lettering;
    double width_mm;
    std::vector<Block> blocks;

    void heading(const std::string& text) {
        Block block;
        PagePen pen(block.marks);
        const double top = blocks.empty() ? 0.0 : 5.0;
        pen.round_box({0, top}, {width_mm, 8.2}, 1.5, {}, grey(0.9));
        pen.text({2.5, top + 5.9}, text, kHead_mm, true);
        block.height_mm = top + 10.0;
        block.with_next = true;
        blocks.push_back(std::move(block));
    }

    void row(const std::vector<Column>& columns, const std::vector<std::string>& cells, bool bold, bool box) {
        Block block;
        PagePen pen(block.marks);
        if (box) {
            draw_tick_box(pen, {0, 0.9}, kBox_mm);
        }
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const Column& column = columns[i];
            const std::string shown = lettering.fitted(clean_text(cells[i]), kBody_mm, column.width_mm, bold);
            pen.text({column.at_mm, 4.4}, shown, kBody_mm, bold, column.align,
                     bold && !box ? grey(0.25) : kBlack);
        }
        const bool head = bold && !box;
        pen.line({0, kListRow_mm - 0.6}, {width_mm, kListRow_mm - 0.6},
                 {head ? 0.3 : 0.1, head ? kBlack : grey(0.6), {}});
        block.height_mm = kListRow_mm;
        block.with_next = head;
        blocks.push_back(std::move(block));
    }

    void words(const std::string& text, bool bold = false, double size_mm = kBody_mm) {
        Block block;
        PagePen pen(block.marks);
        block.height_mm = draw_lines(pen, lettering.lines(clean_text(text), size_mm, width_mm, bold, 12),
                                     {0, 0.8}, size_mm, bold) +
                          1.0;
        blocks.push_back(std::move(block));
    }
};

const char* side_words(Side side) {
    return side == Side::negative ? "−" : side == Side::positive ? "+" : "link";
}

void write_cuts(Writer& writer, const Shopping& list) {
    writer.heading("Cut for one card");
    const double w = writer.width_mm;
    const std::vector<Column> columns = {
        {6.0, 24.0}, {32.0, 12.0}, {46.0, 46.0}, {116.0, 22.0, TextAlign::right}, {121.0, w - 121.0}};
    if (!list.cuts.empty()) {
        writer.row(columns, {"Strip", "Side", "Tape", "Length", "On the way"}, true, false);
    }
    for (const StripCut& cut : list.cuts) {
        std::string notes = cut.folds == 0 ? "" : counted(cut.folds, "fold");
        if (cut.turned_under_mm > 0.0) {
            notes += (notes.empty() ? "" : ", ") + readout_mm(cut.turned_under_mm) + " turned under";
        }
        writer.row(columns, {cut.id, side_words(cut.side), cut.tape, readout_mm(cut.length_mm), notes}, false,
                   true);
    }
    for (const CountNeed& need : list.counts) {
        if (need.pack == "patch") {
            writer.row({{6.0, w - 6.0}}, {need.words + ": " + std::to_string(need.per_card)}, false, true);
        }
    }
    if (list.foam) {
        for (const double mm : list.foam->lengths_mm) {
            const std::string text = "foam, " + counted(list.foam->layers, "length") + " of " +
                                     readout_mm(mm) + ", " + readout_mm(list.foam->width_mm) + " wide, " +
                                     readout_mm(list.foam->thickness_mm) + " thick";
            writer.row({{6.0, w - 6.0}}, {text}, false, true);
        }
    }
}

// The cost line of a pack, once: later lines from the same pack say so.
struct CostColumn {
    const std::optional<Costs>& costs;
    std::vector<std::string> shown;

    std::vector<std::string> cells(const std::string& pack) {
        if (!costs) {
            return {};
        }
        if (std::find(shown.begin(), shown.end(), pack) != shown.end()) {
            return {"as above", ""};
        }
        shown.push_back(pack);
        for (const CostLine& line : costs->lines) {
            if (line.pack == pack) {
                return {std::to_string(line.packs), money(line.outlay, costs->currency)};
            }
        }
        return {"–", "no price"};
    }
};

void write_buy(Writer& writer, const Shopping& list, const std::optional<Costs>& costs) {
    std::string title = "Buy for " + counted(list.cards, "card");
    if (list.spare_kits > 0) {
        title += " and " + counted(list.spare_kits, "spare kit");
    }
    writer.heading(title);
    const double w = writer.width_mm;
    const double money_room = costs ? 50.0 : 0.0;
    const double end = w - money_room;
    std::vector<Column> columns = {{6.0, end - 6.0 - 76.0}};
    for (const double back : {54.0, 36.0, 18.0, 0.0}) {
        columns.push_back({end - back, 17.0, TextAlign::right});
    }
    columns.push_back({w - 32.0, 17.0, TextAlign::right});
    columns.push_back({w, 30.0, TextAlign::right});
    std::vector<std::string> head = {"What", "one card", "all", "spare", "buy"};
    if (costs) {
        head.insert(head.end(), {"packs", "cost"});
    }
    writer.row(columns, head, true, false);
    CostColumn cost{costs, {}};
    const auto add = [&](std::vector<std::string> cells, const std::string& pack) {
        for (std::string& cell : cost.cells(pack)) {
            cells.push_back(std::move(cell));
        }
        writer.row(columns, cells, false, true);
    };
    for (const TapeNeed& need : list.tapes) {
        add({"tape " + need.type, readout_mm(need.card_mm), metres(need.buy_mm - need.waste_mm),
             metres(need.waste_mm), metres(need.buy_mm)},
            need.type);
    }
    for (const CountNeed& need : list.counts) {
        const std::string words = need.pack == "resistor" || need.pack == "patch" || need.pack == "sheet" ||
                                          need.words.find("light") != std::string::npos ||
                                          need.words.find("folded") != std::string::npos
                                      ? need.words
                                      : need.words + " " + need.pack;
        add({words, std::to_string(need.per_card), std::to_string(need.batch), std::to_string(need.spare),
             std::to_string(need.buy())},
            need.pack);
    }
    if (list.foam && !list.foam->lengths_mm.empty()) {
        const double laid = list.foam->card_mm * (list.cards + list.spare_kits);
        add({"foam strip, " + readout_mm(list.foam->thickness_mm) + " thick", readout_mm(list.foam->card_mm),
             metres(laid), metres(list.foam->buy_mm - laid), metres(list.foam->buy_mm)},
            "foam");
    }
}

void write_costs(Writer& writer, const Costs& costs) {
    writer.heading("Cost");
    writer.words("One card uses " + money(costs.per_card, costs.currency) + " of material.", true);
    writer.words("Whole packs for all of it: " + money(costs.outlay, costs.currency) + ".", true);
    if (!costs.unpriced.empty()) {
        std::string names;
        for (std::size_t i = 0; i < std::min(costs.unpriced.size(), kMostNames); ++i) {
            names += (i == 0 ? "" : ", ") + costs.unpriced[i];
        }
        writer.words("Not counted, for want of a price: " + names +
                     (costs.unpriced.size() > kMostNames ? " and more." : "."));
    }
}

} // namespace

std::vector<Page> list_sheet(const Card& card, const Shopping& list, const SpareRules& rules,
                             const std::optional<Costs>& costs, Paper paper, const Lettering& lettering) {
    const SheetHead head{card.title, "Cutting and shopping list", "Tick what is cut and what is bought."};
    const Box content = framed_page(paper, false, head, lettering).content;
    Writer writer{lettering, Columns{}.width_mm(content), {}};
    write_cuts(writer, list);
    write_buy(writer, list, costs);
    if (costs) {
        write_costs(writer, *costs);
    }
    double laps = 0.0;
    for (const TapeNeed& need : list.tapes) {
        laps += need.laps_mm;
    }
    writer.heading("How this is worked out");
    writer.words("A fold takes no more tape than the line it follows. Laps are in the lengths already" +
                 (laps > 0.0 ? ": " + readout_mm(laps) + " on this card." : "."));
    writer.words("Spare tape is " + std::to_string(rules.tape_waste_percent) +
                 " % for cut ends and mistakes; lights " + std::to_string(rules.led_percent) +
                 " %, at least " + std::to_string(rules.least_leds) + " of a kind; cells " +
                 std::to_string(rules.cell_percent) + " %; foam " + std::to_string(rules.foam_waste_percent) +
                 " %.");
    writer.words(
        "Leave every cell in its packet, out of children’s reach, until step 6. Count them out and back.",
        true);
    return flow(writer.blocks, Columns{}, paper, head, lettering);
}

} // namespace lanternleaf
