// How long moves and steps took: sums checked by hand against the moments written down here.
#include "history/timeline.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Event at(std::int64_t s, EventKind kind, int step, const char* text = "") {
    return event_at(1'780'000'000 + s, kind, step, text);
}

} // namespace

TEST_CASE("Time goes to the move it led to, and to the step", "[history]") {
    const Timeline line = timeline_of({at(0, EventKind::started, 0), at(0, EventKind::audience, 0),
                                       at(60, EventKind::move_done, 1, "a"), at(100, EventKind::reading, 1),
                                       at(160, EventKind::move_done, 1, "b"), at(190, EventKind::verdict, 1),
                                       at(250, EventKind::move_done, 2, "c")});
    REQUIRE(line[0].moves.size() == 2);
    CHECK(line[0].moves[0].worked_s == 60);
    CHECK(line[0].moves[1].worked_s == 100); // measuring before it was said to be done
    CHECK(line[0].proving_s == 30);
    CHECK(line[0].worked_s == 190);
    CHECK(line[1].worked_s == 60);
    CHECK(worked_s(line) == 250);
    CHECK(paused_s(line) == 0);
}

TEST_CASE("A night on the table is a pause and not work", "[history]") {
    const Timeline line =
        timeline_of({at(0, EventKind::started, 0), at(60, EventKind::move_done, 1, "a"),
                     at(60 + 50'000, EventKind::move_done, 1, "b"), at(50'120, EventKind::verdict, 1)});
    CHECK(line[0].worked_s == 120);
    CHECK(line[0].paused_s == 50'000);
    CHECK(line[0].pauses == 1);
}

TEST_CASE("What was put away rests, however short", "[history]") {
    const Timeline line = timeline_of({at(0, EventKind::started, 0), at(60, EventKind::abandoned, 0),
                                       at(90, EventKind::step_opened, 1), at(100, EventKind::verdict, 1)});
    CHECK(line[0].worked_s == 70);
    CHECK(line[0].paused_s == 30);
}

TEST_CASE("A move done twice adds up; what follows the end counts for nothing", "[history]") {
    const Timeline line =
        timeline_of({at(0, EventKind::started, 0), at(10, EventKind::move_done, 1, "a"),
                     at(15, EventKind::move_undone, 1, "a"), at(35, EventKind::move_done, 1, "a"),
                     at(40, EventKind::finished, 0), at(500, EventKind::note, 0, "later")});
    REQUIRE(line[0].moves.size() == 1);
    CHECK(line[0].moves[0].worked_s == 35);
    CHECK(line[0].worked_s == 40);
}

TEST_CASE("A clock set back takes nothing away", "[history]") {
    const Timeline line =
        timeline_of({at(0, EventKind::started, 0), at(100, EventKind::move_done, 1, "a"),
                     at(40, EventKind::move_done, 1, "b"), at(70, EventKind::move_done, 1, "c")});
    CHECK(line[0].worked_s == 130);
    CHECK(line[0].moves[1].worked_s == 0);
}

TEST_CASE("Spans are said as a maker would", "[history]") {
    CHECK(spoken_span(0) == "0 s");
    CHECK(spoken_span(59) == "59 s");
    CHECK(spoken_span(60) == "1 min");
    CHECK(spoken_span(3600 + 4 * 60) == "1 h 04");
    CHECK(spoken_span(3599) == "1 h 00");
}
