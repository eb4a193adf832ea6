// A record in words: the same for screen, print and page.
#include "history/compare.h"
#include "history/story.h"
#include "support/make_build.h"
#include "support/words_of.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Story told(const std::vector<Event>& events) {
    const Outcome<Record> record = fold(events, make::kParts);
    INFO((record ? std::string() : record.problem().sentence()));
    REQUIRE(record.ok());
    return tell(record.value(), events, make::kParts);
}

} // namespace

TEST_CASE("Every kind of event has its place in the story", "[history]") {
    const Story story = told(make::every_event());
    CHECK(story.title == "One window");
    CHECK(story.state == "finished");
    CHECK(story.outcome == "0 of 1 lit");
    REQUIRE(story.steps.size() == 7);
    CHECK(story.steps[0].state == StepState::proved);
    CHECK(story.steps[5].state == StepState::regardless);
    CHECK(story.steps[5].state_text == "went on regardless: for the display case");
    CHECK(story.steps[5].stops == 1);
    CHECK_FALSE(story.passed_first_time);
    REQUIRE(story.mends.size() == 1);
    CHECK(story.mends[0] == "Mended: L1 lies the wrong way round.");
    CHECK(story.notes.size() == 3); // the mending's own line is not told twice
    CHECK(story.changes.size() == 2);
    CHECK(story.photos.empty()); // taken and taken away
}

TEST_CASE("A figure stands with the range that was predicted", "[history]") {
    std::vector<Event> events = {make::started(make::sample_card()), make::verdict(1, VerdictState::proved),
                                 make::verdict(2, VerdictState::proved),
                                 make::measured(3, "bed-to-L1-", 0.1)};
    const Story story = told(events);
    REQUIRE(story.steps[2].readings.size() == 1);
    const StoryReading& reading = story.steps[2].readings[0];
    CHECK(reading.value == "0.1 Ω");
    CHECK(reading.has_number);
    CHECK(reading.low < reading.high);
    CHECK(reading.fits);
    CHECK(reading.unit == "ohm");
    CHECK(reading.title == "bed to L1−");
    CHECK(story.steps[2].shown_reading == 0);
    CHECK(story.steps[3].shown_reading == -1);
    CHECK(story.steps[3].state == StepState::waiting);
}

TEST_CASE("A reading of a check the card has lost is still told", "[history]") {
    const StoryReading told = tell_reading(make::measured(3, "bed-to-L9-", 0.5).reading, nullptr);
    CHECK(told.title == "bed-to-L9-");
    CHECK(told.value == "0.5");
    CHECK_FALSE(told.fits);
}

TEST_CASE("The same story in another language: what the maker wrote stays as it was written", "[history]") {
    const Outcome<Record> record = fold(make::every_event(), make::kParts);
    REQUIRE(record.ok());
    const Story english_one = told(make::every_event());
    for (const char* language : {"de", "es"}) {
        const Words words = words_of(language);
        const Story story = tell(record.value(), make::every_event(), make::kParts, words);
        INFO(language);
        CHECK(story.title == english_one.title);
        CHECK(story.mended == english_one.mended);
        CHECK(story.notes.size() == english_one.notes.size()); // the mending's line is known in any language
        CHECK(story.mends[0] != english_one.mends[0]);
        CHECK(story.steps[5].state_text.find(": for the display case") != std::string::npos);
        CHECK(said_whole(story.started));
        CHECK(said_whole(story.made_with));
        for (const StoryStep& step : story.steps) {
            CHECK(said_whole(step.state_text));
            for (const StoryReading& reading : step.readings) {
                CHECK(said_whole(reading.value));
            }
        }
        const Comparison rows = compare(story, story, "A", "B", words);
        CHECK(said_whole(rows.summary));
        CHECK(rows.summary != compare(english_one, english_one, "A", "B").summary);
    }
}
