// Sessions: what the lights alone say, two faults at once, readings, answers taken back, and words.
#include "guide/verdict.h"
#include "mending.h"
#include "support/lamp_rows.h"
#include "support/words_of.h"

#include <regex>
#include <set>

using namespace lanternleaf;
using namespace lanternleaf::mending;

TEST_CASE("A turned light is named from the lights alone on the demo cards", "[mend]") {
    for (const char* name : {"window-candle", "harbour-lighthouse", "night-tram"}) {
        const OpenCard open = demo(name);
        const MendSession start = start_mend(open.card, open.parts);
        for (std::size_t i = 0; i < open.card.leds.size(); ++i) {
            Showing seen = start.model->as_built; // as planned, but for one dark light
            seen.glows[i] = {0.0F, 0.0F, 1.0F};
            const MendSession session = told_lights(start, seen);
            const Cause first = causes(session).front();
            CAPTURE(name, open.card.leds[i].id, first.title);
            CHECK(first.kind == FaultKind::led_turned);
            CHECK(first.places.front().parts.front() == open.card.leds[i].id);
        }
    }
}

TEST_CASE("A weak joint between two groups of lights is found", "[mend]") {
    std::mt19937 random(3);
    const Card card = make::random_rows(12, random);
    const MendSession start = start_mend(card, make::test_parts());
    const int weak = find_fault(*start.model, FaultKind::joint_loose, "the joint of S1 and T1");
    REQUIRE(weak >= 0);
    const Showing& shows = start.model->showings[static_cast<std::size_t>(weak)];
    REQUIRE(look_different(shows, start.model->as_built));
    MendSession session = told_lights(start, shows);
    const auto rank = [&] {
        const std::vector<Cause> list = causes(session, 6);
        for (std::size_t i = 0; i < list.size(); ++i) {
            if (list[i].ids.size() == 1 &&
                list[i].ids[0] == start.model->faults[static_cast<std::size_t>(weak)].cause) {
                return static_cast<int>(i);
            }
        }
        return 99;
    };
    CHECK(rank() < 4);
    session = search(session, weak);
    CHECK(rank() == 0);
    const Cause cause = causes(session).front();
    CHECK(cause.title == "The joint of S1 and T1 hardly touches");
    REQUIRE(cause.mend);
    CHECK(apply_change(card, make::test_parts(), *cause.mend).ok());
}

TEST_CASE("Two faults at once are named when one explains too little", "[mend]") {
    const OpenCard open = demo("night-tram");
    const MendSession start = start_mend(open.card, open.parts);
    Showing seen = start.model->as_built;
    for (const std::size_t dark : {2U, 7U}) {
        seen.glows[dark] = {0.0F, 0.0F, 1.0F};
    }
    const MendSession one = told_lights(start, start.model->as_built);
    CHECK(one.pairs == nullptr);
    // A slip is likelier than a second fault, until a second look says the same.
    MendSession session = told_lights(start, seen);
    CHECK(cause_chances(session).front().b < 0);
    for (const char* light : {"see-light/L3", "see-light/L8", "see-light/L3", "see-light/L8"}) {
        session = told(session, TestAnswer{light, 0});
    }
    const std::vector<CauseChance> chances = cause_chances(session);
    // L3 and L8 hang on different branches: no single candidate leaves only these two dark.
    REQUIRE(session.pairs != nullptr);
    REQUIRE(chances.front().b >= 0);
    std::set<std::string> parts;
    const Cause first = causes(session).front();
    for (const FaultPlace& place : first.places) {
        parts.insert(place.parts.front());
    }
    CHECK(parts == std::set<std::string>{"L3", "L8"});
}

