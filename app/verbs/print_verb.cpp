#include "desk/print_desk.h"
#include "files/files.h"
#include "findings/review.h"
#include "guide/sequence.h"
#include "report/step_page.h"
#include "sheets/printout.h"
#include "verbs/plain_text.h"
#include "verbs/verb.h"
#include "verbs/words_option.h"

#include <charconv>
#include <filesystem>
#include <ostream>

namespace lanternleaf {

namespace {

Outcome<Done> read_paper(const Arguments& args, PrintoutWish& wish) {
    if (args.has("--paper")) {
        const std::string& name = args.at("--paper");
        if (name != "a4" && name != "letter") {
            return Problem{"--paper", "", "expected a4 or letter, found " + printable(name)};
        }
        wish.paper = name == "a4" ? Paper::a4 : Paper::letter;
    }
    return Done{};
}

Outcome<Done> read_batch(const Arguments& args, PrintoutWish& wish) {
    if (args.has("--batch")) {
        const std::string& text = args.at("--batch");
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), wish.cards);
        const bool whole = error == std::errc() && end == text.data() + text.size();
        if (!whole || wish.cards < 1 || wish.cards > kMostCards) {
            return Problem{"--batch", "",
                           "expected a number of cards from 1 to " + std::to_string(kMostCards) + ", found " +
                               printable(text)};
        }
    }
    return Done{};
}

Outcome<Done> read_sheets(const Arguments& args, PrintoutWish& wish) {
    if (!args.has("--parts")) {
        return Done{};
    }
    wish.with_template = wish.with_steps = wish.with_list = wish.with_label = false;
    const std::string text = args.at("--parts") + ",";
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = text.find(',', from);
        const std::string name = text.substr(from, end - from);
        bool* const chosen = name == "template" ? &wish.with_template
                             : name == "steps"  ? &wish.with_steps
                             : name == "list"   ? &wish.with_list
                             : name == "label"  ? &wish.with_label
                                                : nullptr;
        if (chosen == nullptr) {
            return Problem{"--parts", "",
                           "expected some of template,steps,list,label with commas between, found " +
                               printable(args.at("--parts"))};
        }
        *chosen = true;
        from = end + 1;
    }
    return Done{};
}

Outcome<Done> read_price_file(const Arguments& args, PrintoutWish& wish) {
    if (!args.has("--prices")) {
        return Done{};
    }
    Outcome<Prices> prices = load_prices(args.at("--prices"));
    if (!prices) {
        return prices.problem();
    }
    wish.prices = std::move(prices).value();
    return Done{};
}

/// The steps in words alone, for a screen reader.
Outcome<ExitStatus> print_page(const Arguments& args, std::ostream& out, const VerbSurroundings& around,
                               const Words& words) {
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Card& card = open.value().card;
    const std::string page = step_page(card, make_steps(card, open.value().parts, words), words);
    if (const Outcome<Done> written = write_file(args.at("--out"), page); !written) {
        return written.problem();
    }
    out << words("verbs.page_written", {{"file", printable(args.at("--out"))}, {"n", kStepCount}}) << "\n";
    const bool sound = review(card, open.value().parts).count(Level::problem) == 0;
    return sound ? ExitStatus::well : ExitStatus::card_problem;
}

} // namespace

Outcome<ExitStatus> print_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<Words> asked = asked_words(args, around);
    if (!asked) {
        return asked.problem();
    }
    const Words& words = asked.value();
    const std::string& path = args.at("--out");
    if (path.ends_with(".html")) {
        return print_page(args, out, around, words);
    }
    if (!path.ends_with(".pdf")) { // so that a slip cannot write over a card
        return Problem{"--out", "",
                       "expected a file name that ends in .pdf or .html, found " + printable(path)};
    }
    PrintoutWish wish;
    wish.mirrored = args.has("--mirror");
    wish.fonts = print_fonts_in(around.fonts);
    for (const auto& read : {read_paper, read_batch, read_sheets, read_price_file}) {
        const Outcome<Done> done = read(args, wish);
        if (!done) {
            return done.problem();
        }
    }
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Card& card = open.value().card;
    const Outcome<Printout> made = print_card(card, open.value().parts, wish, words);
    if (!made) {
        Problem problem = made.problem();
        problem.file = problem.file.empty() ? args.at("CARD") : problem.file;
        return problem;
    }
    const Outcome<Done> written = write_file(path, made.value().pdf);
    if (!written) {
        return written.problem();
    }
    const int problems = review(card, open.value().parts).count(Level::problem);
    const Printout& sheets = made.value();
    if (sheets.template_columns * sheets.template_rows > 1) {
        out << words("verbs.printed_tiled", {{"file", printable(path)},
                                             {"n", sheets.pages},
                                             {"columns", sheets.template_columns},
                                             {"rows", sheets.template_rows}});
    } else {
        out << words("verbs.printed", {{"file", printable(path)}, {"n", sheets.pages}});
    }
    out << "\n";
    if (problems > 0) {
        out << words("verbs.card_has", {{"n", problems}}) << "\n";
    }
    return problems > 0 ? ExitStatus::card_problem : ExitStatus::well;
}

} // namespace lanternleaf
