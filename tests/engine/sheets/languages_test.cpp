// The sheets in every language: whole sentences, nothing cut, nothing the faces cannot show; and read back by
// pdftotext (Poppler), which knows nothing of our words.
#include "desk/desk.h"
#include "sheets/label_sheet.h"
#include "sheets/list_sheet.h"
#include "sheets/printout.h"
#include "sheets/step_sheet.h"
#include "sheets/template_sheet.h"
#include "support/make_build.h"
#include "support/make_card.h"
#include "support/sheets.h"
#include "support/words_of.h"

#include <algorithm>

using namespace lanternleaf;

namespace {

std::vector<std::string> texts_of(const std::vector<Page>& pages) {
    std::vector<std::string> texts;
    for (const Page& page : pages) {
        for (const PageMark& mark : page.marks) {
            if (const auto* text = std::get_if<TextMark>(&mark)) {
                texts.push_back(text->text);
            }
        }
    }
    return texts;
}

// Costs too, and a batch, so that every column is there.
std::vector<Page> all_sheets(const Card& card, const Lettering& lettering, const Words& words) {
    const Parts parts = make::test_parts();
    const SpareRules rules = spare_rules(Audience::school_class);
    const Shopping list = shopping(card, parts, 20, rules, words);
    Prices prices;
    prices.currency = "EUR";
    prices.packs[list.counts.front().pack] = {10.0, 12.5, false};
    std::vector<Page> pages =
        template_sheet(card, parts, Paper::letter, false, lettering, words).value().pages;
    for (const std::vector<Page>& more :
         {list_sheet(card, list, rules, costs(list, rules, prices), Paper::letter, lettering, words),
          label_sheet(card, 20, Paper::letter, lettering, words),
          step_sheet(card, parts, Paper::letter, lettering, words)}) {
        pages.insert(pages.end(), more.begin(), more.end());
    }
    return pages;
}

} // namespace

TEST_CASE("No language's words are cut or missing on a sheet", "[sheets][words]") {
    const Lettering plain = Lettering::open({}).value();
    for (const Lettering& lettering : {make::lettering(), plain}) {
        for (const char* language : {"en", "de", "es"}) {
            for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
                const Words words = words_of(language).with_unit(unit);
                for (const std::string& text : texts_of(all_sheets(make::sample_card(), lettering, words))) {
                    INFO(language << ": " << text);
                    CHECK(said_whole(text));
                    CHECK(text.find("…") == std::string::npos);
                    // The built-in face's "?" stands for what it lacks.
                    const std::string shown = plain.shown(text);
                    CHECK(std::count(shown.begin(), shown.end(), '?') ==
                          std::count(text.begin(), text.end(), '?'));
                }
            }
        }
    }
}

TEST_CASE("The label fits the back in every language", "[sheets][words]") {
    const Lettering lettering = make::lettering();
    for (const char* language : {"en", "de", "es"}) {
        const Words words = words_of(language);
        for (const double width : {74.0, 105.0, 148.0}) {
            Card card = make::sample_card();
            card.sheet.width_mm = width;
            card.sheet.height_mm = width * 0.7;
            const Vec2 size = label_size(card, lettering, words);
            INFO(language << ", " << width << " mm");
            CHECK(size.x <= card.sheet.width_mm);
            CHECK(size.y <= card.sheet.height_mm);
            // The signal word ends inside its frame.
            const Page page = label_sheet(card, 1, Paper::a4, lettering, words).front();
            for (const PageMark& mark : page.marks) {
                const auto* text = std::get_if<TextMark>(&mark);
                if (text != nullptr && text->text == words("sheets.label_warning")) {
                    CHECK(lettering.width_mm(text->text, text->size_mm, true) <= size.x - 14.0);
                    CHECK(text->size_mm > 4.0); // still much larger than the lines under it
                }
            }
        }
    }
}

TEST_CASE("German and Spanish letters come out of the file, in both faces", "[sheets][words][outside]") {
    if (!make::has_tool("pdftotext")) {
        return;
    }
    const make::TempFolder folder("lanternleaf-languages");
    for (const PrintFonts& fonts : {make::font_files(), PrintFonts{}}) {
        for (const char* language : {"de", "es"}) {
            PrintoutWish wish;
            wish.fonts = fonts;
            wish.with_steps = false;
            const Outcome<Printout> made =
                print_card(make::sample_card(), make::test_parts(), wish, words_of(language));
            REQUIRE(made.ok());
            const std::string path = folder.at("sheets.pdf");
            REQUIRE(write_file(path, made.value().pdf).ok());
            const std::string text = make::run_tool("pdftotext -enc UTF-8 -layout '" + path + "' -").out;
            const std::vector<std::string> wanted =
                std::string(language) == "de"
                    ? std::vector<std::string>{"WARNUNG", "Größe", "Überlappung", "Streifen", "85,60"}
                    : std::vector<std::string>{"ADVERTENCIA", "Tamaño", "pila de botón", "¿Tragada", "85,60"};
            for (const std::string& word : wanted) {
                INFO(language << (fonts.regular.empty() ? ", built-in face: " : ": ") << word);
                CHECK(text.find(word) != std::string::npos);
            }
        }
    }
}
