// What earlier builds teach, and at which move of the next one it stands.
#include "guide/sequence.h"
#include "history/lessons.h"
#include "support/make_build.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace lanternleaf;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

// Two LEDs, so that one can be confused with the other.
Card two_lights() {
    Card card = make::sample_card();
    card.leds.push_back(make::led("L2", "carrier-white", {90, 40}, 270));
    return card;
}

std::vector<Lesson> lessons_after(const Card& card, std::vector<Event> then) {
    std::vector<Event> events = {make::started(card)};
    for (int step = 1; step <= 2; ++step) {
        events.push_back(make::verdict(step, VerdictState::proved));
    }
    events.insert(events.end(), then.begin(), then.end());
    const Outcome<Record> record = fold(events, make::kParts);
    INFO((record ? std::string() : record.problem().sentence()));
    REQUIRE(record.ok());
    return lessons_of(record.value(), events, make::kParts);
}

const Move& move_named(const std::vector<Step>& steps, const std::string& id) {
    for (const Step& step : steps) {
        for (const Move& move : step.moves) {
            if (move.id == id) {
                return move;
            }
        }
    }
    FAIL("no move " << id);
    return steps[0].moves[0];
}

} // namespace

TEST_CASE("A light turned last time is told at that light", "[history]") {
    const Card card = two_lights();
    const std::vector<Lesson> lessons =
        lessons_after(card, {make::changed(3, make::change_of(ChangeKind::led_turned, "L2"))});
    const std::vector<MoveLesson> placed =
        place_lessons({PastBuild{1, lessons}}, make_steps(card, make::kParts));
    REQUIRE(placed.size() == 1);
    CHECK(placed[0].sentence == "Last time L2 was turned here.");
    CHECK(placed[0].move == "6/L2/place");
}

TEST_CASE("A light turned and turned back was laid wrong at first", "[history]") {
    const Change turn = make::change_of(ChangeKind::led_turned, "L2");
    const std::vector<Lesson> lessons =
        lessons_after(two_lights(), {make::changed(3, turn), make::changed(3, turn)});
    REQUIRE(lessons.size() == 1);
    CHECK(lessons[0].words == "L2 was laid the wrong way round at first, then turned.");
}

TEST_CASE("A lesson follows its part when the plan moves every number", "[history]") {
    const Card before = make::sample_card();
    Change tear = make::change_of(ChangeKind::tear, "S1");
    tear.at_mm = {90, 35}; // on S1's last run
    tear.mm = 1;
    const std::vector<Lesson> lessons = lessons_after(before, {make::changed(3, tear)});

    // The new plan: one more strip listed first, and S1 with a fold more at its start.
    Card after = before;
    after.laid.insert(after.laid.begin(), make::strip("N0", Side::negative, {{100, 90}, {120, 90}}));
    after.laid.back() =
        make::strip("S1", Side::positive, {{54, 80}, {57, 80}, {57, 76}, {60, 76}, {60, 35}, {118, 35}});
    const std::vector<Step> steps = make_steps(after, make::kParts);
    const std::vector<MoveLesson> placed = place_lessons({PastBuild{1, lessons}}, steps);
    REQUIRE(placed.size() == 1);
    CHECK(placed[0].sentence == "Last time S1 tore here.");
    const Move& move = move_named(steps, placed[0].move);
    CHECK(std::find(move.parts.begin(), move.parts.end(), "S1") != move.parts.end());
    // The run it stands at is the one along y = 35, whatever its number is now.
    REQUIRE_FALSE(move.path_mm.empty());
    CHECK(std::any_of(move.path_mm.begin(), move.path_mm.end(),
                      [](Vec2 p) { return std::abs(p.y - 35) < 0.1; }));
    CHECK(placed[0].move != "4/S1/run-1");
}

