#include "engine/cardfile/card_files.h"

#include "cardfile/json_text.h"
#include "support/make_card.h"

#include <random>

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

// Also keeps GCC 12 from warning about `"text" + std::to_string(i)` where it is inlined.
std::string numbered(std::string text, int number) {
    return text.append(std::to_string(number));
}

Card read_back(const std::string& text, const Parts& parts) {
    const auto card = read_card(text, "back.card.json", parts);
    INFO((card.ok() ? std::string() : card.problem().sentence() + "\n" + text));
    REQUIRE(card.ok());
    return card.value();
}

void check_stable(const Card& card, const Parts& parts) {
    const std::string text = write_card(card);
    const Card back = read_back(text, parts);
    CHECK(back == card);
    CHECK(write_card(back) == text);
}

// Adds an unknown key to every object in the document that does not list types by id.
void mark(Json& value, const std::string& key, int& count) {
    static const std::vector<std::string> by_id = {"packages", "leds", "cells", "tapes", "holders", "foams"};
    const bool types = value.is_object() && std::find(by_id.begin(), by_id.end(), key) != by_id.end();
    for (auto item = value.begin(); item != value.end(); ++item) {
        if (item->is_structured()) {
            mark(*item, value.is_object() ? item.key() : "", count);
        }
    }
    if (value.is_object() && !types) {
        value[numbered("later-", ++count)] = {{"deep", Json::array({1, 2.5, "é\n", nullptr, {{"x", true}}})}};
    }
}

} // namespace

TEST_CASE("The sample card is read as it stands", "[cardfile]") {
    const Card card = sample();
    Card expected = make::sample_card();
    expected.note = "free text, optional";
    expected.sheet.art = Art{"one-window.png", {0, 0}, 148, {}};
    expected.resistors.push_back(make::resistor("R1", 47, {90, 60}));
    CHECK(card == expected);
    check_stable(card, shipped());
}

TEST_CASE("Cards built in memory read back as they are", "[cardfile]") {
    check_stable(make::sample_card(), make::test_parts());
    check_stable(make::row_card(40), make::test_parts());
    check_stable(make::bare_card(), make::test_parts());
}

TEST_CASE("What may be left out may be left out, and is not written", "[cardfile]") {
    Json least = sample_json();
    for (const char* key : {"note", "for", "resistors", "foam"}) {
        least.erase(key);
    }
    for (const char* key : {"folds", "keepouts", "art"}) {
        least["sheet"].erase(key);
    }
    const auto card = read_sample(least.dump());
    REQUIRE(card.ok());
    CHECK(card.value().audience == Audience::small_children);
    CHECK_FALSE(card.value().audience_given);
    CHECK_FALSE(card.value().foam.has_value());
    CHECK(Json::parse(write_card(card.value())) == least);
}

TEST_CASE("Each audience has its word", "[cardfile]") {
    const std::pair<const char*, Audience> words[] = {{"adults", Audience::adults},
                                                      {"children", Audience::children},
                                                      {"small-children", Audience::small_children},
                                                      {"class", Audience::school_class},
                                                      {"sale", Audience::sale}};
    for (const auto& [word, audience] : words) {
        Json card = sample_json();
        card["for"]["who"] = word;
        const auto read = read_sample(card.dump());
        REQUIRE(read.ok());
        CHECK(read.value().audience == audience);
        CHECK(read.value().audience_given);
        check_stable(read.value(), shipped());
    }
}

TEST_CASE("Unknown keys of every object are kept and written back", "[cardfile]") {
    Json card = sample_json();
    card["laid"][0]["ends"] = {"plain", "folded"};
    card["parts"] = Json::parse(source_text("assets/parts.json"));
    int marks = 0;
    mark(card, "", marks);
    // leds and cells are lists of things in a card and types by id in parts; the list's elements are marked.
    CHECK(marks > 60);
    const auto read = read_sample(card.dump());
    INFO((read.ok() ? std::string() : read.problem().sentence()));
    REQUIRE(read.ok());
    const std::string text = write_card(read.value());
    for (int i = 1; i <= marks; ++i) {
        INFO(i);
        CHECK(text.find(numbered("\"later-", i).append("\"")) != std::string::npos);
    }
    // Nothing else changed either: equal but for the order of keys.
    CHECK(nlohmann::json::parse(text) == nlohmann::json::parse(card.dump()));
    check_stable(read.value(), shipped());
}

TEST_CASE("Unknown keys stand last, in the order they had", "[cardfile]") {
    const std::string text =
        "{\"zebra\": 1, \"apple\": [1.0, 2], \"mango\": {}," + sample_json().dump().substr(1);
    const auto read = read_sample(text);
    REQUIRE(read.ok());
    CHECK(read.value().extras.json == R"({ "zebra": 1, "apple": [1, 2], "mango": {} })");
    const std::string written = write_card(read.value());
    CHECK(written.find("\"foam\"") < written.find("\"zebra\""));
    CHECK(written.find("\"zebra\"") < written.find("\"apple\""));
    CHECK(written.find("\"apple\"") < written.find("\"mango\""));
}

