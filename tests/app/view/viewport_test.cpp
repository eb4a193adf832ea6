#include "view/viewport.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

const Vec2 kSheet{148, 105};
const Rect kArea{10, 140, 630, 470};

void same(Vec2 a, Vec2 b, double within) {
    CHECK(a.x == Approx(b.x).margin(within));
    CHECK(a.y == Approx(b.y).margin(within));
}

} // namespace

TEST_CASE("the fitted view has the design's scale and shows the whole sheet", "[viewport]") {
    // look: ppm = min((w - 50) / 148, (h - 50) / 105); 630 points wide give 3.92.
    const Viewport view = fitted(kArea, kSheet);
    CHECK(view.ppm == Approx(580.0 / 148.0));
    CHECK(view.ppm == Approx(3.92).margin(0.005));
    for (const Vec2 corner : {Vec2{0, 0}, Vec2{148, 0}, Vec2{148, 105}, Vec2{0, 105}}) {
        CHECK(kArea.holds(view.to_px(corner)));
    }
    const Viewport tall = fitted({0, 0, 900, 260}, kSheet);
    CHECK(tall.ppm == Approx(210.0 / 105.0));
}

TEST_CASE("millimetres and points go round trip at every zoom, mirrored too", "[viewport]") {
    for (const bool mirrored : {false, true}) {
        for (const double zoom : {1.0, 1.7, 4.0}) {
            const Viewport view = looking_at(kArea, kSheet, zoom, {110, 30}, mirrored);
            for (const Vec2 mm : {Vec2{0, 0}, Vec2{148, 105}, Vec2{110.25, 30.5}, Vec2{-3, 120}}) {
                same(view.to_mm(view.to_px(mm)), mm, 1e-4);
            }
        }
    }
}

TEST_CASE("mirrored, the sheet's left edge is at the right and up stays up", "[viewport]") {
    const Viewport plain = fitted(kArea, kSheet);
    const Viewport front = fitted(kArea, kSheet, true);
    CHECK(front.to_px({0, 50}).x == Approx(plain.to_px({148, 50}).x).margin(0.01));
    CHECK(front.to_px({30, 10}).y == Approx(plain.to_px({30, 10}).y).margin(0.01));
    CHECK(front.way({1, 0}) == Point{-1, 0});
}

TEST_CASE("zooming keeps the place under the finger", "[viewport]") {
    const Viewport now = looking_at(kArea, kSheet, 2.0, {80, 50}, false);
    const Point finger{400, 320};
    const Vec2 under = now.to_mm(finger);
    const Viewport then = looking_at(kArea, kSheet, 3.0, centre_for_zoom(now, finger, 1.5), false);
    same(then.to_mm(finger), under, 1e-3);
}

TEST_CASE("panning moves the card with the finger but never off the area", "[viewport]") {
    const Viewport now = looking_at(kArea, kSheet, 3.0, {74, 52}, false);
    const Viewport then = looking_at(kArea, kSheet, 3.0, centre_for_pan(now, {20, -10}), false);
    const Point before = now.to_px({74, 52});
    const Point after = then.to_px({74, 52});
    CHECK(after.x - before.x == Approx(20).margin(0.01));
    CHECK(after.y - before.y == Approx(-10).margin(0.01));
    const Viewport far = looking_at(kArea, kSheet, 3.0, {-500, 900}, false);
    CHECK(far.to_px({0, 0}).x <= kArea.x + 30.5f);
    CHECK(far.to_px({0, 105}).y >= kArea.bottom() - 14.5f);
    same(looking_at(kArea, kSheet, 1.0, {0, 0}, false).centre_mm, {74, 52.5}, 1e-9);
}
