// What is told in Mend, as lines: every sort there and back, and what is no such line.
#include "mend/told.h"
#include "mending.h"

using namespace lanternleaf;
using namespace lanternleaf::mending;

TEST_CASE("Everything that can be told comes back from its line", "[mend]") {
    const std::vector<std::pair<Observation, std::string>> all = {
        {SeenLight{"L3", Look::dark}, "light dark L3"},
        {SeenLight{"L12", Look::unseen}, "light unseen L12"},
        {PressingChanges{true}, "pressing yes"},
        {PressingChanges{false}, "pressing no"},
        {PressingChanges{}, "pressing unknown"},
        {TestAnswer{"press-pads/L3", 2}, "test 2 press-pads/L3"},
        {TestAnswer{"warm", -1}, "test cannot-tell warm"},
        {TestAnswer{"meter-joint/N 1-N2-0", 1}, "test 1 meter-joint/N 1-N2-0"},
        {Metered{"flap", "L3+", MeterUnit::ohm, 8.25, false}, "meter 8.25 ohm flap L3+"},
        {Metered{"flap", "bed", MeterUnit::ohm, 0.0, true}, "meter OL ohm flap bed"},
        {Metered{"cell", "", MeterUnit::volt, 2.9, false}, "meter 2.9 V cell"},
        {TestReading{"meter-reach/L3+", 0.3, false}, "read 0.3 meter-reach/L3+"},
        {TestReading{"meter-volts/L3", -2.9, false}, "read -2.9 meter-volts/L3"},
        {TestReading{"meter-apart", 0.0, true}, "read OL meter-apart"}};
    for (const auto& [told, line] : all) {
        CHECK(write_told(told) == line);
        const Outcome<Observation> back = read_told(line);
        CAPTURE(line);
        REQUIRE(back.ok());
        CHECK(back.value().index() == told.index());
        CHECK(write_told(back.value()) == line);
    }
}

TEST_CASE("What is no such line is a sentence", "[mend]") {
    for (const char* line : {"",
                             " ",
                             "light",
                             "light bright L3",
                             "light dark",
                             "light dark L3 L4",
                             "pressing perhaps",
                             "test",
                             "test x warm",
                             "test 1",
                             "test 1 ",
                             "test -1 warm",
                             "test 1.5 warm",
                             "test 999 warm",
                             "meter 8 ohm",
                             "meter 8 mA flap bed",
                             "meter x ohm flap bed",
                             "meter nan ohm flap bed",
                             "meter inf V cell",
                             "read x meter-apart",
                             "read 0.3",
                             "wave"}) {
        CAPTURE(line);
        CHECK_FALSE(read_told(line).ok());
    }
}

TEST_CASE("Lines told one after the other give the session that answers give", "[mend]") {
    const OpenCard open = demo("harbour-lighthouse");
    MendSession session = start_mend(open.card, open.parts);
    const MendSession direct = told(told(session, SeenLight{"L1", Look::dark}), TestAnswer{"look-led/L1", 1});
    for (const char* line : {"light dark L1", "test 1 look-led/L1"}) {
        const Outcome<MendSession> next = observe_told(session, line);
        REQUIRE(next.ok());
        session = next.value();
    }
    CHECK(session.chance == direct.chance);
    CHECK_FALSE(observe_told(session, "light dark L99").ok());
    const Outcome<MendSession> again = observe_told(session, kLightsAgain);
    REQUIRE(again.ok());
    CHECK(again.value().evidence.looks[0] == Look::unseen);
    CHECK(again.value().evidence.answers.size() == 1);
}
