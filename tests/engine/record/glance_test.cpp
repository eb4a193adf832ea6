// A glance must say what the fold says: the fold is the judge, on every beginning of a journal.
#include "record/glance.h"

#include "record/utc.h"
#include "support/make_build.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lanternleaf;

namespace {

void agrees(const std::vector<Event>& events, const Glance& glance) {
    const Outcome<Record> folded = fold(events, make::test_parts());
    REQUIRE(folded.ok());
    const Record& record = folded.value();
    INFO("after " << events.size() << " events");
    CHECK(glance.id == record.id);
    CHECK(glance.title == record.title);
    CHECK(glance.batch == record.batch);
    CHECK(glance.maker == record.maker);
    CHECK(glance.started_s == record.started_s);
    CHECK(glance.last_s == events.back().at_s);
    CHECK(glance.step == record.step);
    CHECK(glance.finished == record.finished);
    CHECK(glance.abandoned == record.abandoned);
    CHECK(glance.events == record.event_count);
    int stops = 0;
    for (const StepRecord& step : record.steps) {
        stops += step.stops;
    }
    CHECK(glance.stops == stops);
}

} // namespace

TEST_CASE("A glance says what the fold says, after every event", "[record][glance]") {
    // A second build that goes back, is put away and taken up again.
    std::vector<Event> back = {make::started(make::sample_card()),
                               make::verdict(1, VerdictState::proved),
                               make::verdict(2, VerdictState::proved),
                               make::verdict(3, VerdictState::stopped, "{\"state\":\"proved\"}"),
                               make::verdict(3, VerdictState::proved),
                               event_at(make::kMorning_s + 800, EventKind::step_opened, 2),
                               event_at(make::kMorning_s + 900, EventKind::abandoned, 0, "put away"),
                               event_at(make::kMorning_s + 990, EventKind::step_opened, 2)};
    for (std::vector<Event> all : {make::every_event(), back}) {
        for (const bool named : {false, true}) {
            if (named) {
                all[0].batch = "batch-20260504-100000";
                all[0].maker = "Fern \"F\" \\";
            }
            for (std::size_t count = 1; count <= all.size(); ++count) {
                const std::vector<Event> some(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count));
                const Outcome<Glance> glance = glance_at(make::journal_text(some), "a");
                REQUIRE(glance.ok());
                agrees(some, glance.value());
            }
        }
    }
}

TEST_CASE("A glance reads JSON that another program wrote", "[record][glance]") {
    const std::vector<Event> all = make::every_event();
    std::string spaced;
    const std::string text = make::journal_text(all);
    for (const char c : text) {
        spaced += c;
        if (c == '{') {
            spaced += ' ';
        }
    }
    const Outcome<Glance> glance = glance_at(spaced, "a");
    REQUIRE(glance.ok());
    agrees(all, glance.value());
}

TEST_CASE("A glance is calm about what is half there", "[record][glance]") {
    const std::string text = make::journal_text(make::every_event());
    for (std::size_t cut = 0; cut < text.size(); cut += 7) {
        const Outcome<Glance> glance = glance_at(text.substr(0, cut), "a");
        REQUIRE(glance.ok()); // a torn last line was never confirmed
        CHECK(glance.value().events ==
              static_cast<int>(
                  std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(cut), '\n')));
    }
    CHECK(glance_at("", "a").value().events == 0);
    CHECK(glance_at(std::string(4096, '\0'), "a").value().events == 0);
}

TEST_CASE("A glance names what is no journal", "[record][glance]") {
    const std::string text = make::journal_text(make::every_event());
    const std::size_t second = text.find('\n') + 1;
    const std::string foreign = "\x89PNG\r\n\x1a\nsomething";
    CHECK_FALSE(glance_at(foreign, "a").ok());
    CHECK_FALSE(glance_at("hello", "a").ok());
    CHECK(glance_at("hello\n", "a").problem().sentence() ==
          "a: line 1: expected a build's journal, found something else");
    CHECK_FALSE(glance_at(text.substr(second), "a").ok()); // its beginning is missing
    std::string hole = text;
    hole.replace(second, 10, "##########");
    const Outcome<Glance> spoiled = glance_at(hole, "a");
    REQUIRE_FALSE(spoiled.ok());
    CHECK(spoiled.problem().sentence().find("line 2") != std::string::npos);
    const std::size_t third = text.find('\n', second) + 1;
    CHECK_FALSE(glance_at(text.substr(0, second) + text.substr(third), "a").ok()); // a line is missing
    CHECK_FALSE(glance_at("{\"lanternleaf\":2,\"kind\":\"build\",\"n\":1}\n", "a").ok());
}
