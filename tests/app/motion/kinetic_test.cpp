// Kinetic scrolling and frame pacing. The fling is checked against the closed form of its equation of motion,
// v' = -k v: the way from v0 to the stop speed is (v0 - stop) / k.
#include "motion/kinetic.h"

#include <catch2/catch.hpp>

#include "motion/ease.h"
#include "motion/frame_pacer.h"

using namespace lanternleaf;

namespace {

float fling_end(const std::vector<float>& steps) {
    Kinetic k;
    k.release(2000, 1e6f);
    for (std::size_t i = 0; k.advance(steps[i % steps.size()], 1e6f, 50); ++i) {
        REQUIRE(i < 100000);
    }
    return k.offset;
}

} // namespace

TEST_CASE("a fling ends at the same place at any frame rate") {
    const float exact = (2000.0f - 50.0f) / 3.1f;
    CHECK(fling_end({1.0f / 30}) == Approx(exact).margin(0.1));
    CHECK(fling_end({1.0f / 60}) == Approx(exact).margin(0.1));
    CHECK(fling_end({1.0f / 120}) == Approx(exact).margin(0.1));
    CHECK(fling_end({0.004f, 0.033f, 0.1f, 0.0167f}) == Approx(exact).margin(0.1));
}

TEST_CASE("a list comes back from past its ends and stays within them") {
    Kinetic k;
    k.held = true;
    k.drag(-80, 500); // pulled down at the top: follows half as far
    CHECK(k.offset == Approx(-40));
    k.release(-3000, 500);
    for (int i = 0; i < 60; ++i) {
        k.advance(1.0f / 60, 500, 50);
    }
    CHECK(k.offset == 0);
    CHECK_FALSE(k.moving(500));
    k.jump(10000, 500);
    CHECK(k.offset == 500);
    k.release(9000, 500);
    k.advance(0.1f, 500, 50);
    CHECK(k.offset == 500);
}

TEST_CASE("a list shorter than its room cannot be moved by wheel or fling") {
    Kinetic k;
    k.jump(100, 0);
    CHECK(k.offset == 0);
    k.release(800, 0);
    k.advance(0.1f, 0, 50);
    CHECK(k.offset == 0);
}

TEST_CASE("a glide takes its time, and none with reduced motion") {
    Glide g{0, 1};
    int frames = 0;
    while (g.advance(1.0f / 60, 0.18f, false)) {
        ++frames;
    }
    CHECK(frames == 10);
    CHECK(g.value == 1);
    Glide still{0, 1};
    CHECK_FALSE(still.advance(1.0f / 60, 0.18f, true));
    CHECK(still.value == 1);
}

TEST_CASE("an idle app draws nothing") {
    FramePacer pacer;
    int drawn = 0;
    while (pacer.due(0)) {
        pacer.drew(false, std::nullopt);
        ++drawn;
    }
    CHECK(drawn == FramePacer::kFramesAfterInput);
    CHECK_FALSE(pacer.sleep_s(1000).has_value()); // may sleep for ever
    pacer.input();
    CHECK(pacer.sleep_s(1000) == 0.0);
    drawn = 0;
    while (pacer.due(1000)) {
        pacer.drew(false, std::nullopt);
        ++drawn;
    }
    CHECK(drawn == 3);
}

TEST_CASE("a frame that stays awake owes the next; a wake time comes once") {
    FramePacer pacer;
    for (int i = 0; i < 5; ++i) {
        pacer.drew(true, std::nullopt);
        CHECK(pacer.due(0));
    }
    pacer.drew(false, 4.0);
    CHECK_FALSE(pacer.due(3.9));
    CHECK(*pacer.sleep_s(3.5) == Approx(0.5));
    CHECK(pacer.due(4.0));
    pacer.drew(false, std::nullopt);
    CHECK_FALSE(pacer.due(100));
}
