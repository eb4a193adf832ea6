// What a build's events add up to.
#include "support/make_build.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

Record begun() {
    const Outcome<Record> record = fold({make::started(make::sample_card())}, make::kParts);
    REQUIRE(record.ok());
    return record.value();
}

void must(Record& record, const Event& event) {
    const Outcome<Done> done = apply_event(record, make::kParts, event);
    INFO(name_of(event.kind) << (done ? "" : ": " + done.problem().sentence()));
    REQUIRE(done.ok());
}

// The refusal's sentence; the record must be as it was.
std::string must_not(Record& record, const Event& event) {
    const std::string before = write_record(record, make::kParts);
    const Outcome<Done> done = apply_event(record, make::kParts, event);
    INFO(name_of(event.kind));
    REQUIRE_FALSE(done.ok());
    CHECK(write_record(record, make::kParts) == before);
    return done.problem().sentence();
}

void prove_up_to(Record& record, int last) {
    for (int step = record.step; step <= last; ++step) {
        must(record, make::verdict(step, VerdictState::proved));
    }
}

} // namespace

TEST_CASE("A build begins at step 1 with the card as planned", "[record]") {
    const Record record = begun();
    CHECK(record.title == "One window");
    CHECK(record.step == 1);
    CHECK(record.steps[0].opened);
    CHECK(record.card == make::sample_card());
    CHECK(record.as_built == record.card);
    CHECK_FALSE(record.audience_asked);
    CHECK(record.event_count == 1);
}

TEST_CASE("A build begins with started, once", "[record]") {
    CHECK_FALSE(fold({}, make::kParts).ok());
    CHECK_FALSE(fold({make::moved(1, "x")}, make::kParts).ok());
    Record record = begun();
    CHECK_THAT(must_not(record, make::started(make::sample_card())), Contains("once"));
    Event broken = make::started(make::sample_card());
    broken.card = "{}";
    CHECK_FALSE(fold({broken}, make::kParts).ok());
}

TEST_CASE("A proved verdict closes a step and opens the next", "[record]") {
    Record record = begun();
    must(record, make::verdict(1, VerdictState::proved));
    CHECK(record.step == 2);
    CHECK(record.steps[0].closed_s == make::kMorning_s + 60);
    CHECK(record.steps[1].opened);
    CHECK(record.steps[1].opened_s == make::kMorning_s + 60);
    CHECK_FALSE(record.steps[2].opened);
}

TEST_CASE("A stopped verdict leaves the step open, and counts", "[record]") {
    Record record = begun();
    must(record, make::verdict(1, VerdictState::stopped, "The holder sits on a crease."));
    CHECK(record.step == 1);
    CHECK(record.steps[0].stops == 1);
    CHECK(record.steps[0].verdict == "The holder sits on a crease.");
    must(record, make::verdict(1, VerdictState::proved));
    CHECK(record.step == 2);
    CHECK(record.steps[0].stops == 1);
}

TEST_CASE("Going on regardless closes a step, on record", "[record]") {
    Record record = begun();
    must(record, make::verdict(1, VerdictState::stopped));
    must(record, event_at(make::kMorning_s, EventKind::regardless, 1, "a sample only"));
    CHECK(record.step == 2);
    CHECK(record.steps[0].regardless);
    CHECK_FALSE(record.steps[0].proved);
    CHECK(record.steps[0].regardless_why == "a sample only");
    CHECK(proved_count(record) == 0);
    // Judged again and still stopped, the maker's word stands; proved later, both stand.
    must(record, make::verdict(1, VerdictState::stopped));
    CHECK(record.step == 2);
    must(record, make::verdict(1, VerdictState::proved));
    CHECK(record.steps[0].regardless);
    CHECK(proved_count(record) == 1);
    CHECK_THAT(must_not(record, event_at(0, EventKind::regardless, 1)), Contains("proved already"));
}