TEST_CASE("Observing changes nothing but the answer, and can be taken back", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    const MendSession start = start_mend(open.card, open.parts);
    const std::vector<double> before = start.chance;
    const MendSession dark = told(start, SeenLight{"L3", Look::dark});
    CHECK(start.chance == before);
    CHECK(dark.chance != before);
    CHECK(told(dark, SeenLight{"L3", Look::unseen}).chance == before);
    const MendSession pressed = told(dark, PressingChanges{true});
    const auto loose = [](const MendSession& session) {
        double sum = 0.0;
        for (std::size_t f = 0; f < session.model->faults.size(); ++f) {
            sum += session.model->faults[f].kind == FaultKind::pad_loose ? session.chance[f] : 0.0;
        }
        return sum;
    };
    CHECK(loose(pressed) > 1.5 * loose(dark));
    CHECK(told(pressed, PressingChanges{}).chance == dark.chance);
}

TEST_CASE("What the card has not got is a sentence and changes nothing", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    const MendSession start = start_mend(open.card, open.parts);
    CHECK_FALSE(observe(start, SeenLight{"L99", Look::dark}).ok());
    CHECK_FALSE(observe(start, TestAnswer{"wave-a-wand", 0}).ok());
    CHECK_FALSE(observe(start, TestAnswer{"warm", 9}).ok());
    CHECK_FALSE(observe(start, Metered{"flap", "L99+", MeterUnit::ohm, 1.0, false}).ok());
    CHECK_FALSE(observe(start, Metered{"flap", "L1+", MeterUnit::ohm, -1.0, false}).ok());
}

TEST_CASE("Readings point to where they were taken", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    const MendSession start = start_mend(open.card, open.parts);
    const auto on = [&](const MendSession& session, const std::string& strip) {
        double sum = 0.0;
        for (std::size_t f = 0; f < session.model->faults.size(); ++f) {
            const Fault& fault = session.model->faults[f];
            const bool tape = fault.kind == FaultKind::strip_broken || fault.kind == FaultKind::joint_loose;
            if (tape && session.model->places[static_cast<std::size_t>(fault.place)].parts.back() == strip) {
                sum += session.chance[f];
            }
        }
        return sum;
    };
    // N3 feeds L1, L2 and L7 from below.
    const MendSession open_path = told(start, Metered{"bed", "L1-", MeterUnit::ohm, 0.0, true});
    CHECK(on(open_path, "N3") > 3.0 * on(start, "N3"));
    const MendSession fine = told(start, Metered{"bed", "L1-", MeterUnit::ohm, 0.3, false});
    CHECK(on(fine, "N3") < 0.5 * on(start, "N3"));
    // The same through the check that failed while making.
    Check check;
    check.kind = CheckKind::resistance;
    check.from = "bed";
    check.to = "L1-";
    Reading reading;
    reading.open = true;
    CHECK(observe_reading(start, check, reading).chance == open_path.chance);
    // A cell that reads nothing, and one that reads as new.
    const auto flat = [&](double volts) {
        const MendSession session = told(start, Metered{"cell", "", MeterUnit::volt, volts, false});
        double sum = 0.0;
        for (std::size_t f = 0; f < session.model->faults.size(); ++f) {
            sum += session.model->faults[f].kind == FaultKind::cell_wrong ? session.chance[f] : 0.0;
        }
        return sum;
    };
    CHECK(flat(1.5) > 3.0 * flat(3.1));
}

TEST_CASE("None of these fits is an answer", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    MendSession session = start_mend(open.card, open.parts);
    const double before = session.chance.back();
    // Warm and tabbed and glowing and on the wrong tape, with every light lit: nothing does all that.
    for (const auto& [test, outcome] :
         {std::pair{"warm", 1}, std::pair{"look-cell", 3}, std::pair{"dark-glow", 1},
          std::pair{"look-led/L2", 3}, std::pair{"liner", 1}, std::pair{"look-led/L5", 1},
          std::pair{"slip-paper", 1}}) {
        session = told(session, TestAnswer{test, outcome});
    }
    REQUIRE(session.model->faults.back().kind == FaultKind::other);
    CHECK(session.chance[session.model->faults.size() - 1] > 5.0 * before);
    const std::vector<Cause> list = causes(session);
    CHECK(std::any_of(list.begin(), list.end(), [](const Cause& c) { return c.kind == FaultKind::other; }));
}

