// Broken and hostile text: everything that is settled before a reader looks at the first key.
#include "engine/cardfile/card_files.h"

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

Problem problem_of(const std::string& text) {
    const auto card = read_sample(text);
    REQUIRE_FALSE(card.ok());
    INFO(card.problem().sentence());
    CHECK(card.problem().sentence().find('\n') == std::string::npos);
    return card.problem();
}

std::string repeated(const std::string& piece, std::size_t times) {
    std::string text;
    for (std::size_t i = 0; i < times; ++i) {
        text += piece;
    }
    return text;
}

} // namespace

TEST_CASE("Syntax problems name line and column", "[cardfile]") {
    CHECK(problem_of("").place == "line 1, column 1");
    CHECK(problem_of("{\n  \"a\": 1,\n  \"b\" 2\n}").place == "line 3, column 7");
    CHECK(problem_of("{\n  \"a\": 1,\n  \"b\" 2\n}").expected == "expected ':', found number literal");
    CHECK(problem_of("{\"ä\": tru}").place == "line 1, column 10"); // columns count characters, not bytes
    CHECK(problem_of("{} x").expected == "expected end of input, found invalid literal");
    CHECK(problem_of("[1, 2").expected == "expected ']', found end of input");
    CHECK(problem_of("{\"a\": 01}").expected.find("expected '}'") == 0);
    CHECK(problem_of("// no comments\n{}").place == "line 1, column 1");
    CHECK(problem_of("{\"a\": NaN}").place.find("line 1, column") == 0);
    CHECK(problem_of("{\"a\": 1e999}").expected == "expected a number within +-1e308, found a larger one");
    CHECK(problem_of("{\"a\": \"two\nlines\"}").expected.find("control character") != std::string::npos);
}

TEST_CASE("Every beginning of the sample is refused with a place", "[cardfile]") {
    const std::string& text = sample_text();
    const std::size_t end = text.find_last_of('}');
    for (std::size_t size = 0; size <= end; ++size) {
        const auto card = read_sample(text.substr(0, size));
        REQUIRE_FALSE(card.ok());
        REQUIRE(card.problem().place.find("line ") == 0);
    }
}

TEST_CASE("Text that is not UTF-8, or hides something behind a zero byte, is refused", "[cardfile]") {
    CHECK(problem_of("{\"title\": \"\xff\"}").expected.find("ill-formed UTF-8") != std::string::npos);
    CHECK(problem_of("{\"title\": \"\xc0\x80\"}").place.find("line 1") == 0);
    CHECK(problem_of("{\"title\": \"\xed\xa0\x80\"}").place.find("line 1") == 0); // a lone surrogate
    CHECK(problem_of("{\"title\": \"\\ud800\"}").place.find("line 1") == 0);
    std::string hidden = sample_text();
    hidden += '\0';
    hidden += "{}";
    CHECK(problem_of(hidden).expected == "expected text, found a zero byte");
    Json zero = sample_json();
    zero["title"] = std::string("a\0b", 3);
    CHECK(problem_of(zero.dump()).place == "/title");
}

TEST_CASE("A byte order mark is passed over", "[cardfile]") {
    CHECK(read_sample("\xef\xbb\xbf" + sample_text()).ok());
}

TEST_CASE("A key twice in one object is refused, at any depth, known or not", "[cardfile]") {
    CHECK(problem_of(R"({"title": "a", "title": "b"})").expected ==
          "expected each key once, found \"title\" twice");
    const Problem deep = problem_of(R"({"later": [0, {"x": {"y": 1, "z": 2, "y": 1}}]})");
    CHECK(deep.place == "/later/1/x");
}

TEST_CASE("Nesting deeper than 64 is refused, however deep", "[cardfile]") {
    Json card = sample_json();
    const auto nested = [](std::size_t depth) { return repeated("[", depth).append(repeated("]", depth)); };
    const auto with_later = [&card](const std::string& value) {
        return "{\"later\": " + value + "," + card.dump().substr(1);
    };
    CHECK(read_sample(with_later(nested(63))).ok());
    CHECK(problem_of(with_later(nested(64))).expected.find("at most 64 lists or objects") !=
          std::string::npos);
    CHECK(problem_of(repeated("[", 1'000'000)).expected.find("at most 64") != std::string::npos);
    const Problem objects = problem_of(repeated("{\"a\":", 1'000'000));
    CHECK(objects.expected.find("at most 64") != std::string::npos);
    CHECK(objects.place.size() < 100);
}

TEST_CASE("Counts are bounded", "[cardfile]") {
    const auto problem_with = [](const char* key, std::size_t count) {
        Json card = sample_json();
        Json item = card[key][0];
        card[key] = Json::array();
        for (std::size_t i = 0; i < count; ++i) {
            item["id"] = std::string("id").append(std::to_string(i));
            card[key].push_back(item);
        }
        const auto read = read_sample(card.dump());
        return read.ok() ? std::string() : read.problem().sentence();
    };
    CHECK(problem_with("leds", 500).empty());
    CHECK(problem_with("leds", 501) == "x.card.json: /leds: expected at most 500 LEDs, found 501");
    CHECK(problem_with("laid", 5000).empty());
    CHECK(problem_with("laid", 5001) == "x.card.json: /laid: expected at most 5000 things laid, found 5001");
    CHECK(problem_with("resistors", 501).find("at most 500") != std::string::npos);
    CHECK(problem_of(repeated("[0", 1) + repeated(",0", 2'000'000) + "]")
              .expected.find("at most 2000000 values") != std::string::npos);
    CHECK(problem_of(std::string(32U * 1024U * 1024U + 1U, ' ')).expected.find("bytes") != std::string::npos);
}

TEST_CASE("A hostile key or text cannot make a sentence long or of two lines", "[cardfile]") {
    Json card = sample_json();
    card["parts"] = {{"tapes", {{std::string(5000, 'k') + "\x1b[2J", 1}}}};
    const Problem key = problem_of(card.dump());
    CHECK(key.sentence().size() < 300);
    card = sample_json();
    card["cell"]["type"] = "\x1b[31mred\x7f" + std::string(5000, 'x');
    const Problem type = problem_of(card.dump());
    CHECK(type.sentence().size() < 300);
    CHECK(type.sentence().find('\x1b') == std::string::npos);
    CHECK(problem_of("{\"\x1b[2J\": 1}").sentence().find('\x1b') == std::string::npos);
}