TEST_CASE("A joint that read too high is told where it is measured", "[history]") {
    const Card card = make::sample_card();
    const std::vector<Step> steps = make_steps(card, make::kParts);
    std::string move_with_check;
    std::string check_id;
    for (const Move& move : steps[2].moves) {
        if (move.check && move.check->kind == CheckKind::resistance) {
            move_with_check = move.id;
            check_id = move.check->id;
        }
    }
    REQUIRE_FALSE(check_id.empty());
    const std::vector<Lesson> lessons =
        lessons_after(card, {make::measured(3, check_id, 8.0), make::measured(3, check_id, 7.0),
                             make::measured(3, check_id, 0.1)});
    const std::vector<MoveLesson> placed = place_lessons({PastBuild{1, lessons}}, steps);
    REQUIRE(placed.size() == 1);
    CHECK(placed[0].move == move_with_check);
    CHECK_THAT(placed[0].sentence,
               StartsWith("Last time ") && Contains("read 8 Ω at first") && Contains("it read 0.1 Ω"));
}

TEST_CASE("A reading that was never off teaches nothing", "[history]") {
    const Card card = make::sample_card();
    CHECK(lessons_after(card, {make::measured(3, "bed-to-L1-", 0.1)}).empty());
    CHECK(lessons_after(card, {make::measured(3, "bed-to-L1-", 8.0)}).empty()); // nor one never put right
    Event simulated = make::measured(3, "bed-to-L1-", 8.0);
    simulated.reading.simulated = true;
    CHECK(lessons_after(card, {simulated, make::measured(3, "bed-to-L1-", 0.1)}).empty());
}

TEST_CASE("What was mended is told at its part, once", "[history]") {
    const Card card = two_lights();
    const Change turn = make::change_of(ChangeKind::led_turned, "L2");
    Event mended = event_at(make::kMorning_s + 90, EventKind::mended, 3, "L2 lies the wrong way round");
    mended.fault = "led-turned";
    const std::vector<Lesson> lessons =
        lessons_after(card, {make::changed(3, turn), make::changed(3, turn), mended});
    const std::vector<MoveLesson> placed =
        place_lessons({PastBuild{4, lessons}}, make_steps(card, make::kParts));
    REQUIRE(placed.size() == 1);
    CHECK(placed[0].move == "6/L2/place");
    CHECK(placed[0].sentence == "Last time this was mended: L2 lies the wrong way round.");
}

TEST_CASE("What several builds say is counted, and the newest is last time", "[history]") {
    const Card card = two_lights();
    const std::vector<Lesson> turned =
        lessons_after(card, {make::changed(3, make::change_of(ChangeKind::led_turned, "L2"))});
    const std::vector<Step> steps = make_steps(card, make::kParts);

    const std::vector<MoveLesson> twice = place_lessons({{3, turned}, {2, {}}, {1, turned}}, steps);
    REQUIRE(twice.size() == 1);
    CHECK(twice[0].sentence == "In 2 of 3 builds before, L2 was turned here.");
    CHECK(twice[0].builds == 2);

    const std::vector<MoveLesson> older = place_lessons({{3, {}}, {2, turned}}, steps);
    REQUIRE(older.size() == 1);
    CHECK(older[0].sentence == "In build 2, L2 was turned here.");
}

TEST_CASE("A part that the plan has lost is left out, and a walk teaches nothing", "[history]") {
    const std::vector<Lesson> lessons =
        lessons_after(two_lights(), {make::changed(3, make::change_of(ChangeKind::led_turned, "L2"))});
    CHECK(place_lessons({{1, lessons}}, make_steps(make::sample_card(), make::kParts)).empty());
    CHECK(place_lessons({}, make_steps(make::sample_card(), make::kParts)).empty());

    Event started = make::started(two_lights());
    started.walked = true;
    const std::vector<Event> events = {started,
                                       make::changed(1, make::change_of(ChangeKind::led_turned, "L2"))};
    const Outcome<Record> record = fold(events, make::kParts);
    REQUIRE(record.ok());
    CHECK(lessons_of(record.value(), events, make::kParts).empty());
}
