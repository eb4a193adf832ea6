// route from outside: what it writes is a card that check finds nothing in, and the exit status tells.
#include "support/ask_verb.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

TEST_CASE("route writes a card that check finds sound", "[verbs][route]") {
    const make::TempFolder folder("lanternleaf-route-verb");
    const std::string path = folder.at("new.card.json");
    const std::string card = GENERATE(as<std::string>(), "window-candle", "harbour-lighthouse");
    const Answer answer =
        ask({"route", kTop + "/assets/cards/" + card + ".card.json", "--out", path, "--json"});
    INFO(answer.out << answer.err);
    REQUIRE(answer.status == 0);
    const Json report = Json::parse(answer.out);
    CHECK(report["clean"] == true);
    CHECK(report["why_not"].is_null());
    CHECK(report["file"] == path);
    CHECK(report["findings"].empty());
    CHECK(report["ratio"].get<double>() ==
          Approx(report["length_mm"].get<double>() / report["bound_mm"].get<double>()).epsilon(1e-4));
    const Answer check = ask({"check", path, "--json"});
    CHECK(check.status == 0);
    const Json found = Json::parse(check.out);
    CHECK(found["problems"] == 0);
    CHECK(found["cautions"] == 0);
    for (const Json& led : found["leds"]) {
        CHECK(led["state"] == "lit");
    }
    // The same card comes out the second time.
    const std::string bytes = make::get_file(path);
    CHECK(ask({"route", kTop + "/assets/cards/" + card + ".card.json", "--out", path}).status == 0);
    CHECK(make::get_file(path) == bytes);
}

TEST_CASE("route in words tells length, folds and what was turned", "[verbs][route]") {
    const make::TempFolder folder("lanternleaf-route-words");
    const Answer answer = ask({"route", kSample, "--out", folder.at("new.card.json")});
    CHECK(answer.status == 0);
    CHECK_THAT(answer.out, Contains("Tape: ") && Contains("fold") && Contains("Written: "));
}

TEST_CASE("route says why it cannot lay a crowded card, and leaves with status 1", "[verbs][route]") {
    const make::TempFolder folder("lanternleaf-route-crowded");
    Json card = Json::parse(make::get_file(kSample));
    for (int i = 2; i < 12; ++i) {
        Json led = card["leds"][0];
        led["id"] = std::string("L").append(std::to_string(i));
        led["at_mm"] = {100 + 8 * (i % 4), 30 + 8 * (i / 4)};
        card["leds"].push_back(led);
    }
    make::put_file(folder.at("crowded.card.json"), card.dump());
    const Answer answer =
        ask({"route", folder.at("crowded.card.json"), "--out", folder.at("new.card.json"), "--json"});
    CHECK(answer.status == 1);
    const Json report = Json::parse(answer.out);
    CHECK(report["clean"] == false);
    CHECK_THAT(report["why_not"].get<std::string>(), Contains(report["move_led"].get<std::string>()));
    CHECK(std::filesystem::exists(folder.at("new.card.json")));
}

TEST_CASE("route refuses what it cannot read with one line and writes nothing", "[verbs][route]") {
    const make::TempFolder folder("lanternleaf-route-refused");
    const std::string path = folder.at("new.card.json");
    for (const std::vector<std::string>& args :
         {std::vector<std::string>{"route", folder.at("none.card.json"), "--out", path},
          std::vector<std::string>{"route", kSample}}) {
        const Answer answer = ask(args);
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        CHECK(std::count(answer.err.begin(), answer.err.end(), '\n') == 1);
        CHECK_FALSE(std::filesystem::exists(path));
    }
    const Answer nowhere = ask({"route", kSample, "--out", folder.at("no/such/folder/new.card.json")});
    CHECK(nowhere.status == 2);
    CHECK(std::count(nowhere.err.begin(), nowhere.err.end(), '\n') == 1);
}
