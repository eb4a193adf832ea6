#include "app/view/demo_board.h"

#include "view/board_pills.h"
#include "view/board_shapes.h"
#include "view/board_targets.h"

#include <cmath>

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

/// Least distance between a pill and a centre line; 0 when the line runs through it.
double off_line(const Convex& pill, Vec2 a, Vec2 b) {
    const Vec2 across = quarter_turn(unit(b - a)) * 1e-4;
    return nearest(pill, Convex{a + across, a - across, b - across, b + across}).mm;
}

} // namespace

TEST_CASE("id pills hide no centre line, no part and no other pill", "[board]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        for (const double ppm : {3.92, 2.42}) {
            const BoardView view = finished_view(board, ppm);
            REQUIRE(view.parts.size() == board.card.leds.size() + board.card.resistors.size());
            for (const PartView& part : view.parts) {
                const Convex pill = pill_of(part);
                CAPTURE(name, ppm, part.id, part.pill_mm.x, part.pill_mm.y);
                const Box box = bounds(pill);
                CHECK(box.min.x >= 0.0);
                CHECK(box.min.y >= 0.0);
                CHECK(box.max.x <= view.sheet_mm.x);
                CHECK(box.max.y <= view.sheet_mm.y);
                for (const StripShape& strip : board.conductors.strips) {
                    for (const Run& run : strip.ribbon.runs) {
                        CHECK(off_line(pill, run.from_mm, run.to_mm) > 0.3);
                    }
                }
                for (const PartView& other : view.parts) {
                    const Convex body =
                        rectangle(other.at_mm, {other.length_mm, other.width_mm}, other.turn_deg);
                    CHECK(clip(pill, body).empty());
                    if (other.id != part.id) {
                        CHECK(clip(pill, pill_of(other)).empty());
                    }
                }
                CHECK(distance(part.pill_mm, part.at_mm) < 16.0); // and still beside its own part
            }
        }
    }
}

TEST_CASE("pills stay where they are while the build goes on", "[board]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    BoardOptions options;
    const BoardView last = finished_view(board, options.ppm);
    for (int step = 1; step <= kStepCount; ++step) {
        const BoardProgress progress =
            board_at(board.card, board.conductors, board.steps, static_cast<StepId>(step), 0);
        const BoardView view = make_board_view(board.card, board.parts, board.conductors, progress, options);
        for (std::size_t i = 0; i < view.parts.size(); ++i) {
            CHECK(view.parts[i].pill_mm == last.parts[i].pill_mm);
        }
    }
}

TEST_CASE("signs on tape keep clear of folds, joints and parts", "[board]") {
    // look: every 8 mm; none within 4.2 of a fold, 4.5 of a joint, or under an LED.
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        const BoardView view = finished_view(board, 3.92);
        for (const StripView& strip : view.strips) {
            CAPTURE(name, strip.id);
            for (const Vec2 tick : strip.ticks_mm) {
                for (const FoldMark& fold : strip.folds) {
                    CHECK(distance(fold.at_mm, tick) >= 4.2);
                }
                for (const JointView& joint : view.joints) {
                    CHECK(distance(joint.at_mm, tick) >= 4.5);
                }
                for (const PartView& part : view.parts) {
                    const Convex body = rectangle(part.at_mm, {part.length_mm, part.width_mm}, part.turn_deg);
                    CHECK_FALSE(contains(body, tick));
                }
            }
        }
        std::size_t count = 0;
        for (const StripView& strip : view.strips) {
            count += strip.ticks_mm.size();
        }
        CHECK(count >= 2 * view.strips.size()); // none of the above holds for want of signs
    }
}

TEST_CASE("small cards carry fewer signs", "[board]") {
    const DemoBoard board = demo_board("window-candle");
    const auto signs = [&](double ppm) {
        std::size_t count = 0;
        for (const StripView& strip : finished_view(board, ppm).strips) {
            count += strip.ticks_mm.size();
        }
        return count;
    };
    CHECK(signs(2.0) < signs(3.92));
    CHECK(signs(2.0) > 0);
}