TEST_CASE("Nothing can be done in a step that is not open yet", "[record]") {
    Record record = begun();
    CHECK_THAT(must_not(record, make::moved(2, "x")), Contains("step 2 is not open"));
    CHECK_THAT(must_not(record, make::measured(3, "x", 1)), Contains("step 3"));
    CHECK_THAT(must_not(record, make::verdict(2, VerdictState::proved)), Contains("step 2"));
    CHECK_THAT(must_not(record, event_at(0, EventKind::regardless, 7)), Contains("step 7"));
    CHECK_THAT(must_not(record, event_at(0, EventKind::step_opened, 2)), Contains("step 2"));
    for (const int step : {-1, 0, 8, 1000}) {
        must_not(record, make::moved(step, "x"));
        must_not(record, make::verdict(step, VerdictState::proved));
        must_not(record, event_at(0, EventKind::step_opened, step));
    }
}

TEST_CASE("Moves are kept in the order done, and can be undone", "[record]") {
    Record record = begun();
    must(record, make::moved(1, "a"));
    must(record, make::moved(1, "b"));
    must(record, make::moved(1, "a"));
    CHECK(record.steps[0].moves_done == std::vector<std::string>{"a", "b"});
    must(record, event_at(0, EventKind::move_undone, 1, "a"));
    CHECK(record.steps[0].moves_done == std::vector<std::string>{"b"});
    CHECK_THAT(must_not(record, event_at(0, EventKind::move_undone, 1, "a")), Contains("not done"));
    must_not(record, make::moved(1, ""));
}

TEST_CASE("The last reading of a check counts", "[record]") {
    Record record = begun();
    prove_up_to(record, 2);
    must(record, make::measured(3, "bed-to-L1-", 40));
    must(record, make::measured(3, "bed-to-L2-", 0.2));
    must(record, make::measured(3, "bed-to-L1-", 0.1));
    const std::vector<Reading>& readings = record.at(StepId::lay_negative).readings;
    REQUIRE(readings.size() == 2);
    CHECK(readings[0].value == 0.1);
    CHECK_THAT(must_not(record, make::measured(3, "", 1)), Contains("check"));
    must_not(record, make::measured(3, "x", std::nan("")));
}

TEST_CASE("A change gives the card as built and leaves the plan alone", "[record]") {
    Record record = begun();
    must(record, make::changed(1, make::change_of(ChangeKind::led_turned, "L1")));
    CHECK(record.card == make::sample_card());
    CHECK_FALSE(record.as_built == record.card);
    REQUIRE(record.changes.size() == 1);
    CHECK(record.changes[0].step == 1);
    CHECK_FALSE(must_not(record, make::changed(1, make::change_of(ChangeKind::led_turned, "L9"))).empty());
    must(record, make::changed(1, make::change_of(ChangeKind::led_turned, "L1")));
    CHECK(record.as_built.leds[0].turn_deg == Approx(record.card.leds[0].turn_deg));
}

TEST_CASE("Going back opens a closed step again; then the first open one follows", "[record]") {
    Record record = begun();
    prove_up_to(record, 5);
    must(record, event_at(make::kMorning_s, EventKind::step_opened, 3));
    CHECK(record.step == 3);
    CHECK(record.steps[3].proved);
    must(record, make::moved(6, "kept"));
    must(record, make::verdict(3, VerdictState::proved));
    CHECK(record.step == 6);
    must(record, make::verdict(4, VerdictState::stopped));
    CHECK(record.step == 4);
}

TEST_CASE("Opening a step before anything is done in it sets its clock", "[record]") {
    Record record = begun();
    must(record, make::verdict(1, VerdictState::proved));
    must(record, event_at(make::kMorning_s + 9000, EventKind::step_opened, 2));
    CHECK(record.steps[1].opened_s == make::kMorning_s + 9000);
    must(record, make::moved(2, "a"));
    must(record, event_at(make::kMorning_s + 9999, EventKind::step_opened, 2));
    CHECK(record.steps[1].opened_s == make::kMorning_s + 9000);
}

TEST_CASE("A build ends once all steps are closed", "[record]") {
    Record record = begun();
    CHECK_THAT(must_not(record, event_at(0, EventKind::finished)), Contains("step 1 is still open"));
    prove_up_to(record, 7);
    CHECK(record.step == 8);
    must(record, event_at(make::kMorning_s + 7, EventKind::finished, 0, "1 of 1 lit"));
    CHECK(record.finished);
    CHECK(record.outcome == "1 of 1 lit");
    CHECK_THAT(must_not(record, make::moved(7, "late")), Contains("finished"));
    must_not(record, event_at(0, EventKind::finished));
    must_not(record, event_at(0, EventKind::step_opened, 3));
    must(record, event_at(0, EventKind::note, 0, "given to Ada"));
    must(record, make::changed(6, make::change_of(ChangeKind::led_turned, "L1")));
    must(record, event_at(0, EventKind::cell_out));
}

