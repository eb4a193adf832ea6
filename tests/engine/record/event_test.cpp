// Every kind of event through its line and back.
#include "support/make_build.h"

#include <catch2/catch.hpp>
#include <set>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

std::string event_refusal(const std::string& line, int number = 2) {
    const Outcome<Event> event = read_event(line, "b.jsonl", number);
    return event ? "" : event.problem().sentence();
}

} // namespace

TEST_CASE("Every kind of event survives being written and read", "[record]") {
    std::set<EventKind> kinds;
    int number = 0;
    std::vector<Event> events = make::every_event();
    events.push_back(event_at(make::kMorning_s, EventKind::abandoned, 0, "rain"));
    for (const Event& event : events) {
        const std::string line = write_event(event, ++number);
        INFO(line);
        CHECK(line.find('\n') == std::string::npos);
        const Outcome<Event> read = read_event(line, "b.jsonl", number);
        REQUIRE(read.ok());
        const Event& back = read.value();
        CHECK(back.kind == event.kind);
        CHECK(back.at_s == event.at_s);
        CHECK(back.step == event.step);
        CHECK(back.text == event.text);
        CHECK(back.fault == event.fault);
        CHECK(back.photo == event.photo);
        CHECK(back.parts == event.parts);
        CHECK(back.state == event.state);
        CHECK(back.walked == event.walked);
        CHECK(back.change == event.change);
        CHECK(back.reading.check == event.reading.check);
        CHECK(back.reading.value == event.reading.value);
        CHECK(back.reading.open == event.reading.open);
        CHECK(back.reading.yes == event.reading.yes);
        CHECK(back.reading.meter == event.reading.meter);
        CHECK(back.reading.simulated == event.reading.simulated);
        REQUIRE(back.reading.seen.size() == event.reading.seen.size());
        for (std::size_t i = 0; i < event.reading.seen.size(); ++i) {
            CHECK(back.reading.seen[i].led == event.reading.seen[i].led);
            CHECK(back.reading.seen[i].state == event.reading.seen[i].state);
            CHECK(back.reading.seen[i].brightness == event.reading.seen[i].brightness);
        }
        CHECK(write_event(back, number) == line);
        kinds.insert(event.kind);
    }
    CHECK(kinds.size() == kEventKindCount); // the test speaks of all of them
}

TEST_CASE("The card in the first line is the card", "[record]") {
    const Event started = make::started(make::sample_card());
    const Outcome<Event> read = read_event(write_event(started, 1), "b.jsonl", 1);
    REQUIRE(read.ok());
    const Outcome<Card> card = read_card(read.value().card, "card", make::test_parts());
    REQUIRE(card.ok());
    CHECK(card.value() == make::sample_card());
}

TEST_CASE("A number keeps every digit through the journal", "[record]") {
    for (const double value : {0.1, 1.0 / 3.0, 1e-9, 123456789.125, 0.30000000000000004}) {
        const Outcome<Event> read = read_event(write_event(make::measured(3, "x", value), 2), "b", 2);
        REQUIRE(read.ok());
        CHECK(read.value().reading.value == value);
    }
}

TEST_CASE("Every kind of change has a name that is read back", "[record]") {
    for (int kind = 0; kind <= static_cast<int>(ChangeKind::foam_layers); ++kind) {
        Change change = make::change_of(static_cast<ChangeKind>(kind), "S1");
        change.at_mm = {1.5, -2};
        change.mm = 3;
        change.type = "copper-5";
        change.count = 2;
        const Outcome<Event> read = read_event(write_event(make::changed(0, change), 2), "b", 2);
        INFO(kind);
        REQUIRE(read.ok());
        CHECK(read.value().change == change);
    }
}

TEST_CASE("A line that is not as expected is named with its place", "[record]") {
    const std::string at = R"("at":"2026-05-04T10:00:00Z")";
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"glued"})"), Contains("line 2, /event"));
    CHECK_THAT(event_refusal(R"({"n":3,)" + at + R"(,"event":"note","text":"x"})"),
               Contains("running number 2"));
    CHECK_THAT(event_refusal(R"({"n":2,"at":"yesterday","event":"note","text":"x"})"), Contains("/at"));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"move-done","move":"x"})"),
               Contains("\"step\""));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"move-done","step":8,"move":"x"})"),
               Contains("/step"));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"verdict","step":1,"state":"maybe"})"),
               Contains("/state"));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"audience","for":"cats"})"), Contains("/for"));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at + R"(,"event":"change","change":{"kind":"melted"}})"),
               Contains("/change/kind"));
    CHECK_THAT(event_refusal(R"({"n":2,)" + at +
                             R"(,"event":"reading","step":1,"reading":{"check":"x","value":"low"}})"),
               Contains("\"OL\""));
    CHECK_THAT(event_refusal(R"({"n":2,)"), Contains("line 2, column"));
    CHECK_THAT(event_refusal("[1]"), Contains("line 2"));
}

TEST_CASE("A build of a newer version is refused politely", "[record]") {
    std::string line = write_event(make::started(make::sample_card()), 1);
    line.replace(line.find(":1"), 2, ":2");
    CHECK_THAT(event_refusal(line, 1), Contains("version 2") && Contains("newer Lanternleaf"));
}

TEST_CASE("Keys that are not known are passed over", "[record]") {
    const Outcome<Event> read = read_event(
        R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"note","text":"x","mood":{"happy":true}})", "b", 2);
    REQUIRE(read.ok());
    CHECK(read.value().text == "x");
}
