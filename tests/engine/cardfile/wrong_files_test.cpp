// Files with one thing wrong each. The same lists are put to the JSON Schemas by
// tests/rules/schema_check.mjs.
#include "engine/cardfile/card_files.h"

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

template <class Read>
int check_list(const std::string& list, const Json& right, const Read& read) {
    int count = 0;
    for (const Json& wrong : Json::parse(source_text(list))) {
        const bool take = wrong.contains("take");
        const Json changed = with(right, wrong["at"], take ? nullptr : &wrong["put"]);
        const auto outcome = read(changed.dump());
        INFO(wrong.dump().substr(0, 300));
        REQUIRE_FALSE(outcome.ok());
        const Problem& problem = outcome.problem();
        INFO(problem.sentence());
        CHECK(problem.file == "wrong.json");
        CHECK(problem.place == wrong["place"].get<std::string>());
        CHECK(problem.expected.find(wrong["says"].get<std::string>()) != std::string::npos);
        CHECK(problem.sentence().size() < 400);
        ++count;
    }
    return count;
}

} // namespace

TEST_CASE("Each wrong card is refused with its place and one sentence", "[cardfile]") {
    const int count = check_list("tests/data/wrong-cards.json", sample_json(), [](const std::string& text) {
        return read_card(text, "wrong.json", shipped());
    });
    CHECK(count >= 79);
}

TEST_CASE("Each wrong parts file is refused with its place and one sentence", "[cardfile]") {
    const int count = check_list("tests/data/wrong-parts.json", Json::parse(source_text("assets/parts.json")),
                                 [](const std::string& text) { return read_parts(text, "wrong.json"); });
    CHECK(count >= 25);
}

TEST_CASE("The sentence reads as one line a person can act on", "[cardfile]") {
    Json card = sample_json();
    card["leds"][0]["at_mm"] = "left";
    CHECK(read_sample(card.dump()).problem().sentence() ==
          "x.card.json: /leds/0/at_mm: expected two numbers, found the text \"left\"");
    card = sample_json();
    card["leds"][0]["type"] = "carrier-grean";
    CHECK(read_sample(card.dump()).problem().sentence() ==
          "x.card.json: /leds/0/type: expected a known LED type, such as \"carrier-green\", \"carrier-red\" "
          "or \"carrier-orange\"; found \"carrier-grean\"");
    card = sample_json();
    card["cell"]["type"] = "LIR2032";
    CHECK(read_sample(card.dump()).problem().sentence() ==
          "x.card.json: /cell/type: expected a primary lithium manganese dioxide cell (code CR), found "
          "\"LIR2032\", a rechargeable lithium-ion cell");
    card = sample_json();
    card["lanternleaf"] = 3;
    card["sheet"] = "whatever a later version means by it";
    CHECK(read_sample(card.dump()).problem().sentence() ==
          "x.card.json: /lanternleaf: made by a newer Lanternleaf (version 3); this one reads version 1");
}

TEST_CASE("A card that uses resistors needs parts that describe one", "[cardfile]") {
    Parts without = shipped();
    without.resistor.reset();
    const auto card = read_card(sample_text(), "x.card.json", without);
    REQUIRE_FALSE(card.ok());
    CHECK(card.problem().place == "/resistors");
}

TEST_CASE("A later version's parts in a card are refused too", "[cardfile]") {
    Json card = sample_json();
    card["parts"] = {{"lanternleaf", 2}, {"kind", "parts"}};
    REQUIRE_FALSE(read_sample(card.dump()).ok());
    CHECK(read_sample(card.dump()).problem().place == "/parts/lanternleaf");
    card["parts"] = {{"lanternleaf", 1}, {"kind", "parts"}};
    CHECK(read_sample(card.dump()).ok());
}
