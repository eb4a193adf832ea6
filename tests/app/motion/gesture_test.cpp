// Gestures: which samples make a tap, a drag, a pinch, and what withdraws a press. The limits are the
// design's own (5 mm, 1.5 s); no outside source exists for them.
#include "motion/gesture.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using Kind = GestureEvent::Kind;
using Phase = PointerSample::Phase;

namespace {

struct Fingers {
    Gesture gesture;
    std::vector<GestureEvent> events;

    void sample(Phase phase, double t, float x, float y, int id = 1) {
        gesture.feed({phase, PointerKind::Finger, id, {x, y}, t}, events);
    }

    [[nodiscard]] int count(Kind kind) const {
        int n = 0;
        for (const GestureEvent& e : events) {
            n += e.kind == kind;
        }
        return n;
    }
};

} // namespace

TEST_CASE("a press and lift in place is a tap") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100);
    f.sample(Phase::Up, 0.1, 100, 100);
    REQUIRE(f.events.size() == 2);
    CHECK(f.events[0].kind == Kind::Press);
    CHECK(f.events[1].kind == Kind::Tap);
}

TEST_CASE("a tap may drift 5 mm but not more, and take 1.5 s but not longer") {
    const float pt_per_mm = 5;
    const auto [drift_mm, held_s, taps] = GENERATE(table<float, double, int>(
        {{4.9f, 0.8, 1}, {5.1f, 0.8, 0}, {0.0f, 1.49, 1}, {0.0f, 1.51, 0}, {2.0f, 1.4, 1}}));
    CAPTURE(drift_mm, held_s);
    Fingers f;
    f.gesture.rules.pt_per_mm = pt_per_mm;
    f.sample(Phase::Down, 0, 100, 100);
    // There and to rest: the finger lies still for a while before it lifts.
    f.sample(Phase::Move, held_s * 0.5, 100 + drift_mm * pt_per_mm, 100);
    f.sample(Phase::Up, held_s, 100 + drift_mm * pt_per_mm, 100);
    CHECK(f.count(Kind::Tap) == taps);
    CHECK(f.count(Kind::Cancel) == 1 - taps);
}

TEST_CASE("a short quick flick is a drag with its speed, not a tap") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100);
    for (int i = 1; i <= 5; ++i) {
        f.sample(Phase::Move, 0.01 * i, 100, 100 - 4.0f * static_cast<float>(i));
    }
    f.sample(Phase::Up, 0.05, 100, 80);
    CHECK(f.count(Kind::DragStart) == 1);
    CHECK(f.count(Kind::Tap) == 0);
    const auto end =
        std::find_if(f.events.begin(), f.events.end(), [](const auto& e) { return e.kind == Kind::DragEnd; });
    REQUIRE(end != f.events.end());
    CHECK(end->velocity.y == Approx(-400).epsilon(0.01)); // 20 points in 0.05 s
    CHECK(end->velocity.x == Approx(0).margin(1));
}

TEST_CASE("the moves of a drag add up to the way of the finger") {
    Fingers f;
    f.sample(Phase::Down, 0, 10, 10);
    f.sample(Phase::Move, 0.02, 40, 10);
    f.sample(Phase::Move, 0.04, 70, 25);
    f.sample(Phase::Up, 0.3, 80, 30);
    Point sum;
    for (const GestureEvent& e : f.events) {
        sum = sum + e.move;
    }
    CHECK(sum == Point{70, 20});
}

TEST_CASE("a second finger withdraws the press and pinches") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100, 1);
    f.sample(Phase::Down, 0.1, 200, 100, 2);
    CHECK(f.count(Kind::Cancel) == 1);
    CHECK(f.count(Kind::PinchStart) == 1);
    f.sample(Phase::Move, 0.2, 300, 100, 2);
    f.sample(Phase::Move, 0.3, 300, 100, 2);
    float scale = 1;
    for (const GestureEvent& e : f.events) {
        scale *= e.kind == Kind::Pinch ? e.scale : 1;
    }
    CHECK(scale == Approx(2));
    f.sample(Phase::Up, 0.4, 300, 100, 2);
    f.sample(Phase::Up, 0.5, 100, 100, 1);
    CHECK(f.count(Kind::PinchEnd) == 1);
    CHECK(f.count(Kind::Tap) == 0);
    f.sample(Phase::Down, 1, 50, 50, 3);
    f.sample(Phase::Up, 1.1, 50, 50, 3);
    CHECK(f.count(Kind::Tap) == 1);
}

TEST_CASE("a finger whose lift was lost does not turn the next tap into a pinch") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100, 1);
    f.sample(Phase::Down, 6, 300, 300, 2);
    CHECK(f.count(Kind::PinchStart) == 0);
    f.sample(Phase::Up, 6.1, 300, 300, 2);
    CHECK(f.count(Kind::Tap) == 1);
}

TEST_CASE("a contact taken away by the system is no tap") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100);
    f.sample(Phase::Cancel, 0.1, 100, 100);
    CHECK(f.count(Kind::Tap) == 0);
    CHECK(f.count(Kind::Cancel) == 1);
    CHECK_FALSE(f.gesture.pressed());
}

TEST_CASE("a long press comes once, at its time") {
    Fingers f;
    f.sample(Phase::Down, 0, 100, 100);
    REQUIRE(f.gesture.wake_at());
    CHECK(*f.gesture.wake_at() == Approx(0.45));
    f.gesture.tick(0.44, f.events);
    CHECK(f.count(Kind::LongPress) == 0);
    f.gesture.tick(0.46, f.events);
    f.gesture.tick(0.60, f.events);
    CHECK(f.count(Kind::LongPress) == 1);
}
