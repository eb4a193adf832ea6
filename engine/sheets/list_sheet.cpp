#include "sheets/list_sheet.h"

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

// Off a roll: up to the next decimetre or foot.
std::string off_roll(double mm, const Words& say) {
    if (say.unit() == LengthUnit::inch) {
        return say("sheets.feet", {{"feet", say.number(std::ceil(mm / 304.8 - 1e-9), 0)}});
    }
    return say("sheets.metres", {{"metres", say.number(std::ceil(mm / 100.0 - 1e-9) / 10.0, 1)}});
}

// For one card; in inches up to the next whole one, which keeps the column narrow.
std::string for_one(double mm, const Words& say) {
    return say.mm(say.unit() == LengthUnit::inch ? std::ceil(mm / 25.4 - 1e-9) * 25.4 : mm);
}

// Always two decimals, after the language's mark, which is what stands in its one half.
std::string money(double sum, const std::string& currency, const Words& say) {
    char digits[48];
    std::snprintf(digits, sizeof digits, "%.2f", sum);
    std::string text = digits;
    const std::string half = say.number(0.5, 1);
    text.replace(text.find('.'), 1, half.substr(1, half.size() - 2));
    return text + " " + currency;
}

struct Writer {
    const Lettering& lettering;
    const Words& say;
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

std::string side_words(Side side, const Words& say) {
    return side == Side::negative ? "−" : side == Side::positive ? "+" : say("sheets.side_link");
}

void write_cuts(Writer& writer, const Shopping& list) {
    const Words& say = writer.say;
    writer.heading(say("sheets.cut"));
    const double w = writer.width_mm;
    const std::vector<Column> columns = {
        {6.0, 24.0}, {32.0, 12.0}, {46.0, 46.0}, {116.0, 22.0, TextAlign::right}, {121.0, w - 121.0}};
    if (!list.cuts.empty()) {
        writer.row(columns,
                   {say("sheets.cut_strip"), say("sheets.cut_side"), say("sheets.cut_tape"),
                    say("sheets.cut_length"), say("sheets.cut_way")},
                   true, false);
    }
    for (const StripCut& cut : list.cuts) {
        std::string notes = cut.folds == 0 ? "" : say("sheets.folds", {{"n", cut.folds}});
        if (cut.turned_under_mm > 0.0) {
            notes += (notes.empty() ? "" : ", ") +
                     say("sheets.turned_under", {{"length", say.mm(cut.turned_under_mm)}});
        }
        writer.row(columns, {cut.id, side_words(cut.side, say), cut.tape, say.mm(cut.length_mm), notes},
                   false, true);
    }
    for (const CountNeed& need : list.counts) {
        if (need.pack == "patch") {
            writer.row({{6.0, w - 6.0}},
                       {say("sheets.cut_count", {{"what", need.words}, {"count", need.per_card}})}, false,
                       true);
        }
    }
    if (list.foam) {
        for (const double mm : list.foam->lengths_mm) {
            const std::string text = say("sheets.cut_foam", {{"n", list.foam->layers},
                                                             {"length", say.mm(mm)},
                                                             {"width", say.mm(list.foam->width_mm)},
                                                             {"thick", say.mm(list.foam->thickness_mm)}});
            writer.row({{6.0, w - 6.0}}, {text}, false, true);
        }
    }
}

// The cost line of a pack, once: later lines from the same pack say so.
struct CostColumn {
    const std::optional<Costs>& costs;
    const Words& say;
    std::vector<std::string> shown;

