// The command line from outside: exit status, one line for what cannot be read, and JSON that keeps its
// promise.
#include "files/files.h"
#include "support/ask_verb.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

void is_one_line(const std::string& text) {
    INFO(text);
    CHECK_FALSE(text.empty());
    CHECK(std::count(text.begin(), text.end(), '\n') == 1);
    CHECK(text.back() == '\n');
}

const std::string kPatchLine =
    R"({ "kind": "patch", "id": "P1", "at_mm": [60, 45], "size_mm": [14, 14], "turn_deg": 0 },)";

// The sample's resistor lies beside the circuit; without it nothing but the circuit is left.
const std::string kResistorLine =
    R"("resistors": [ { "id": "R1", "ohm": 47, "at_mm": [90, 60], "turn_deg": 0 } ],)";

} // namespace

TEST_CASE("check --json of the sample keeps the format", "[verbs]") {
    const Answer answer = ask({"check", kSample, "--json"});
    INFO(answer.out << answer.err);
    REQUIRE(answer.status == 0);
    const Json json = answer.json();
    CHECK(json.at("title") == "One window");
    CHECK(json.at("problems") == 0);
    CHECK(json.at("cautions").is_number_integer());
    CHECK(json.at("cell").at("current_mA").get<double>() > 1.0);
    CHECK(json.at("cell").at("volts").get<double>() > 2.0);
    REQUIRE(json.at("leds").size() == 1);
    const Json& led = json.at("leds")[0];
    CHECK(led.at("id") == "L1");
    CHECK(led.at("state") == "lit");
    CHECK(led.at("current_mA") == json.at("cell").at("current_mA")); // one light takes all the current
    CHECK(led.at("brightness").get<double>() > 0.0);
    const int minus = led.at("negative_net");
    const int plus = led.at("positive_net");
    CHECK(minus != plus);
    for (const Json& net : json.at("nets")) {
        const Json& members = net.at("members");
        const auto holds = [&](const char* name) {
            return std::find(members.begin(), members.end(), name) != members.end();
        };
        if (net.at("id") == minus) {
            CHECK(net.at("side") == "negative");
            CHECK((holds("holder-") && holds("N1") && holds("L1-")));
        }
        if (net.at("id") == plus) {
            CHECK(net.at("side") == "positive");
            CHECK((holds("holder+") && holds("S1") && holds("L1+")));
        }
    }
    for (const Json& finding : json.at("findings")) {
        for (const char* key : {"rule", "level", "at_mm", "parts", "text", "fix"}) {
            CHECK(finding.contains(key));
        }
    }
    CHECK(answer.err.empty());
}

TEST_CASE("check says in words what it says in JSON", "[verbs]") {
    const Answer answer = ask({"check", kSample});
    CHECK(answer.status == 0);
    CHECK_THAT(answer.out,
               Contains("One window") && Contains("L1") && Contains("lit") && Contains("0 problems"));
}

TEST_CASE("check of a card with a problem has status 1", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-problem");
    const std::string card = varied(folder, kPatchLine, "");
    const Answer json = ask({"check", card, "--json"});
    CHECK(json.status == 1);
    CHECK(json.json().at("problems").get<int>() >= 1);
    const Answer text = ask({"check", card});
    CHECK(text.status == 1);
    CHECK_THAT(text.out, Contains("problem: ") && Contains("To do: "));
}

TEST_CASE("A title cannot steer the terminal, and any title is valid JSON", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-title");
    const std::string card =
        varied(folder, "\"One window\"", "\"Gr\\u00fcn \\u001b[2J\\u009b2J\\n\xF0\x9F\x92\xA1 \\\"x\\\"\"");
    const Answer text = ask({"check", card});
    CHECK(text.out.find('\x1b') == std::string::npos);
    CHECK(text.out.find("\xC2\x9B") == std::string::npos);
    CHECK_THAT(text.out, Contains("Gr\u00fcn"));
    CHECK_THAT(ask({"check", card, "--json"}).json().at("title").get<std::string>(),
               Contains("\xF0\x9F\x92\xA1"));
}

