// The coin-cell words and numbers: complete, dated, and with no promise in them.
#include "files/files.h"
#include "safety/audience.h"
#include "safety/regions.h"
#include "support/words_of.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <iterator>

using namespace lanternleaf;

namespace {

RegionTable shipped_regions() {
    const std::string path = std::string(LANTERNLEAF_SOURCE) + "/assets/safety/regions.json";
    const Outcome<std::string> text = read_file(path);
    REQUIRE(text.ok());
    const Outcome<RegionTable> table = read_regions(text.value(), path);
    REQUIRE(table.ok());
    return table.value();
}

} // namespace

TEST_CASE("The shipped region table is dated and every region says what to do first", "[safety]") {
    const RegionTable table = shipped_regions();
    CHECK(spoken_date(table.checked).find("2026") != std::string::npos);
    CHECK_FALSE(table.checked_how.empty());
    for (const Region& region : table.regions) {
        INFO(region.id);
        CHECK_FALSE(region.first.empty());
        CHECK_FALSE(region.food.empty());
        CHECK_FALSE(region.source.empty());
    }
    // Queensland Poisons Information Centre: 13 11 26, called first, nothing by mouth unless they say so.
    CHECK(region_of(table, "au").help == "13 11 26");
    CHECK(region_of(table, "au").first.find("first") != std::string::npos);
    // National Capital Poison Center: no honey under twelve months.
    CHECK(region_of(table, "us").food.find("under one year") != std::string::npos);
    CHECK(region_of(table, "nowhere").id == "any");
}

TEST_CASE("Every region says in every language what to do, with the same numbers and the same order",
          "[safety]") {
    const auto numbers_in = [](const std::string& text) {
        std::string digits;
        std::copy_if(text.begin(), text.end(), std::back_inserter(digits),
                     [](char c) { return c >= '0' && c <= '9'; });
        return digits;
    };
    const RegionTable table = shipped_regions();
    for (const char* language : {"de", "es"}) {
        const Words words = words_of(language);
        CHECK(checked_how(table, words) != table.checked_how);
        // "go" and "call" of the first sentences, in the order in which they stand.
        const bool german = words.language() == "de";
        const auto order = [](const std::string& text, const char* go, const char* call) {
            return text.find(go) < text.find(call);
        };
        for (const Region& region : table.regions) {
            const Region said = told(region, words);
            INFO(language << " " << region.id << ": " << said.first << " " << said.food);
            CHECK(said.first != region.first);
            CHECK(said.food != region.food);
            CHECK(said.ambulance == region.ambulance);
            CHECK(said.help == region.help);
            CHECK(said.help_name.empty() == region.help_name.empty());
            CHECK(numbers_in(said.first) == numbers_in(region.first));
            std::string english_first = " " + region.first;
            std::transform(english_first.begin(), english_first.end(), english_first.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
            std::string first = said.first;
            std::transform(first.begin(), first.end(), first.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
            CHECK(order(first, german ? "geh " : "ve ", german ? "ruf" : "llama") ==
                  order(english_first, " go ", "call "));
        }
        const Region honey = told(region_of(table, "us"), words);
        CHECK(honey.food.find(german ? "Honig nie einem Baby unter einem Jahr" : "nunca a un bebé") !=
              std::string::npos);
        CHECK(advice_for(Audience::sale, Closure::tool, words).must_choose);
        CHECK(short_date("2026-03-05", words) == (german ? "5. März" : "5 mar"));
        CHECK(spoken_date("2026-03-05", words) == (german ? "5. März 2026" : "5 de marzo de 2026"));
    }
    CHECK(told(region_of(table, "us"), english()).first == region_of(table, "us").first);
}

TEST_CASE("A region file that is not one gives one sentence with its place", "[safety]") {
    const auto sentence = [](const std::string& text) {
        const auto outcome = read_regions(text, "regions.json");
        REQUIRE_FALSE(outcome.ok());
        return outcome.problem().sentence();
    };
    CHECK(sentence("{") == "regions.json: expected a JSON object with a list of regions");
    CHECK(sentence(R"({"checked":"x","checked_how":"y","regions":[]})") ==
          "regions.json: /regions: expected a list with at least one region");
    CHECK(sentence(R"({"checked":"x","checked_how":"y","regions":[{"id":"uk"}]})") ==
          "regions.json: /regions/0/name: expected text");
}

TEST_CASE("A holder that fingers open is not offered as it is to small children", "[safety]") {
    for (const Audience audience : {Audience::small_children, Audience::school_class}) {
        const AudienceAdvice advice = advice_for(audience, Closure::finger);
        CHECK(advice.must_choose);
        CHECK(std::none_of(advice.choices.begin(), advice.choices.end(),
                           [](const AudienceChoice& c) { return c.id == "go-on"; }));
        CHECK(advice.choices.front().holder == "screw-20");
    }
    CHECK_FALSE(advice_for(Audience::adults, Closure::finger).must_choose);
    CHECK(advice_for(Audience::sale, Closure::tool).must_choose);
}

TEST_CASE("No wording promises safety or compliance", "[safety]") {
    for (const Audience audience : {Audience::adults, Audience::children, Audience::small_children,
                                    Audience::school_class, Audience::sale}) {
        for (const Closure closure : {Closure::finger, Closure::tool}) {
            const AudienceAdvice advice = advice_for(audience, closure);
            std::string all = advice.headline;
            for (const std::string& sentence : advice.sentences) {
                all += " " + sentence;
            }
            for (const AudienceChoice& choice : advice.choices) {
                all += " " + choice.title + " " + choice.sentence;
            }
            for (const char* promise :
                 {"complian", "child-safe", "childproof", "is safe", "tested and", "certif"}) {
                INFO(all);
                CHECK(all.find(promise) == std::string::npos);
            }
        }
    }
}