    std::vector<std::string> cells(const std::string& pack) {
        if (!costs) {
            return {};
        }
        if (std::find(shown.begin(), shown.end(), pack) != shown.end()) {
            return {say("sheets.as_above"), ""};
        }
        shown.push_back(pack);
        for (const CostLine& line : costs->lines) {
            if (line.pack == pack) {
                return {std::to_string(line.packs), money(line.outlay, costs->currency, say)};
            }
        }
        return {"–", say("sheets.no_price")};
    }
};

void write_buy(Writer& writer, const Shopping& list, const std::optional<Costs>& costs) {
    const Words& say = writer.say;
    std::vector<std::string> made = {say("sheets.cards", {{"n", list.cards}})};
    if (list.spare_kits > 0) {
        made.push_back(say("sheets.spare_kits", {{"n", list.spare_kits}}));
    }
    writer.heading(say("sheets.buy_for", {{"cards", say.list(made)}}));
    const double w = writer.width_mm;
    const double money_room = costs ? 50.0 : 0.0;
    const double end = w - money_room;
    std::vector<Column> columns = {{6.0, end - 6.0 - 76.0}};
    for (const double back : {54.0, 36.0, 18.0, 0.0}) {
        columns.push_back({end - back, 17.0, TextAlign::right});
    }
    columns.push_back({w - 32.0, 17.0, TextAlign::right});
    columns.push_back({w, 30.0, TextAlign::right});
    std::vector<std::string> head = {say("sheets.buy_what"), say("sheets.buy_one"), say("sheets.buy_all"),
                                     say("sheets.buy_spare"), say("sheets.buy_buy")};
    if (costs) {
        head.insert(head.end(), {say("sheets.buy_packs"), say("sheets.buy_cost")});
    }
    writer.row(columns, head, true, false);
    CostColumn cost{costs, say, {}};
    const auto add = [&](std::vector<std::string> cells, const std::string& pack) {
        for (std::string& cell : cost.cells(pack)) {
            cells.push_back(std::move(cell));
        }
        writer.row(columns, cells, false, true);
    };
    for (const TapeNeed& need : list.tapes) {
        add({say("sheets.tape", {{"type", need.type}}), for_one(need.card_mm, say),
             off_roll(need.buy_mm - need.waste_mm, say), off_roll(need.waste_mm, say),
             off_roll(need.buy_mm, say)},
            need.type);
    }
    for (const CountNeed& need : list.counts) {
        add({need.full, std::to_string(need.per_card), std::to_string(need.batch), std::to_string(need.spare),
             std::to_string(need.buy())},
            need.pack);
    }
    if (list.foam && !list.foam->lengths_mm.empty()) {
        const double laid = list.foam->card_mm * (list.cards + list.spare_kits);
        add({say("sheets.foam", {{"thick", say.mm(list.foam->thickness_mm)}}),
             for_one(list.foam->card_mm, say), off_roll(laid, say), off_roll(list.foam->buy_mm - laid, say),
             off_roll(list.foam->buy_mm, say)},
            "foam");
    }
}

void write_costs(Writer& writer, const Costs& costs) {
    const Words& say = writer.say;
    writer.heading(say("sheets.cost"));
    writer.words(say("sheets.cost_card", {{"sum", money(costs.per_card, costs.currency, say)}}), true);
    writer.words(say("sheets.cost_packs", {{"sum", money(costs.outlay, costs.currency, say)}}), true);
    if (!costs.unpriced.empty()) {
        std::string names;
        for (std::size_t i = 0; i < std::min(costs.unpriced.size(), kMostNames); ++i) {
            names += (i == 0 ? "" : ", ") + costs.unpriced[i];
        }
        const bool more = costs.unpriced.size() > kMostNames;
        writer.words(say(more ? "sheets.cost_unpriced_more" : "sheets.cost_unpriced", {{"names", names}}));
    }
}

} // namespace

std::vector<Page> list_sheet(const Card& card, const Shopping& list, const SpareRules& rules,
                             const std::optional<Costs>& costs, Paper paper, const Lettering& lettering,
                             const Words& say) {
    const SheetHead head{card.title, say("sheets.list"), say("sheets.list_note")};
    const Box content = framed_page(paper, false, head, lettering).content;
    Writer writer{lettering, say, Columns{}.width_mm(content), {}};
    write_cuts(writer, list);
    write_buy(writer, list, costs);
    if (costs) {
        write_costs(writer, *costs);
    }
    double laps = 0.0;
    for (const TapeNeed& need : list.tapes) {
        laps += need.laps_mm;
    }
    writer.heading(say("sheets.worked_out"));
    writer.words(laps > 0.0 ? say("sheets.laps", {{"length", say.mm(laps)}}) : say("sheets.laps_none"));
    writer.words(say("sheets.spares", {{"tape", rules.tape_waste_percent},
                                       {"lights", rules.led_percent},
                                       {"least", rules.least_leds},
                                       {"cells", rules.cell_percent},
                                       {"foam", rules.foam_waste_percent}}));
    writer.words(say("sheets.cells_packed"), true);
    return flow(writer.blocks, Columns{}, paper, head, lettering, say);
}

} // namespace lanternleaf