TEST_CASE("steps --json lists seven steps with moves and readings", "[verbs]") {
    const Answer answer = ask({"steps", kSample, "--json"});
    REQUIRE(answer.status == 0);
    const Json steps = answer.json().at("steps");
    REQUIRE(steps.size() == 7);
    int checks = 0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        CHECK(steps[i].at("step") == i + 1);
        for (const char* key : {"name", "title", "goal", "moves", "proof"}) {
            CHECK(steps[i].contains(key));
        }
        for (const Json& move : steps[i].at("moves")) {
            for (const char* key :
                 {"id", "kind", "title", "sentence", "why", "path_mm", "length_mm", "check"}) {
                CHECK(move.contains(key));
            }
        }
        for (const Json& check : steps[i].at("proof")) {
            ++checks;
            CHECK_FALSE(check.at("expect").get<std::string>().empty());
            if (check.at("kind") == "resistance") {
                CHECK(check.at("low").get<double>() <= check.at("expected").get<double>());
                CHECK(check.at("expected").get<double>() <= check.at("high").get<double>());
            }
        }
    }
    CHECK(checks >= 7);
    CHECK_THAT(ask({"steps", kSample}).out, Contains("1  Mount the cell holder") && Contains("Check "));
}

TEST_CASE("make proves the sample and writes a journal and a record", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-make");
    const std::string out = folder.at("new/builds");
    const Answer answer = ask({"make", kSample, "--out", out, "--json"});
    INFO(answer.out << answer.err);
    REQUIRE(answer.status == 0);
    const Json json = answer.json();
    CHECK(json.at("proved") == 7);
    CHECK(json.at("stopped_at").is_null());
    CHECK(json.at("journal") == out + "/one-window.build.jsonl");
    const Outcome<Parts> parts = read_parts(make::get_file(kTop + "/assets/parts.json"), "parts");
    REQUIRE(parts.ok());
    const Outcome<std::vector<Event>> events =
        read_journal(make::get_file(out + "/one-window.build.jsonl"), "journal");
    REQUIRE(events.ok());
    const Outcome<Record> record = fold(events.value(), parts.value());
    REQUIRE(record.ok());
    CHECK(record.value().finished);
    CHECK(write_record(record.value(), parts.value()) == make::get_file(out + "/one-window.record.json"));
    const Json written = Json::parse(make::get_file(out + "/one-window.record.json"));
    CHECK(written.at("kind") == "record");
    CHECK(written.at("walked") == true);
    CHECK(written.at("started") == "2026-05-04T10:00:00Z");
    CHECK(written.at("used").at("leds").at("carrier-white") == 1);
    // By hand from the card: 35 + 88 mm of N1, 6 + 45 + 58 mm of S1.
    CHECK(written.at("used").at("tape_mm").at("copper-5") == Approx(232.0));
}

TEST_CASE("make never writes over a build", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-again");
    const std::string out = folder.at("builds");
    REQUIRE(ask({"make", kSample, "--out", out}).status != 2);
    const std::string first = make::get_file(out + "/one-window.build.jsonl");
    const Answer second = ask({"make", kSample, "--out", out, "--json"});
    CHECK(second.json().at("journal") == out + "/one-window-2.build.jsonl");
    CHECK(make::get_file(out + "/one-window.build.jsonl") == first);
    CHECK(files_in(out, "").size() == 4);
}

TEST_CASE("make --copy writes the record as page, sheet and table beside it", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-copy");
    const std::string out = folder.at("builds");
    const Answer made = ask({"make", kSample, "--out", out, "--copy", "--json"});
    REQUIRE(made.json().at("copy") == out + "/one-window.copy");
    for (const char* name : {"record.html", "record.pdf", "readings.csv", "record.json", "build.jsonl",
                             "one-window.card.json"}) {
        INFO(name);
        CHECK(files_in(out + "/one-window.copy", name).size() == 1);
    }
    CHECK(make::get_file(out + "/one-window.copy/record.json") ==
          make::get_file(out + "/one-window.record.json"));
    CHECK(ask({"make", kSample, "--out", out, "--copy", "--json"}).json().at("copy") ==
          out + "/one-window-2.copy");
}

TEST_CASE("make catches each slip of a script at its step", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-script");
    const std::string card = varied(folder, kResistorLine, "");
    const auto made = [&](const std::string& steps) {
        const std::string script = folder.at("s.json");
        make::put_file(script, R"({"lanternleaf":1,"kind":"script","steps":[)" + steps + "]}");
        return ask({"make", card, "--out", folder.at("out"), "--script", script, "--json"});
    };
    const Answer turned = made(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}]})");
    CHECK(turned.status == 1);
    CHECK(turned.json().at("stopped_at") == 6);
    const Answer forgotten = made(R"({"step":5,"changes":[{"kind":"patch-missing","part":"P1"}]})");
    CHECK(forgotten.status == 1);
    CHECK(forgotten.json().at("stopped_at") == 5);
    CHECK(Json::parse(make::get_file(forgotten.json().at("record"))).at("state") == "open");
    const Answer mended = made(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}],
        "if_stopped":{"fixes":[{"kind":"led-turned","part":"L1"}]}})");
    CHECK(mended.status == 0);
    const Answer regardless = made(R"({"step":6,"seen":{"L1":"dark"},"if_stopped":{"regardless":"late"}})");
    CHECK(regardless.status == 1);
    CHECK(regardless.json().at("stopped_at").is_null());
    const Answer slip = made(R"({"step":6,"changes":[{"kind":"led-turned","part":"L7"}]})");
    CHECK(slip.status == 2);
    is_one_line(slip.err);
    CHECK_THAT(slip.err, Contains("s.json") && Contains("L7"));
}

