#include "sheets/printout.h"

#include "sheets/label_sheet.h"
#include "sheets/list_sheet.h"
#include "sheets/step_sheet.h"
#include "sheets/template_sheet.h"
#include "sheets/write_pdf.h"

#include <iterator>

namespace lanternleaf {

namespace {

void append(std::vector<Page> more, std::vector<Page>& pages) {
    pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace

Outcome<Printout> print_card(const Card& card, const Parts& parts, const PrintoutWish& wish,
                             const Words& words) {
    const Outcome<Lettering> opened = Lettering::open(wish.fonts);
    if (!opened) {
        return opened.problem();
    }
    const Lettering& lettering = opened.value();
    Printout made;
    std::vector<Page> pages;
    if (wish.with_template) {
        Outcome<TemplateSheet> sheet =
            template_sheet(card, parts, wish.paper, wish.mirrored, lettering, words);
        if (!sheet) {
            return sheet.problem();
        }
        made.template_pages = static_cast<int>(sheet.value().pages.size());
        made.template_columns = sheet.value().columns;
        made.template_rows = sheet.value().rows;
        append(std::move(sheet.value().pages), pages);
    }
    if (wish.with_steps) {
        append(step_sheet(card, parts, wish.paper, lettering, words), pages);
    }
    if (wish.with_list) {
        const SpareRules rules = spare_rules(card.audience);
        const Shopping list = shopping(card, parts, wish.cards, rules, words);
        std::optional<Costs> cost;
        if (wish.prices) {
            cost = costs(list, rules, *wish.prices);
        }
        append(list_sheet(card, list, rules, cost, wish.paper, lettering, words), pages);
    }
    if (wish.with_label) {
        append(label_sheet(card, wish.cards, wish.paper, lettering, words), pages);
    }
    if (pages.empty()) {
        return Problem{"", "", "expected at least one sheet to print"};
    }
    Outcome<std::string> pdf = write_pdf(pages, lettering, {card.title, words("sheets.subject")});
    if (!pdf) {
        return pdf.problem();
    }
    made.pages = static_cast<int>(pages.size());
    made.pdf = std::move(pdf).value();
    return made;
}

} // namespace lanternleaf
