#include "words/words.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace lanternleaf;

namespace {

std::string file_text(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

Words made(const std::string& messages, const std::string& decimal = ".") {
    const std::string text = R"({"lanternleaf":1,"kind":"words","language":"xx","name":"X","decimal":")" +
                             decimal + R"(","plural":"one-other","say":{"a":{)" + messages + "}}}";
    Outcome<Words> words = read_words(text, "xx.json");
    REQUIRE(words.ok());
    return words.value();
}

} // namespace

TEST_CASE("A message is filled by name, in any order", "[words]") {
    const Words words = made(R"("b":"{second} before {first}, {first}")");
    CHECK(words("a.b", {{"first", "one"}, {"second", "two"}}) == "two before one, one");
    // What goes in is never read as a message again.
    CHECK(words("a.b", {{"first", "{second}"}, {"second", "{x}"}}) == "{x} before {second}, {second}");
}

TEST_CASE("A count chooses the form", "[words]") {
    const Words words = made(R"("lights":{"one":"{n} light","other":"{n} lights"})");
    // CLDR, cardinal rules of English, German and Spanish for whole numbers: one is n = 1, other all else.
    CHECK(words("a.lights", {{"n", 1}}) == "1 light");
    CHECK(words("a.lights", {{"n", 0}}) == "0 lights");
    CHECK(words("a.lights", {{"n", 21}}) == "21 lights");
}

TEST_CASE("A missing message falls back to English, then to its key", "[words]") {
    const Words words = made(R"("b":"c")");
    CHECK(words("list.and", {{"before", "A"}, {"item", "B"}}) == "A and B");
    CHECK(words("a.gone") == "⟦a.gone⟧");
}

TEST_CASE("Lists read as a person would say them", "[words]") {
    CHECK(english().list({}).empty());
    CHECK(english().list({"L1"}) == "L1");
    CHECK(english().list({"L1", "L2"}) == "L1 and L2");
    CHECK(english().list({"L1", "L2", "L3"}) == "L1, L2 and L3");
    CHECK(english().either({"L1", "L2", "L3"}) == "L1, L2 or L3");
}

TEST_CASE("Figures take the language's decimal mark and the maker's unit", "[words]") {
    const Words comma = made(R"("b":"c")", ",");
    CHECK(english().mm(1.5) == "1.5 mm");
    CHECK(comma.mm(1.5) == "1,5 mm");
    CHECK(comma.ohm_range(0.1, 0.6) == "0,1–0,6 Ω");
    CHECK(comma.volts(2.85) == "2,85 V");
    CHECK(comma.hours(0.5) == "about 30 min");
    const Words inch = english().with_unit(LengthUnit::inch);
    // Worked by hand: 25.4 mm to the inch; 30 mm = 1.1811 in, 37.8 thirty-seconds: 1 3/16.
    CHECK(inch.mm(25.4) == "1 in");
    CHECK(inch.mm(30.0) == "1 3/16 in");
    CHECK(inch.mm(148.0) == "5 13/16 in"); // 186.46 thirty-seconds: 186 = 5 26/32
    CHECK(inch.mm(10.0) == "13/32 in");
    CHECK(inch.mm(1.5) == "0.06 in");
    CHECK(inch.mm(0.0) == "0 in");
}

TEST_CASE("A words file that is none is refused with its place", "[words]") {
    const auto place = [](const std::string& text) {
        const Outcome<Words> words = read_words(text, "xx.json");
        REQUIRE_FALSE(words.ok());
        return words.problem().place;
    };
    const std::string head =
        R"({"lanternleaf":1,"kind":"words","language":"xx","name":"X","decimal":".","plural":"one-other","say":)";
    CHECK(place("[1").empty());
    CHECK(place(R"({"lanternleaf":1,"kind":"card"})") == "/kind");
    CHECK(place(head + "3}") == "/say");
    CHECK(place(head + R"({"a":3}})") == "/say/a");
    CHECK(place(head + R"({"a":{"b":3}}})") == "/say/a/b");
    CHECK(place(head + R"({"a":{"b":"{open"}}})") == "/say/a/b");
    CHECK(place(head + R"({"a":{"b":"shut}"}}})") == "/say/a/b");
    CHECK(place(head + R"({"a":{"b":{"one":"x","few":"y"}}}})") == "/say/a/b");
}

TEST_CASE("Every language says everything, with the same things filled in", "[words]") {
    const auto names_in = [](const std::string& sentence) {
        std::vector<std::string> names;
        for (std::size_t at = sentence.find('{'); at != std::string::npos; at = sentence.find('{', at + 1)) {
            names.push_back(sentence.substr(at, sentence.find('}', at) - at));
        }
        std::sort(names.begin(), names.end());
        names.erase(std::unique(names.begin(), names.end()), names.end());
        return names;
    };
    for (const char* language : {"de", "es"}) {
        const std::string file = std::string(language) + ".json";
        const Outcome<Words> words = read_words(file_text(LANTERNLEAF_SOURCE "/assets/words/" + file), file);
        INFO(file << ": " << (words.ok() ? "" : words.problem().sentence()));
        REQUIRE(words.ok());
        CHECK(words.value().language() == language);
        for (const std::string& key : english().keys()) {
            INFO(key);
            const auto said = words.value().forms(key);
            REQUIRE_FALSE(said.empty());
            const auto model = english().forms(key);
            CHECK(said.size() == model.size());
            CHECK(names_in(said.back().second) == names_in(model.back().second));
        }
        CHECK(words.value().keys().size() == english().keys().size());
    }
}
