// A build walked without hands: what a sound card proves, and where each mistake is caught.
#include "record/walk.h"

#include "support/make_build.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

Outcome<Walk> try_walk(const Card& card, const BuildScript& script) {
    return walk_build(card, make::kParts, script, "walk", [] { return make::kMorning_s; });
}

Walk walked(const Card& card, const BuildScript& script = {}) {
    Outcome<Walk> walk = try_walk(card, script);
    INFO((walk ? "" : walk.problem().sentence()));
    REQUIRE(walk.ok());
    return std::move(walk).value();
}

BuildScript script_of(const std::string& text) {
    const Outcome<BuildScript> script =
        read_script(R"({"lanternleaf":1,"kind":"script","steps":[)" + text + "]}", "s.json");
    INFO((script ? "" : script.problem().sentence()));
    REQUIRE(script.ok());
    return script.value();
}

int count_of(const Walk& walk, EventKind kind) {
    return static_cast<int>(std::count_if(walk.events.begin(), walk.events.end(),
                                          [kind](const Event& event) { return event.kind == kind; }));
}

int position_of(const Walk& walk, EventKind kind) {
    const auto found = std::find_if(walk.events.begin(), walk.events.end(),
                                    [kind](const Event& event) { return event.kind == kind; });
    return static_cast<int>(found - walk.events.begin());
}

bool has_rule(const StepWalk& step, const std::string& rule) {
    return std::any_of(step.findings.begin(), step.findings.end(),
                       [&](const Finding& finding) { return finding.rule == rule; });
}

} // namespace

TEST_CASE("A sound card proves all seven steps", "[record][walk]") {
    const Walk walk = walked(make::sample_card());
    for (const StepWalk& step : walk.steps) {
        INFO(static_cast<int>(step.step) << ": " << step.sentence);
        CHECK(step.state == VerdictState::proved);
        CHECK(step.moves > 0);
    }
    CHECK(walk.all_proved());
    CHECK(walk.record.finished);
    CHECK_THAT(walk.record.outcome, Contains("1 of 1 lit"));
    CHECK(walk.record.walked);
    CHECK(walk.record.cell_in);
    CHECK(count_of(walk, EventKind::adult) == 1);
    CHECK(position_of(walk, EventKind::adult) < position_of(walk, EventKind::cell_in));
}

TEST_CASE("Many lights are walked as well", "[record][walk]") {
    const Walk walk = walked(make::row_card(4));
    for (const StepWalk& step : walk.steps) {
        INFO(static_cast<int>(step.step) << ": " << step.sentence);
        CHECK(step.state == VerdictState::proved);
    }
    CHECK_THAT(walk.record.outcome, Contains("4 of 4 lit"));
}

TEST_CASE("The walk's events fold into the walk's record", "[record][walk]") {
    const Walk walk =
        walked(make::sample_card(), script_of(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}],
        "if_stopped":{"fixes":[{"kind":"led-turned","part":"L1"}]}})"));
    const std::string text = make::journal_text(walk.events);
    const Outcome<std::vector<Event>> read = read_journal(text, "w");
    REQUIRE(read.ok());
    const Outcome<Record> record = fold(read.value(), make::kParts);
    REQUIRE(record.ok());
    CHECK(write_record(record.value(), make::kParts) == write_record(walk.record, make::kParts));
}

TEST_CASE("A walk never pretends that a person measured", "[record][walk]") {
    const Walk walk = walked(make::sample_card());
    int readings = 0;
    for (const Event& event : walk.events) {
        if (event.kind == EventKind::reading) {
            ++readings;
            CHECK(event.reading.simulated);
            CHECK_FALSE(event.reading.yes.has_value()); // nothing was looked at
        }
    }
    CHECK(readings >= 5);
    CHECK(count_of(walk, EventKind::note) == 1);
}

TEST_CASE("A turned LED is caught in step 6, not before", "[record][walk]") {
    const BuildScript script = script_of(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}]})");
    const Walk walk = walked(make::sample_card(), script);
    REQUIRE(walk.steps.size() == 6);
    const StepWalk& step = walk.steps.back();
    CHECK(step.state == VerdictState::stopped);
    CHECK(has_rule(step, "led-reversed"));
    CHECK_FALSE(walk.all_proved());
    CHECK_FALSE(walk.record.finished);
    CHECK(walk.record.step == 6);
    // The reading says so too: the simulated light is dark where the plan has it lit.
    const auto lights = std::find_if(step.fits.begin(), step.fits.end(),
                                     [](const ReadingVerdict& fit) { return fit.check == "lights"; });
    REQUIRE(lights != step.fits.end());
    CHECK(lights->fit == ReadingFit::off);
    CHECK_THAT(lights->text, Contains("L1 is dark"));
}

TEST_CASE("An LED turned while the traces are laid is still caught in step 6", "[record][walk]") {
    const Walk walk =
        walked(make::sample_card(), script_of(R"({"step":3,"changes":[{"kind":"led-turned","part":"L1"}]})"));
    CHECK(walk.steps.size() == 6);
}

TEST_CASE("A forgotten patch is caught in step 5", "[record][walk]") {
    const Walk walk = walked(make::sample_card(),
                             script_of(R"({"step":5,"changes":[{"kind":"patch-missing","part":"P1"}]})"));
    REQUIRE(walk.steps.size() == 5);
    const StepWalk& step = walk.steps.back();
    CHECK(step.state == VerdictState::stopped);
    CHECK((has_rule(step, "crossing-bare") || has_rule(step, "short-circuit")));
    CHECK(count_of(walk, EventKind::cell_in) == 0); // the cell never comes near a short
    const auto apart = std::find_if(step.readings.begin(), step.readings.end(),
                                    [](const Reading& reading) { return reading.check == "flap-to-bed"; });
    REQUIRE(apart != step.readings.end());
    CHECK_FALSE(apart->open); // a meter would show the short
    REQUIRE(apart->value.has_value());
    CHECK(*apart->value < 5.0);
}