TEST_CASE("A card's own parts win, are used and are written back", "[cardfile]") {
    Json card = sample_json();
    Json led = Json::parse(source_text("assets/parts.json"))["leds"]["carrier-white"];
    card["leds"][0]["type"] = "mine";
    led["package"] = "tiny";
    card["parts"] = {{"leds", {{"mine", led}}}};
    CHECK(read_sample(card.dump()).problem().place == "/parts/leds/mine/package");
    card["parts"]["packages"] = {
        {"tiny", Json::parse(source_text("assets/parts.json"))["packages"]["carrier"]}};
    const auto read = read_sample(card.dump());
    INFO((read.ok() ? std::string() : read.problem().sentence()));
    REQUIRE(read.ok());
    CHECK(read.value().own_parts.leds.at("mine").package == "tiny");
    check_stable(read.value(), shipped());
}

TEST_CASE("The text is laid out for people", "[cardfile]") {
    Card card = make::sample_card();
    for (int i = 0; i < 60; ++i) {
        std::get<Strip>(card.laid[0]).path_mm.push_back({118.0 + i, i % 2 == 0 ? 45.5 : 0.1});
    }
    const std::string text = write_card(card);
    CHECK(text.rfind("{\n  \"lanternleaf\": 1,\n  \"kind\": \"card\",\n  \"title\": \"One window\",\n", 0) ==
          0);
    CHECK(text.back() == '\n');
    CHECK(text.find("    { \"id\": \"L1\", \"type\": \"carrier-white\", \"at_mm\": [110, 40], \"turn_deg\": "
                    "270 }\n") != std::string::npos);
    std::size_t start = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', start)) {
        CHECK(end - start <= 110);
        start = end + 1;
    }
    check_stable(card, make::test_parts());
}

TEST_CASE("Numbers take the fewest digits that read back as the same number", "[cardfile]") {
    using cardfile::number_text;
    CHECK(number_text(148.0) == "148");
    CHECK(number_text(0.1) == "0.1");
    CHECK(number_text(-0.0) == "0");
    CHECK(number_text(100000.0) == "100000");
    CHECK(number_text(0.000493) == "0.000493");
    CHECK(number_text(1.33e-18) == "1.33e-18");
    CHECK(number_text(0.1 + 0.2) == "0.30000000000000004");
    std::mt19937_64 random(20261125);
    for (int i = 0; i < 20'000; ++i) {
        const double mantissa = std::uniform_real_distribution<double>(-1, 1)(random);
        const double value = std::ldexp(mantissa, std::uniform_int_distribution<int>(-200, 200)(random));
        REQUIRE(Json::parse(number_text(value)).get<double>() == value);
    }
}

TEST_CASE("Random cards survive the trip to the file and back", "[cardfile]") {
    const Parts parts = make::test_parts();
    std::mt19937_64 random(7);
    const auto mm = [&random] { return std::uniform_real_distribution<double>(-500, 500)(random); };
    const auto up_to = [&random](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
    const char* titles[] = {
        "", "Zwölf Fenster", "\"quoted\" \\ back", "two\nlines\ttab", "冬の灯り 🕯", "\x7f \x01"};
    for (int round = 0; round < 300; ++round) {
        Card card = make::row_card(up_to(6));
        card.title = titles[up_to(5)];
        card.note = titles[up_to(5)];
        card.audience_given = up_to(1) == 1;
        card.audience = card.audience_given ? static_cast<Audience>(up_to(4)) : Audience::small_children;
        card.cell.count = 1 + up_to(9);
        card.cell.face_down = up_to(1) == 1 ? CellFace::positive : CellFace::negative;
        card.holder.at_mm = {mm(), mm()};
        card.holder.turn_deg = mm();
        if (up_to(1) == 1) {
            card.foam.reset();
        }
        for (int i = up_to(4); i > 0; --i) {
            Strip strip = make::strip(numbered("X", i), static_cast<Side>(up_to(2)), {}, "fabric-5");
            for (int point = 2 + up_to(30); point > 0; --point) {
                strip.path_mm.push_back({mm(), mm()});
            }
            strip.ends = {static_cast<EndStyle>(up_to(1)), static_cast<EndStyle>(up_to(1))};
            card.laid.emplace_back(strip);
            card.resistors.push_back(
                make::resistor(numbered("R", i), 1 + up_to(1000) / 7.0, {mm(), mm()}, mm()));
        }
        check_stable(card, parts);
    }
}
