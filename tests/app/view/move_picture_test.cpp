#include "app/view/demo_board.h"

#include "view/move_picture_spec.h"
#include "view/pencil_mask.h"

using namespace lanternleaf;
using namespace lanternleaf::test;

TEST_CASE("every move of the demo cards has a picture of one to three frames", "[picture]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        for (const Step& step : board.steps) {
            for (const Move& move : step.moves) {
                const MovePictureSpec spec = picture_of(move, board.card, board.parts);
                CAPTURE(name, move.id);
                CHECK(spec.kind == move.kind);
                CHECK(spec.captions.size() >= 1);
                CHECK(spec.captions.size() <= 3);
            }
        }
    }
}

TEST_CASE("the fold picture turns as the tape turns", "[picture]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    int seen = 0;
    for (const Step& step : board.steps) {
        for (const Move& move : step.moves) {
            const MovePictureSpec spec = picture_of(move, board.card, board.parts);
            if (move.id == "4/S1/fold-1") { // comes from the left, turns up
                CHECK(spec.heading_deg == Approx(0.0));
                CHECK_FALSE(spec.turn_right);
                CHECK(spec.captions[1] == "2 Swing left");
                ++seen;
            } else if (move.id == "4/S1/fold-2") { // comes from below, turns right
                CHECK(spec.heading_deg == Approx(270.0));
                CHECK(spec.turn_right);
                CHECK(spec.side == Side::positive);
                ++seen;
            } else if (move.id == "3/N1/start") {
                CHECK(spec.on_bed);
                CHECK_FALSE(spec.on_flap);
                ++seen;
            } else if (move.id == "4/S1/start") {
                CHECK(spec.on_flap);
                ++seen;
            }
        }
    }
    CHECK(seen == 4);
    CHECK(picture_of(demo_board("night-tram").steps[2].moves[0], demo_board("night-tram").card,
                     demo_board("night-tram").parts)
              .fabric);
}

TEST_CASE("line art becomes a mask: paper clear, lines opaque", "[picture]") {
    std::vector<std::uint8_t> rgba{255, 255, 255, 255, 0, 0, 0, 255, 0, 0, 0, 0, 128, 128, 128, 255, 9};
    to_pencil_mask(rgba);
    CHECK(rgba[3] == 0);
    CHECK(rgba[4] == 255);
    CHECK(rgba[7] == 255);
    CHECK(rgba[11] == 0); // nothing was there
    CHECK(rgba[15] == 127);
    CHECK(rgba[16] == 9);
}