TEST_CASE("A torn negative trace is caught in step 3", "[record][walk]") {
    const Walk walk = walked(make::sample_card(), script_of(R"({"step":3,"changes":
        [{"kind":"tear","part":"N1","at_mm":[80,45],"mm":2}]})"));
    REQUIRE(walk.steps.size() == 3);
    CHECK(walk.steps.back().state == VerdictState::stopped);
    const auto off = std::find_if(walk.steps.back().fits.begin(), walk.steps.back().fits.end(),
                                  [](const ReadingVerdict& fit) { return fit.fit == ReadingFit::off; });
    REQUIRE(off != walk.steps.back().fits.end());
    CHECK_THAT(off->text, Contains("OL"));
}

TEST_CASE("A fix is judged again, with the cell out while mending", "[record][walk]") {
    const Walk walk =
        walked(make::sample_card(), script_of(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}],
        "if_stopped":{"fixes":[{"kind":"led-turned","part":"L1"}]}})"));
    CHECK(walk.all_proved());
    REQUIRE(walk.steps.size() == 7);
    CHECK(walk.steps[5].stops == 1);
    CHECK(walk.record.at(StepId::place_leds).stops == 1);
    CHECK(walk.record.changes.size() == 2);
    CHECK(count_of(walk, EventKind::cell_out) == 1);
    CHECK(count_of(walk, EventKind::cell_in) == 2);
}

TEST_CASE("Going on regardless is on record and is not proved", "[record][walk]") {
    const Walk walk =
        walked(make::sample_card(), script_of(R"({"step":6,"changes":[{"kind":"led-turned","part":"L1"}],
        "if_stopped":{"regardless":"to show a class"}})"));
    CHECK(walk.steps.size() == 7);
    CHECK(walk.steps[5].regardless);
    CHECK_FALSE(walk.all_proved());
    CHECK(walk.record.at(StepId::place_leds).regardless_why == "to show a class");
    CHECK(walk.record.finished);
}

TEST_CASE("What a script measured is judged and kept as measured", "[record][walk]") {
    const Walk walk = walked(make::sample_card(),
                             script_of(R"({"step":4,"readings":[{"check":"flap-to-bed","value":0.2}]})"));
    REQUIRE(walk.steps.size() == 4);
    CHECK(walk.steps.back().state == VerdictState::stopped);
    for (const Reading& reading : walk.steps.back().readings) {
        CHECK(reading.simulated == (reading.check != "flap-to-bed"));
    }
    CHECK(walked(make::sample_card(),
                 script_of(R"({"step":4,"readings":[{"check":"flap-to-bed","value":"OL"}]})"))
              .all_proved());
}

TEST_CASE("A light seen dark stops step 6; seen right after mending, it goes on", "[record][walk]") {
    const Walk dark = walked(make::sample_card(), script_of(R"({"step":6,"seen":{"L1":"dark"}})"));
    CHECK(dark.steps.size() == 6);
    CHECK(dark.steps.back().state == VerdictState::stopped);
    const Walk mended =
        walked(make::sample_card(),
               script_of(R"({"step":6,"seen":{"L1":"dark"},"if_stopped":{"seen":{"L1":"lit"}}})"));
    CHECK(mended.all_proved());
}

TEST_CASE("A harmless change does not stop a build", "[record][walk]") {
    const Walk walk = walked(make::sample_card(), script_of(R"({"step":3,"changes":
        [{"kind":"tape-swapped","part":"N1","type":"fabric-5"}]})"));
    for (const StepWalk& step : walk.steps) {
        INFO(static_cast<int>(step.step) << ": " << step.sentence);
        CHECK(step.state == VerdictState::proved);
    }
    CHECK(walk.all_proved());
}

TEST_CASE("A card that cannot work is stopped where it shows", "[record][walk]") {
    Card card = make::sample_card();
    std::get<Strip>(card.laid[2]).path_mm = {{70, 80}, {70, 35}, {118, 35}}; // starts outside the flap
    const Walk walk = walked(card);
    CHECK_FALSE(walk.all_proved());
    CHECK(walk.steps.back().state == VerdictState::stopped);
    CHECK(walk.steps.size() <= 5);
    CHECK(count_of(walk, EventKind::cell_in) == 0);
}

TEST_CASE("The answer to who will have the card is in the record", "[record][walk]") {
    BuildScript script;
    script.audience = Audience::children;
    const Walk walk = walked(make::sample_card(), script);
    CHECK(walk.record.audience == Audience::children);
    CHECK(walk.record.audience_asked);
}

TEST_CASE("A script that names what is not there is refused with its step", "[record][walk]") {
    const auto refusal = [](const std::string& text) {
        const Outcome<Walk> walk = try_walk(make::sample_card(), script_of(text));
        return walk ? std::string() : walk.problem().sentence();
    };
    CHECK_THAT(refusal(R"({"step":6,"changes":[{"kind":"led-turned","part":"L9"}]})"),
               Contains("s.json") && Contains("step 6, change 1"));
    CHECK_THAT(refusal(R"({"step":4,"readings":[{"check":"moon-to-bed","value":1}]})"),
               Contains("step 4") && Contains("moon-to-bed") && Contains("flap-to-bed"));
    CHECK_THAT(refusal(R"({"step":6,"seen":{"L9":"lit"}})"), Contains("step 6") && Contains("L9"));
    CHECK_THAT(refusal(R"({"step":2,"seen":{"L1":"lit"}})"), Contains("step 2"));
}