TEST_CASE("What cannot be read has status 2, one line, and changes nothing", "[verbs]") {
    const make::TempFolder folder("lanternleaf-verbs-bad");
    const std::string broken = folder.at("broken.card.json");
    make::put_file(broken, "{\n  \"lanternleaf\": 1,\n  oops");
    const std::string out = folder.at("out");
    const std::string taken = folder.at("taken");
    make::put_file(taken, "a file, not a folder");
    const std::vector<std::vector<std::string>> asked = {
        {"check", folder.at("none.card.json")},
        {"check", folder.at("")},
        {"check", broken, "--json"},
        {"steps", broken},
        {"make", broken, "--out", out},
        {"make", kSample, "--out", taken},
        {"make", kSample, "--out", taken + "/below"},
        {"make", kSample, "--out", out, "--script", broken},
        {"make", kSample, "--out", out, "--script", folder.at("none.json")},
        {"make", kSample},
        {"check"},
        {"check", kSample, "more"},
        {"check", kSample, "--nonsense"},
        {"make", kSample, "--out"},
        {"dance", kSample},
        {"shot", kSample, "--screen", "shelf", "--size", "10x10", "--out", "x.png"}};
    for (const std::vector<std::string>& args : asked) {
        const Answer answer = ask(args);
        INFO(args.front() << " with " << args.size() - 1 << " more");
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        is_one_line(answer.err);
    }
    CHECK_THAT(ask({"check", broken}).err, Contains(broken) && Contains("line 3"));
    CHECK_FALSE(std::filesystem::exists(out));
    VerbSurroundings elsewhere;
    elsewhere.assets = folder.at("nowhere");
    const Answer lost = ask({"check", kSample}, elsewhere);
    CHECK(lost.status == 2);
    is_one_line(lost.err);
}

TEST_CASE("Help lists the verbs that exist", "[verbs]") {
    for (const char* word : {"--help", "-h"}) {
        const Answer help = ask({word});
        CHECK(help.status == 0);
        CHECK_THAT(help.out, Contains("check CARD") && Contains("make CARD --out DIR"));
        CHECK_THAT(help.out, !Contains("shot"));
    }
    CHECK(ask({"check", "--help"}).status == 0);
    CHECK_THAT(ask({"make", "--help"}).out, Contains("--script"));
    CHECK_THAT(ask({"--version"}).out, Contains("lanternleaf 0."));
}

TEST_CASE("shot goes to the program that can draw", "[verbs]") {
    VerbSurroundings around;
    ShotRequest asked;
    around.shot = [&asked](const ShotRequest& request) -> Outcome<Done> {
        asked = request;
        return Done{};
    };
    CHECK(ask({"shot", kSample, "--screen", "make", "--size", "1280x800", "--out", "x.png"}, around).status ==
          0);
    CHECK(asked.card == kSample);
    CHECK(asked.screen == "make");
    CHECK(asked.width == 1280);
    CHECK(asked.height == 800);
    CHECK(asked.out == "x.png");
    for (const char* size : {"", "1280", "x", "0x10", "10x", "10x-1", "10x10x10", "99999x1", " 1x1"}) {
        const Answer answer =
            ask({"shot", kSample, "--screen", "make", "--size", size, "--out", "x.png"}, around);
        INFO(size);
        CHECK(answer.status == 2);
        is_one_line(answer.err);
    }
    around.shot = [](const ShotRequest&) -> Outcome<Done> {
        return Problem{"x.png", "", "could not be written"};
    };
    CHECK(ask({"shot", kSample, "--screen", "make", "--size", "8x8", "--out", "x.png"}, around).status == 2);
    CHECK_THAT(ask({"--help"}, around).out, Contains("shot CARD"));
}

TEST_CASE("What opens the app is not for the verbs", "[verbs]") {
    const auto for_verbs = [](std::vector<std::string> args) { return is_for_verbs(args); };
    CHECK_FALSE(for_verbs({}));
    CHECK_FALSE(for_verbs({"my.card.json"}));
    CHECK_FALSE(for_verbs({"my.build.jsonl"}));
    CHECK(for_verbs({"check", "my.card.json"}));
    CHECK(for_verbs({"--help"}));
    CHECK(for_verbs({"dance"}));
}
