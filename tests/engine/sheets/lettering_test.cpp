// Words that stay inside their column, whatever they are.
#include "sheets/lettering.h"

#include "support/sheets.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("Clean text is one line of well-formed UTF-8", "[sheets]") {
    CHECK(clean_text("a\tb\nc\x1b[31m\x7f") == "a b c [31m ");
    CHECK(clean_text("bad \xff\xfe\xc3 end") == "bad \xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD end");
    CHECK(clean_text("\xC0\xAF") == "\xEF\xBF\xBD\xEF\xBF\xBD");                 // an overlong "/"
    CHECK(clean_text("\xED\xA0\x80") == "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"); // half a surrogate pair
    CHECK(clean_text("moon 🌙") == "moon \xEF\xBF\xBD");                          // beyond the basic plane
    CHECK(clean_text("safe\u202Etxt") == "safe txt");                            // turns the writing round
    CHECK(clean_text("Žlutý Ω −") == "Žlutý Ω −");
    CHECK(clean_text("abcdef", 3) == "abc…");
}

TEST_CASE("Lines break at spaces and never leave the column", "[sheets]") {
    for (const bool embedded : {true, false}) {
        const Lettering lettering = embedded ? make::lettering() : Lettering::open({}).value();
        const std::string words = "Lay the strip flat for 41 mm and rub it down, "
                                  "Donaudampfschifffahrtselektrizitätenhauptbetriebswerk, done";
        const auto lines = lettering.lines(words, 3.2, 40.0);
        CHECK(lines.size() >= 4);
        std::string joined;
        for (const std::string& line : lines) {
            CHECK(lettering.width_mm(line, 3.2) <= 40.0);
            joined += line;
        }
        std::string bare = words;
        for (std::string* text : {&joined, &bare}) {
            text->erase(std::remove(text->begin(), text->end(), ' '), text->end());
        }
        CHECK(joined == bare); // nothing lost
        CHECK(lettering.lines(words, 3.2, 40.0, false, 2).size() == 2);
        CHECK(lettering.lines(words, 3.2, 40.0, false, 2).back().ends_with("…"));
        CHECK(lettering.width_mm(lettering.fitted(words, 3.2, 25.0), 3.2) <= 25.0);
        CHECK(lettering.fitted("short", 3.2, 25.0) == "short");
        CHECK(lettering.lines("", 3.2, 40.0).empty());
    }
}

TEST_CASE("The built-in face says in words what it lacks", "[sheets]") {
    const Lettering plain = Lettering::open({}).value();
    CHECK(plain.shown("0.3 Ω") == "0.3 ohm");
    CHECK(plain.shown("L6−") == "L6\x96"); // an en dash: longer than a hyphen, as a minus is
    CHECK(plain.shown("ж") == "?");
}

TEST_CASE("A font file that is none is a sentence", "[sheets]") {
    const Outcome<Lettering> opened = Lettering::open({LANTERNLEAF_SOURCE "/CMakeLists.txt", ""});
    REQUIRE_FALSE(opened);
    CHECK(opened.problem().file == LANTERNLEAF_SOURCE "/CMakeLists.txt");
}
