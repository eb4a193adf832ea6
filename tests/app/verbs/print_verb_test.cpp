// print from outside: exit status, one line for what cannot be read, nothing on disk changed by a slip.
#include "support/ask_verb.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

using namespace lanternleaf;

namespace {

const std::string kPrices = kTop + "/tests/data/prices.json";

Answer print(const std::string& card, const std::vector<std::string>& rest) {
    std::vector<std::string> args = {"print", card};
    args.insert(args.end(), rest.begin(), rest.end());
    return ask(args);
}

} // namespace

TEST_CASE("print writes a PDF, the same one every time", "[verbs][print]") {
    const make::TempFolder folder("lanternleaf-print-verb");
    const std::string path = folder.at("sheets.pdf");
    const Answer first = print(kSample, {"--out", path});
    INFO(first.err);
    REQUIRE(first.status == 0);
    CHECK(first.out.find("Print at 100 %") != std::string::npos);
    const std::string bytes = make::get_file(path);
    CHECK(bytes.rfind("%PDF-", 0) == 0);
    CHECK(print(kSample, {"--out", path}).status == 0);
    CHECK(make::get_file(path) == bytes);
    CHECK(
        print(kSample, {"--out", path, "--paper", "letter", "--mirror", "--batch", "20", "--prices", kPrices})
            .status == 0);
    CHECK(make::get_file(path) != bytes);
}

TEST_CASE("print writes the steps as a page for a screen reader", "[verbs][print]") {
    const make::TempFolder folder("lanternleaf-print-page");
    const std::string path = folder.at("steps.html");
    const Answer answer = print(kSample, {"--out", path});
    INFO(answer.err);
    REQUIRE(answer.status == 0);
    const std::string page = make::get_file(path);
    // Strict readers take it: libxml2 as XML, HTML Tidy without a warning.
    CHECK(std::system(("xmllint --noout --nonet " + path).c_str()) == 0);
    CHECK(std::system(("tidy -q -e " + path).c_str()) == 0);
    // WCAG 2.1, 1.3.1 and 2.4.1: headings without a gap, one h1, a way to each step; 3.1.1: the language is
    // named.
    CHECK(page.find("<html lang=\"en\"") != std::string::npos);
    CHECK(page.find("<h1>") == page.rfind("<h1>"));
    for (int step = 1; step <= 7; ++step) {
        const std::string id = "step-" + std::to_string(step);
        INFO(id);
        CHECK(page.find("href=\"#" + id + "\"") != std::string::npos);
        CHECK(page.find("<h2 id=\"" + id + "\">") != std::string::npos);
    }
    CHECK(page.find("swallowed") < page.find("<h2 id=\"step-1\">"));
    CHECK(page.find("⟦") == std::string::npos);
}

TEST_CASE("print takes only the sheets it is asked for", "[verbs][print]") {
    const make::TempFolder folder("lanternleaf-print-some");
    const std::string path = folder.at("sheets.pdf");
    const Answer label = print(kSample, {"--out", path, "--parts", "label"});
    CHECK(label.status == 0);
    CHECK(label.out.find(": 1 page.") != std::string::npos);
    const Answer both = print(kSample, {"--out", path, "--parts", "label,template"});
    CHECK(both.out.find(": 2 pages.") != std::string::npos);
}

TEST_CASE("A slip in print is one line and leaves every file as it was", "[verbs][print]") {
    const make::TempFolder folder("lanternleaf-print-slips");
    const std::string path = folder.at("sheets.pdf");
    const std::string card = folder.at("copy.card.json");
    make::put_file(card, make::get_file(kSample));
    make::put_file(path, "as it was");
    const std::vector<std::vector<std::string>> slips = {
        {"--out", card},
        {"--out", path, "--paper", "a3"},
        {"--out", path, "--batch", "0"},
        {"--out", path, "--batch", "12x"},
        {"--out", path, "--batch", "99999999999"},
        {"--out", path, "--parts", ""},
        {"--out", path, "--parts", "steps,,list"},
        {"--out", path, "--parts", "posters"},
        {"--out", path, "--prices", card},
        {"--out", path, "--prices", folder.at("none.json")},
        {"--out", folder.at("none/sheets.pdf")},
        {},
    };
    for (const auto& slip : slips) {
        const Answer answer = print(card, slip);
        INFO(answer.err);
        CHECK(answer.status == 2);
        CHECK(std::count(answer.err.begin(), answer.err.end(), '\n') == 1);
        CHECK(make::get_file(card) == make::get_file(kSample));
        CHECK(make::get_file(path) == "as it was");
    }
}

TEST_CASE("A card with a problem prints all the same, with status 1 and a word about it", "[verbs][print]") {
    const make::TempFolder folder("lanternleaf-print-problem");
    std::string text = make::get_file(kSample);
    const std::size_t at = text.find("\"kind\": \"patch\"");
    REQUIRE(at != std::string::npos);
    text.replace(text.find("[60, 45]", at), 8, "[90, 90]"); // the crossing lies bare
    const std::string card = folder.at("bare.card.json");
    make::put_file(card, text);
    const Answer answer = print(card, {"--out", folder.at("bare.pdf")});
    CHECK(answer.status == 1);
    CHECK(answer.out.find("problem") != std::string::npos);
    CHECK(std::filesystem::exists(folder.at("bare.pdf")));
}

TEST_CASE("print, steps and make speak the language asked for; JSON stays English", "[verbs][words]") {
    const make::TempFolder folder("lanternleaf-languages-verb");
    const std::string page = folder.at("steps.html");
    const Answer printed = print(kSample, {"--out", page, "--language", "de", "--inches"});
    INFO(printed.err);
    REQUIRE(printed.status == 0);
    CHECK(printed.out.find("Schritte als Seite") != std::string::npos);
    CHECK(make::get_file(page).find("<html lang=\"de\"") != std::string::npos);
    CHECK(make::get_file(page).find("5 13/16 in") != std::string::npos); // 148 mm
    CHECK(print(kSample, {"--out", folder.at("a.pdf")}).status == 0);
    CHECK(print(kSample, {"--out", folder.at("b.pdf"), "--language", "es"}).status == 0);
    CHECK(make::get_file(folder.at("a.pdf")) != make::get_file(folder.at("b.pdf")));

    const Answer steps = ask({"steps", kSample, "--language", "de"});
    CHECK(steps.status == 0);
    CHECK(steps.out.find("Ohne Messgerät") != std::string::npos);
    CHECK(steps.out.find("⟦") == std::string::npos);
    CHECK(ask({"steps", kSample, "--language", "de", "--json"}).out == ask({"steps", kSample, "--json"}).out);

    const Answer made = ask({"make", kSample, "--out", folder.at("made"), "--copy", "--language", "de"});
    CHECK(made.status == 0);
    CHECK(made.out.find("Alle sieben Schritte nachgewiesen.") != std::string::npos);
    const std::string record = make::get_file(folder.at("made/one-window.copy/record.html"));
    CHECK(record.find("<html lang=\"de\"") != std::string::npos);
    CHECK(record.find("Proved") == std::string::npos); // verdicts too
    CHECK(record.find("steps proved") == std::string::npos);
    // In files: English.
    CHECK(make::get_file(folder.at("made/one-window.build.jsonl")).find("Proved") != std::string::npos);

    const Answer refused = print(kSample, {"--out", page, "--language", "fr"});
    CHECK(refused.status == 2);
    CHECK(refused.err == "--language: expected en, de or es, found fr\n");
}
