// Trace from the screen: measured once, true to size, deaf to paper.
#include "drawing.h"

using namespace lanternleaf;

TEST_CASE("the light box is measured once, locks against paper, and two held corners unlock it", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    d.touch("draw/card");
    d.reach("draw-card/rows", "draw-card/trace");
    REQUIRE(d.app.state.light_box.open);
    CHECK(d.app.state.light_box.calibrating); // never shown at a guessed size
    CHECK(d.fingers.host.screen_on);
    d.fingers.drag("box/scale", 60, 0);
    d.fingers.frame(2);
    const double chosen = d.app.state.light_box.draft_px_per_mm;
    CHECK(chosen > 0);
    // The outline is a bank card of 85.60 x 53.98 mm (ISO/IEC 7810 ID-1) at that scale.
    const Rect outline = d.fingers.need("box/card").rect;
    CHECK(static_cast<double>(outline.w) == Approx(85.60 * chosen).epsilon(1e-4));
    CHECK(static_cast<double>(outline.h) == Approx(53.98 * chosen).epsilon(1e-4));
    d.touch("box/fits");
    CHECK(d.app.state.settings.px_per_mm == Approx(chosen));
    CHECK(read_settings(d.app.around).px_per_mm == Approx(chosen).margin(1e-4));
    d.touch("box/lock");
    REQUIRE(d.app.state.light_box.locked);

    // Paper and a resting hand: taps and one held corner do nothing.
    d.fingers.tap_at({400, 300});
    d.fingers.frame(2);
    d.fingers.pointer(PointerSample::Phase::Down, {10, 10}, 1);
    d.fingers.frame(90);
    CHECK(d.app.state.light_box.locked);
    // Two corners of one side are no diagonal.
    d.fingers.pointer(PointerSample::Phase::Down, {1170, 10}, 2);
    d.fingers.frame(90);
    CHECK(d.app.state.light_box.locked);
    d.fingers.pointer(PointerSample::Phase::Up, {1170, 10}, 2);
    d.fingers.pointer(PointerSample::Phase::Down, {1170, 810}, 3);
    d.fingers.frame(30);
    CHECK(d.app.state.light_box.locked); // half a second
    d.fingers.frame(45);
    CHECK_FALSE(d.app.state.light_box.locked);
    d.fingers.pointer(PointerSample::Phase::Up, {1170, 810}, 3);
    d.fingers.pointer(PointerSample::Phase::Up, {10, 10}, 1);
    d.fingers.frame(3);
    d.touch("box/close");
    CHECK_FALSE(d.app.state.light_box.open);
    CHECK_FALSE(d.fingers.host.screen_on);
    // The next time the template comes at once.
    update(d.app.state, d.app.around, command::Draw{draw::OpenLightBox{}});
    CHECK_FALSE(d.app.state.light_box.calibrating);
}
