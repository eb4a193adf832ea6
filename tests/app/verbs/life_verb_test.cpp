// `life` from outside: its JSON as app/verbs/life_report.h describes it, its CSV, its table, and what it says
// to options it cannot read.
#include "support/ask_verb.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

const std::string kTram = kTop + "/assets/cards/night-tram.card.json";

Json life_json(std::vector<std::string> args) {
    args.insert(args.begin(), "life");
    args.push_back("--json");
    const Answer answer = ask(args);
    INFO(answer.out << answer.err);
    REQUIRE(answer.status == 0);
    return Json::parse(answer.out);
}

void are_rising(const Json& marks) {
    for (const char* mark : {"dimmer", "plainly_dim", "dark"}) {
        const Json& range = marks.at(mark);
        REQUIRE(range.size() == 2);
        if (!range[0].is_null() && !range[1].is_null()) {
            CHECK(range[0].get<double>() <= range[1].get<double>());
        }
    }
    CHECK(marks.at("dimmer")[0].get<double>() <= marks.at("plainly_dim")[0].get<double>());
}

} // namespace

TEST_CASE("life --json has what its description names", "[verbs][life]") {
    const Json json = life_json({kTram});
    CHECK(json.at("title") == "Night tram");
    CHECK(json.at("use") == "press");
    CHECK(json.at("shorted") == false);
    CHECK(json.at("estimate") == false);
    CHECK(json.at("makers").size() == 2);
    CHECK(json.at("cell").at("type") == "CR2032");
    CHECK(json.at("cell").at("fresh_mA").get<double>() > 5.0);
    for (const char* use : {"press", "left_on"}) {
        are_rising(json.at(use));
        are_rising(json.at(use).at("band"));
        CHECK(json.at(use).at("band").at("plainly_dim")[0].get<double>() <=
              json.at(use).at("plainly_dim")[0].get<double>());
    }
    CHECK(json.at("presses").at("plainly_dim")[0].get<double>() ==
          Approx(720.0 * json.at("press").at("plainly_dim")[0].get<double>()).epsilon(1e-3));
    REQUIRE(json.at("leds").size() == 12);
    for (const Json& led : json.at("leds")) {
        CHECK(led.at("colour").get<std::string>().size() == 7);
        CHECK(led.at("seen").get<double>() <= 1.0);
        CHECK(led.at("dark_from_start") == false);
        CHECK(led.contains("likeness"));
        are_rising(led.at("press"));
    }
    REQUIRE(json.at("curves").size() == 4);
    for (const Json& curve : json.at("curves")) {
        CHECK(curve.at("seen").size() == 12);
        CHECK(curve.at("seen").at("L7").size() == curve.at("hours").size());
        CHECK(curve.at("cell_V").back().get<double>() < curve.at("cell_V").front().get<double>());
    }
    CHECK_FALSE(json.at("helps").empty());
    CHECK(json.at("closing").at("closed_mm").get<double>() == Approx(5.7));
    CHECK(json.at("closing").at("letters").size() >= 10);
}

TEST_CASE("life listens to its options", "[verbs][life]") {
    const auto dim_h = [](const Json& json) { return json.at("left_on").at("plainly_dim")[0].get<double>(); };
    const Json usual = life_json({kSample});
    CHECK(dim_h(life_json({kSample, "--years", "10"})) < dim_h(usual));
    CHECK(life_json({kSample, "--temperature", "0"}).at("cell").at("fresh_mA").get<double>() <
          0.9 * usual.at("cell").at("fresh_mA").get<double>());
    CHECK(life_json({kSample, "--press", "10"}).at("presses").at("plainly_dim")[0].get<double>() ==
          Approx(0.5 * usual.at("presses").at("plainly_dim")[0].get<double>()).margin(1.0));
    CHECK(life_json({kSample, "--hours", "12"}).at("curves")[0].at("hours").back() == 12);
    CHECK(life_json({kSample, "--stock", "0.5"}).at("closing").at("closed_mm").get<double>() ==
          Approx(usual.at("closing").at("closed_mm").get<double>() + 1.0));
}

TEST_CASE("life --csv is one table", "[verbs][life]") {
    const Answer answer = ask({"life", kSample, "--csv", "--hours", "20"});
    REQUIRE(answer.status == 0);
    std::istringstream lines(answer.out);
    std::string line;
    std::getline(lines, line);
    CHECK(line == "maker,use,hours,presses,drawn_mAh,cell_V,cell_mA,L1 mA,L1 seen");
    int rows = 0;
    while (std::getline(lines, line)) {
        CHECK(std::count(line.begin(), line.end(), ',') == 8);
        ++rows;
    }
    CHECK(rows % 4 == 0); // two makers, two uses
    CHECK(rows > 100);
    CHECK_THAT(answer.out, Contains("FDK 2010,press,0,0,") && Contains("Panasonic 2005,left_on,20,,"));
}

TEST_CASE("life says in words what it says in JSON", "[verbs][life]") {
    const Answer answer = ask({"life", kTram});
    CHECK(answer.status == 0);
    CHECK_THAT(answer.out, Contains("Night tram") && Contains("Presses of 5 s until plainly dim") &&
                               Contains("What would help most") && Contains("5.7 mm thick") &&
                               Contains("pull tab"));
    CHECK(answer.err.empty());
}

TEST_CASE("A self-cycling light is reported in each colour", "[verbs][life]") {
    const make::TempFolder folder("lanternleaf-life-cycle");
    const Json json = life_json({varied(folder, "\"carrier-white\"", "\"carrier-cycle\"")});
    REQUIRE(json.at("phases").size() == 3);
    CHECK(json.at("phases")[0].at("colours")[0] == "red");
    CHECK(json.at("phases")[2].at("colours")[0] == "blue");
    CHECK(json.at("phases")[0].at("cell_mA").get<double>() >
          json.at("phases")[2].at("cell_mA").get<double>());
}

TEST_CASE("life of a card that cannot shine has status 1", "[verbs][life]") {
    const make::TempFolder folder("lanternleaf-life-short");
    const std::string patch =
        R"({ "kind": "patch", "id": "P1", "at_mm": [60, 45], "size_mm": [14, 14], "turn_deg": 0 },)";
    const std::string shorted = varied(folder, patch, "");
    const Answer text = ask({"life", shorted});
    CHECK(text.status == 1);
    CHECK_THAT(text.out, Contains("two faces are joined"));
    const Answer json = ask({"life", shorted, "--json"});
    CHECK(json.status == 1);
    CHECK(Json::parse(json.out).at("shorted") == true);
    CHECK(ask({"life", shorted, "--csv"}).status == 1);
}

TEST_CASE("life says in one line what it cannot read", "[verbs][life]") {
    const auto refused = [](const std::vector<std::string>& args, const char* says) {
        const Answer answer = ask(args);
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        CHECK(std::count(answer.err.begin(), answer.err.end(), '\n') == 1);
        CHECK_THAT(answer.err, Contains(says));
    };
    refused({"life", kSample, "--hours", "x"}, "--hours: expected a number from");
    refused({"life", kSample, "--press", "0"}, "--press");
    refused({"life", kSample, "--temperature", "200"}, "-40 to 85 C");
    refused({"life", kSample, "--stock", "nan"}, "--stock");
    refused({"life", kSample, "--json", "--csv"}, "not both");
    refused({"life", "/nowhere/at-all.card.json"}, "at-all.card.json");
}