TEST_CASE("A build that was put away can be taken up again", "[record]") {
    Record record = begun();
    must(record, event_at(5, EventKind::abandoned, 0, "no tape left"));
    CHECK(record.abandoned);
    CHECK_THAT(must_not(record, make::moved(1, "x")), Contains("put away"));
    must(record, event_at(6, EventKind::step_opened, 1));
    CHECK_FALSE(record.abandoned);
    must(record, make::moved(1, "x"));
}

TEST_CASE("Who will have the card is asked, and the card as built follows", "[record]") {
    Record record = begun();
    must(record, event_at(0, EventKind::audience, 0, "small-children"));
    CHECK(record.audience == Audience::small_children);
    CHECK(record.audience_asked);
    CHECK(record.as_built.audience == Audience::small_children);
    CHECK(record.card.audience == Audience::adults);
    must_not(record, event_at(0, EventKind::audience, 0, "cats"));
}

TEST_CASE("Folding every kind of event", "[record]") {
    const Outcome<Record> folded = fold(make::every_event(), make::kParts);
    INFO((folded ? "" : folded.problem().sentence()));
    REQUIRE(folded.ok());
    const Record& record = folded.value();
    CHECK(record.finished);
    CHECK(record.adult_confirmed);
    CHECK_FALSE(record.cell_in);
    CHECK(record.changes.size() == 2);
    CHECK(record.notes.size() == 4); // two written, one each from learning and mending
    CHECK(record.mends.size() == 1);
    CHECK(record.event_count == static_cast<int>(make::every_event().size()));
    CHECK(record.at(StepId::place_leds).stops == 1);
}

TEST_CASE("What is told in Mend stays until the card is another one", "[record]") {
    Record record = begun();
    const auto tell = [&](const char* text) { must(record, event_at(9, EventKind::mend_told, 1, text)); };
    tell("light dark L1");
    tell("test 1 warm");
    CHECK(record.mend_told == std::vector<std::string>{"light dark L1", "test 1 warm"});
    tell(kTakenBack);
    CHECK(record.mend_told == std::vector<std::string>{"light dark L1"});
    tell(kToldAgain);
    CHECK(record.mend_told.empty());
    tell(kTakenBack); // nothing left to take back
    CHECK(record.mend_told.empty());
    must_not(record, event_at(9, EventKind::mend_told, 1));

    SECTION("a change") {
        tell("light dark L1");
        must(record, make::changed(6, make::change_of(ChangeKind::led_turned, "L1")));
        CHECK(record.mend_told.empty());
    }
    SECTION("a stopped verdict keeps it, a proof ends it") {
        tell("light dark L1");
        must(record, make::verdict(1, VerdictState::stopped));
        CHECK(record.mend_told.size() == 1);
        must(record, make::verdict(1, VerdictState::proved));
        CHECK(record.mend_told.empty());
    }
    SECTION("a mending, also after the end") {
        prove_up_to(record, 7);
        must(record, event_at(10, EventKind::finished, 0, "1 of 1 lit"));
        tell("light dark L1");
        Event mended = event_at(11, EventKind::mended, 7, "L1 no longer lights");
        must_not(record, mended); // of no kind
        mended.fault = "led-dead";
        must(record, mended);
        CHECK(record.mend_told.empty());
        REQUIRE(record.mends.size() == 1);
        CHECK(record.mends[0].fault == "led-dead");
        CHECK(record.mends[0].at_s == 11);
        CHECK(record.notes.back() == "Mended: L1 no longer lights.");
        CHECK_THAT(write_record(record, make::kParts), Contains("\"fault\": \"led-dead\""));
    }
}

TEST_CASE("A Problem in the middle names its line", "[record]") {
    std::vector<Event> events = {make::started(make::sample_card()), make::moved(1, "a"),
                                 make::moved(5, "b")};
    const Outcome<Record> folded = fold(events, make::kParts);
    REQUIRE_FALSE(folded.ok());
    CHECK_THAT(folded.problem().sentence(), Contains("line 3"));
}
