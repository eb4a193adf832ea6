// Figures over many builds, and two builds side by side. Medians are checked against sorting all values.
#include "history/compare.h"
#include "history/figures.h"
#include "support/make_build.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace lanternleaf;

namespace {

// A finished build: each step `span_s` long, `stops` stops in step 3, and what else happened in it.
std::vector<Event> build_of(std::int64_t span_s, int stops = 0, const std::vector<Event>& in_step_3 = {}) {
    std::vector<Event> events = {make::started(make::sample_card())};
    std::int64_t now_s = events[0].at_s;
    const auto add = [&](Event event) {
        event.at_s = now_s;
        events.push_back(event);
    };
    for (int step = 1; step <= kStepCount; ++step) {
        now_s += span_s;
        if (step == 3) {
            for (const Event& event : in_step_3) {
                add(event);
            }
            for (int i = 0; i < stops; ++i) {
                add(make::verdict(step, VerdictState::stopped, "not yet"));
            }
        }
        add(make::verdict(step, VerdictState::proved));
    }
    add(event_at(0, EventKind::finished, 0, "1 of 1 lit"));
    return events;
}

Record record_of(const std::vector<Event>& events) {
    Outcome<Record> record = fold(events, make::kParts);
    INFO((record ? std::string() : record.problem().sentence()));
    REQUIRE(record.ok());
    return std::move(record).value();
}

Story story_of(const std::vector<Event>& events) {
    return tell(record_of(events), events, make::kParts);
}

} // namespace

TEST_CASE("A median from the counter is within one per cent of the sorted one", "[history]") {
    std::mt19937 random(7);
    std::lognormal_distribution<double> spans(6.0, 1.2);
    for (const int count : {1, 2, 3, 100, 5001}) {
        SpanCount counter;
        std::vector<std::int64_t> all;
        for (int i = 0; i < count; ++i) {
            all.push_back(static_cast<std::int64_t>(spans(random)) + 60);
            counter.add(all.back());
        }
        std::sort(all.begin(), all.end());
        const auto middle = static_cast<double>(all[static_cast<std::size_t>((count - 1) / 2)]);
        // Half a bucket of 2 %, and whole seconds.
        CHECK(std::abs(static_cast<double>(counter.median_s()) - middle) <= 0.01 * middle + 0.6);
    }
    CHECK(SpanCount().median_s() == 0);
}

TEST_CASE("Steps passed at first, the hardest step and the tape are counted", "[history]") {
    FigureCount count;
    const auto take = [&](const std::vector<Event>& events) {
        count.take(record_of(events), events, make::kParts);
    };
    take(build_of(100));
    take(build_of(300, 2));
    take(build_of(500, 1));
    take(build_of(700));
    std::vector<Event> walk = build_of(10);
    walk[0].walked = true;
    take(walk);
    const LibraryFigures figures = count.figures();
    CHECK(figures.builds == 4);
    CHECK(figures.walks == 1);
    CHECK(figures.finished == 4);
    CHECK(figures.first_pass == 2);
    CHECK(figures.first_pass_share() == 0.5);
    CHECK(figures.hardest_step == 3);
    CHECK(first_pass_share(figures.steps[2]) == 0.5);
    CHECK(first_pass_share(figures.steps[3]) == 1.0);
    CHECK(figures.steps[2].stops == 3);
    CHECK(figures.steps[0].median_s == Approx(300).epsilon(0.011));
    CHECK(figures.median_build_s == Approx(2100).epsilon(0.011));
    // By hand: N1 is 35 + 88 mm, S1 is 6 + 45 + 58 mm; no end of the sample is folded under.
    CHECK(figures.planned_tape_mm == Approx(4 * (123 + 109)));
    CHECK(figures.used_tape_mm == Approx(figures.planned_tape_mm));
    CHECK(FigureCount().figures().hardest_step == 0);
}

TEST_CASE("A bridge uses more tape than was planned", "[history]") {
    Change tear = make::change_of(ChangeKind::tear, "S1");
    tear.at_mm = {90, 35};
    tear.mm = 1;
    Change bridge = make::change_of(ChangeKind::bridged, "S1");
    bridge.at_mm = {90, 35};
    bridge.mm = 16;
    FigureCount count;
    const std::vector<Event> events = build_of(100, 0, {make::changed(3, tear), make::changed(3, bridge)});
    count.take(record_of(events), events, make::kParts);
    CHECK(count.figures().used_tape_mm > count.figures().planned_tape_mm + 10);
}

TEST_CASE("Two like builds differ in nothing", "[history]") {
    const Comparison rows = compare(story_of(build_of(300)), story_of(build_of(330)), "Build 2", "Build 1");
    REQUIRE(rows.steps.size() == 7);
    for (const StepCompared& step : rows.steps) {
        CHECK_FALSE(step.differs.any());
    }
    CHECK(rows.summary == "No step differs by more than hand and meter scatter.");
}

TEST_CASE("What differs between two builds is marked where it differs", "[history]") {
    const std::vector<Event> good = build_of(300, 0, {make::measured(3, "bed-to-L1-", 0.1)});
    const std::vector<Event> bad =
        build_of(300, 1,
                 {make::measured(3, "bed-to-L1-", 8.0),
                  make::changed(3, make::change_of(ChangeKind::led_turned, "L1"))});
    const Comparison rows = compare(story_of(good), story_of(bad), "Build 2", "Build 1");
    const StepCompared& third = rows.steps[2];
    CHECK(third.differs.reading);
    CHECK(third.differs.stops);
    CHECK(third.differs.changes);
    CHECK_FALSE(third.differs.time);
    CHECK_FALSE(third.differs.outcome);
    CHECK(third.left.reading == "0.1 Ω");
    CHECK(third.right.reading == "8 Ω");
    CHECK(third.right.stops == "1 stop");
    CHECK(third.check == "bed to L1−");
    CHECK_FALSE(rows.steps[3].differs.any());
    CHECK(rows.summary == "Step 3 differs.");

    const Comparison slow = compare(story_of(build_of(300)), story_of(build_of(900)), "Build 2", "Build 1");
    CHECK(slow.steps[0].differs.time);
    CHECK(slow.summary.rfind("Build 1 took 1 h 10 longer. ", 0) == 0);
}
