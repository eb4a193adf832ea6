#include "record/script.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

std::string script_refusal(const std::string& text) {
    const Outcome<BuildScript> script = read_script(text, "s.json");
    return script ? "" : script.problem().sentence();
}

std::string with_steps(const std::string& steps) {
    return R"({"lanternleaf":1,"kind":"script","steps":)" + steps + "}";
}

} // namespace

TEST_CASE("A script is read whole", "[record][script]") {
    const Outcome<BuildScript> read = read_script(R"({
        "lanternleaf": 1, "kind": "script", "$schema": "script.schema.json", "note": "two slips", "for": "class",
        "steps": [
            { "step": 4, "note": "left-handed",
              "changes": [ { "kind": "joint-cut", "part": "S1", "at_mm": [60, 35], "mm": 6 } ],
              "readings": [ { "check": "flap-to-bed", "value": "OL" }, { "check": "flap-to-L1+", "value": 0.4, "by": "eye" } ],
              "seen": { "L1": "dim" },
              "if_stopped": { "fixes": [ { "kind": "led-turned", "part": "L1" } ], "readings": [],
                              "seen": { "L1": "lit", "L2": "dark" }, "regardless": "" } } ] })",
                                                  "s.json");
    INFO((read ? "" : read.problem().sentence()));
    REQUIRE(read.ok());
    const BuildScript& script = read.value();
    CHECK(script.audience == Audience::school_class);
    CHECK_FALSE(script.steps[2].given);
    const ScriptStep& step = script.steps[3];
    CHECK(step.given);
    CHECK(step.note == "left-handed");
    REQUIRE(step.changes.size() == 1);
    CHECK(step.changes[0].kind == ChangeKind::joint_cut);
    CHECK(step.changes[0].at_mm == Vec2{60, 35});
    REQUIRE(step.observed.readings.size() == 2);
    CHECK(step.observed.readings[0].open);
    CHECK(step.observed.readings[1].value == 0.4);
    CHECK_FALSE(step.observed.readings[1].meter);
    REQUIRE(step.observed.seen.size() == 1);
    CHECK(step.observed.seen[0].state == "dim");
    CHECK(step.fixes.size() == 1);
    CHECK(step.observed_after.seen.size() == 2);
    CHECK(step.regardless == "");
}

TEST_CASE("The smallest script says nothing", "[record][script]") {
    const Outcome<BuildScript> read = read_script(R"({"lanternleaf":1,"kind":"script"})", "s.json");
    REQUIRE(read.ok());
    CHECK_FALSE(read.value().audience.has_value());
}

TEST_CASE("A script that is not as expected is refused with its place", "[record][script]") {
    CHECK_THAT(script_refusal("{"), Contains("s.json") && Contains("line 1"));
    CHECK_THAT(script_refusal("[]"), Contains("s.json"));
    CHECK_THAT(script_refusal(R"({"lanternleaf":2,"kind":"script"})"), Contains("newer"));
    CHECK_THAT(script_refusal(R"({"lanternleaf":1,"kind":"card"})"), Contains("/kind"));
    CHECK_THAT(script_refusal(R"({"lanternleaf":1,"kind":"script","for":"cats"})"), Contains("/for"));
    CHECK_THAT(script_refusal(with_steps("{}")), Contains("/steps"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":8}])")), Contains("/steps/0/step"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":1},{"step":1}])")), Contains("/steps/1/step"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":1,"chnages":[]}])")),
               Contains("/steps/0") && Contains("chnages"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":1,"changes":[{"kind":"melted"}]}])")),
               Contains("/steps/0/changes/0/kind"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":6,"seen":{"L1":"bright"}}])")),
               Contains("/steps/0/seen/L1"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":6,"if_stopped":{"fix":[]}}])")),
               Contains("/if_stopped"));
    CHECK_THAT(script_refusal(with_steps(R"([{"step":6,"readings":[{"value":1}]}])")), Contains("\"check\""));
}
