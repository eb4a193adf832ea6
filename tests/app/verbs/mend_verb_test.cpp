// `mend` from outside: what is seen goes in, causes and the next test come out; what cannot be read is one
// line that names the option.
#include "support/ask_verb.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

const std::string kHarbour = kTop + "/assets/cards/harbour-lighthouse.card.json";

Answer mend(std::vector<std::string> args, const std::string& card = kHarbour) {
    args.insert(args.begin(), {"mend", card});
    return ask(args);
}

const std::string kOneDark = "L1=lit,L2=lit,L3=lit,L4=lit,L5=dark,L6=lit,L7=lit";

} // namespace

TEST_CASE("mend names the one dark light first, and a test to make sure", "[verbs]") {
    const Answer answer = mend({"--seen", kOneDark, "--json"});
    REQUIRE(answer.status == 0);
    const Json json = Json::parse(answer.out);
    CHECK(json["answers"] == 7);
    const Json& first = json["causes"][0];
    CHECK(first["kind"] == "led-turned");
    CHECK(first["places"][0]["parts"][0] == "L5");
    CHECK(first["places"][0]["at_mm"] == Json({87, 38}));
    CHECK(first["found"]["kind"] == "led-turned");
    CHECK(first["probability"] > json["causes"][1]["probability"]);
    double sum = 0.0;
    for (const Json& cause : json["causes"]) {
        sum += cause["probability"].get<double>();
    }
    CHECK(sum <= 1.0);
    const Json& test = json["next_test"];
    CHECK(test["seconds"] > 0);
    CHECK(test["outcomes"].size() >= 2);
    // The answer to the test that was named goes back in.
    const std::string id = test["id"];
    const Answer again = mend({"--seen", kOneDark, "--answer", id + "=0", "--json"});
    REQUIRE(again.status == 0);
    CHECK(Json::parse(again.out)["answers"] == 8);
}

TEST_CASE("mend in words says to take the cell out first", "[verbs]") {
    const Answer answer = mend({"--seen", kOneDark, "--pressed", "no"});
    REQUIRE(answer.status == 0);
    CHECK_THAT(answer.out, Contains("Take the cell out first") && Contains("L5 lies the wrong way round") &&
                               Contains("Next best test, about") && Contains("after 8 answers"));
}

TEST_CASE("mend takes readings and proved steps", "[verbs]") {
    const auto chance = [](const Answer& answer, const std::string& kind) {
        REQUIRE(answer.status == 0);
        double sum = 0.0;
        const Json json = Json::parse(answer.out);
        for (const Json& cause : json["causes"]) {
            sum += cause["kind"] == kind ? cause["probability"].get<double>() : 0.0;
        }
        return sum;
    };
    const std::string dark = "L1=dark,L2=dark,L3=lit,L4=lit,L5=lit,L6=lit,L7=dark";
    const Answer plain = mend({"--seen", dark, "--json"});
    const Answer open = mend({"--seen", dark, "--reading", "flap:L1+=OL,bed:L1-=0.4ohm", "--json"});
    CHECK(Json::parse(open.out)["answers"] == 9);
    const Json first = Json::parse(open.out)["causes"][0];
    CAPTURE(open.out);
    CHECK(first["places"][0]["parts"].back() == "S2");
    CHECK(chance(plain, "joint-loose") + chance(plain, "strip-broken") > 0.5);
    const Answer proved = mend({"--seen", kOneDark, "--proved", "5", "--json"});
    CHECK(chance(proved, "led-turned") >= chance(mend({"--seen", kOneDark, "--json"}), "led-turned"));
    CHECK(mend({"--reading", "cell=2.1V,L1+:L1-=0V", "--json"}).status == 0);
}

TEST_CASE("mend: what cannot be read is one line that names the option", "[verbs]") {
    const std::vector<std::vector<std::string>> wrong = {
        {"--seen", "L1"},
        {"--seen", "L1=purple"},
        {"--seen", "L99=dark"},
        {"--seen", ""},
        {"--pressed", "perhaps"},
        {"--reading", "flap:L3+=8apples"},
        {"--reading", "flap=8ohm"},
        {"--reading", "flap:L99+=8ohm"},
        {"--reading", "flap:L3+=-2ohm"},
        {"--answer", "warm=maybe"},
        {"--answer", "warm=7"},
        {"--answer", "dance=1"},
        {"--answer", "warm=-1"},
        {"--proved", "8"},
        {"--proved", "1.5"},
        {"--reading", "cell=OL"},
    };
    for (const std::vector<std::string>& args : wrong) {
        const Answer answer = mend(args);
        CAPTURE(args[0], args[1], answer.err);
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        CHECK(std::count(answer.err.begin(), answer.err.end(), '\n') == 1);
        CHECK_THAT(answer.err, Contains(args[0]) && Contains("expected"));
    }
    CHECK(mend({}, kTop + "/no-such.card.json").status == 2);
}