TEST_CASE("a placed part is drawn over both its pads", "[board]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    const BoardView view = finished_view(board, 3.92);
    for (std::size_t i = 0; i < board.card.leds.size(); ++i) {
        const PartView& part = view.parts[i];
        const Convex body = rectangle(part.at_mm, {part.length_mm, part.width_mm}, part.turn_deg);
        CHECK(contains(body, board.conductors.led_pads[2 * i].at_mm));
        CHECK(contains(body, board.conductors.led_pads[2 * i + 1].at_mm));
    }
    // The least length is the design's.
    Package chip;
    chip.pads = {{"-", {-1.5, 0}, {1, 1}}, {"+", {1.5, 0}, {1, 1}}};
    CHECK(drawn_length(chip) == Approx(9.6));
}

TEST_CASE("the open flap holds its disc and the tape that starts on it up to the hinge", "[board]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        const HolderView holder = finished_view(board, 3.92).holder;
        REQUIRE(holder.flap);
        REQUIRE(holder.flap_outline_mm.size() == 4);
        Box flap;
        for (const Vec2 p : holder.flap_outline_mm) {
            flap.add(p);
        }
        CAPTURE(name);
        CHECK(distance(holder.bed_mm, holder.flap_mm) == Approx(24.0));
        CHECK(flap.contains(holder.flap_mm + Vec2{10, 0}));
        CHECK(flap.contains(holder.flap_mm - Vec2{10, 0}));
        const Strip* plus = find_strip(board.card, "S1");
        REQUIRE(plus != nullptr);
        CHECK(flap.contains(plus->path_mm[0]));
        CHECK(flap.contains(plus->path_mm[1])); // it turns towards the hinge while still on the flap
        CHECK(flap.max.x <= 148.0);
        CHECK(flap.max.y <= 105.0);
    }
}

TEST_CASE("layers can be hidden", "[board]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    BoardOptions options;
    options.negative = false;
    options.picture = false;
    const BoardView view = make_board_view(board.card, board.parts, board.conductors,
                                           finished_board(board.card, board.conductors), options);
    CHECK_FALSE(view.art.has_value());
    REQUIRE(view.strips.size() == 2);
    for (const StripView& strip : view.strips) {
        CHECK(strip.side == Side::positive);
    }
}

TEST_CASE("light only comes from placed LEDs, within 0 and 1", "[board]") {
    const DemoBoard board = demo_board("window-candle");
    BoardOptions options;
    options.glow = {1.7};
    const BoardProgress done = finished_board(board.card, board.conductors);
    CHECK(make_board_view(board.card, board.parts, board.conductors, done, options).parts[0].glow ==
          Approx(1.0));
    BoardProgress before = done;
    before.leds[0] = ItemState::later;
    CHECK(make_board_view(board.card, board.parts, board.conductors, before, options).parts[0].glow ==
          Approx(0.0));
}

TEST_CASE("a tap means the nearest thing within a finger's width", "[board]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    const Viewport viewport = fitted({0, 0, 630, 470}, {148, 105});
    const BoardView view = finished_view(board, viewport.ppm);
    for (const Led& led : board.card.leds) {
        CHECK(target_at(view, viewport, viewport.to_px(led.at_mm)) == "board/led/" + led.id);
        // 20 points off is still within 28, and no other LED is nearer.
        const Point off = viewport.to_px(led.at_mm) + Point{0, 6};
        CHECK(target_at(view, viewport, off) == "board/led/" + led.id);
    }
    CHECK(target_at(view, viewport, viewport.to_px({106, 33})) == "board/joint/N2-N3");
    CHECK(target_at(view, viewport, viewport.to_px({106, 45})) == "board/patch/P1");
    CHECK(target_at(view, viewport, viewport.to_px({23, 58})) == "board/holder");
    CHECK(target_at(view, viewport, viewport.to_px({145, 95})).empty());
}