TEST_CASE(
    "Without a meter, foil or a spare cell no test asks for one; one that cannot be told does not return",
    "[mend]") {
    const OpenCard open = demo("night-tram");
    MendSession session = start_mend(open.card, open.parts);
    for (const Led& led : open.card.leds) {
        session = told(session, SeenLight{led.id, Look::dark});
    }
    std::set<std::string> skipped;
    for (int i = 0; i < 40; ++i) {
        const std::optional<MendTest> test = next_test(session, {false, false, false, false});
        if (!test) {
            break;
        }
        CHECK(test->needs == TestNeeds::hands);
        CHECK(skipped.insert(test->id).second);
        session = told(session, TestAnswer{test->id, -1});
    }
    CHECK(skipped.size() > 3);
}

TEST_CASE("Words: short sentences, no blame, the true minus sign, ids that stay", "[mend]") {
    // look.md's rules for words: never "error", "invalid", "fail"; + and − follow an id.
    const std::regex banned("error|invalid|fail|[A-Z][0-9]+-", std::regex::icase);
    for (const char* name : {"window-candle", "harbour-lighthouse", "night-tram"}) {
        const OpenCard open = demo(name);
        const MendSession start = start_mend(open.card, open.parts);
        const std::vector<Cause> all = causes(start, 1000);
        CHECK(all.size() > 20);
        for (const Cause& cause : all) {
            CAPTURE(cause.title, cause.sentence, cause.fix);
            CHECK_FALSE(cause.title.empty());
            CHECK(cause.sentence.back() == '.');
            CHECK(cause.fix.back() == '.');
            CHECK_FALSE(std::regex_search(cause.title + cause.sentence + cause.fix, banned));
            if (cause.found) {
                CHECK(apply_change(open.card, open.parts, *cause.found).ok());
            }
            if (cause.mend) {
                CHECK(apply_change(open.card, open.parts, *cause.mend).ok());
            }
        }
        std::set<std::string> ids;
        for (const MendTest& test : start.model->tests) {
            CAPTURE(test.id, test.sentence);
            CHECK(ids.insert(test.id).second);
            CHECK(test.outcomes.size() >= 2);
            CHECK(test.sentence.back() == '.');
            CHECK(test.effort_s > 0.0);
            CHECK_FALSE(std::regex_search(test.title + test.sentence, banned));
        }
    }
}

TEST_CASE("Another language says all of it, and changes nothing of the search", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    const MendSession english_one = start_mend(open.card, open.parts);
    for (const char* language : {"de", "es"}) {
        const MendSession session = start_mend(open.card, open.parts, {}, words_of(language));
        CHECK(session.chance == english_one.chance);
        for (const Cause& cause : causes(session, 1000)) {
            CAPTURE(language, cause.title, cause.sentence, cause.fix);
            CHECK(said_whole(cause.title));
            CHECK(said_whole(cause.sentence));
            CHECK(said_whole(cause.fix));
        }
        REQUIRE(session.model->tests.size() == english_one.model->tests.size());
        for (std::size_t t = 0; t < session.model->tests.size(); ++t) {
            const MendTest& test = session.model->tests[t];
            const MendTest& same = english_one.model->tests[t];
            CAPTURE(language, test.id, test.title, test.sentence);
            CHECK(test.id == same.id); // ids stand in journals
            CHECK(test.shows == same.shows);
            CHECK(test.title != same.title);
            CHECK(said_whole(test.title));
            CHECK(said_whole(test.sentence));
            for (const std::string& outcome : test.outcomes) {
                CHECK(said_whole(outcome));
            }
        }
    }
}
