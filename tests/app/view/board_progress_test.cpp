#include "app/view/demo_board.h"

using namespace lanternleaf;
using namespace lanternleaf::test;

namespace {

std::size_t strip_index(const DemoBoard& board, const std::string& id) {
    for (std::size_t i = 0; i < board.conductors.strips.size(); ++i) {
        if (strip_of(board.card, board.conductors, static_cast<int>(i)).id == id) {
            return i;
        }
    }
    FAIL("no strip " << id);
    return 0;
}

int move_index(const DemoBoard& board, StepId step, const std::string& id) {
    const Step& moves = board.steps[static_cast<std::size_t>(step) - 1];
    for (std::size_t i = 0; i < moves.moves.size(); ++i) {
        if (moves.moves[i].id == id) {
            return static_cast<int>(i);
        }
    }
    FAIL("no move " << id);
    return -1;
}

} // namespace

TEST_CASE("nothing that lies is ever taken up again, and at the end all lies", "[progress]") {
    for (const std::string& name : demo_names()) {
        const DemoBoard board = demo_board(name);
        BoardProgress last = board_at(board.card, board.conductors, board.steps, StepId::mount_holder, 0);
        for (const Step& step : board.steps) {
            const int count = static_cast<int>(step.moves.size());
            for (int move = 0; move <= count; ++move) {
                const BoardProgress now = board_at(board.card, board.conductors, board.steps, step.id, move);
                CAPTURE(name, static_cast<int>(step.id), move);
                CHECK(now.moving == (move < count));
                for (std::size_t i = 0; i < now.strips.size(); ++i) {
                    CHECK(now.strips[i].done_mm >= last.strips[i].done_mm - 1e-9);
                    CHECK(now.strips[i].done_mm <= board.conductors.strips[i].ribbon.length_mm + 1e-9);
                }
                last = now;
            }
        }
        const BoardProgress end = finished_board(board.card, board.conductors);
        for (std::size_t i = 0; i < end.strips.size(); ++i) {
            CHECK(last.strips[i].done_mm == Approx(board.conductors.strips[i].ribbon.length_mm));
        }
        CHECK(last.leds == end.leds);
        CHECK(last.patches == end.patches);
        CHECK(last.foam == ItemState::done);
        CHECK(last.cell_in);
    }
}

TEST_CASE("after the negative step the positive trace is still to come", "[progress]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    const BoardProgress now = board_after(board.card, board.conductors, board.steps, StepId::lay_negative);
    CHECK(now.holder == ItemState::done);
    for (const char* id : {"N1", "N2", "N3"}) {
        CHECK(now.strips[strip_index(board, id)].done_mm > 1.0);
    }
    for (const char* id : {"S1", "S2"}) {
        CHECK(now.strips[strip_index(board, id)].done_mm == Approx(0.0));
    }
    CHECK(now.patches[0] == ItemState::later);
}

TEST_CASE("after the positive step the tail waits before the patch", "[progress]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    const BoardProgress now = board_after(board.card, board.conductors, board.steps, StepId::lay_positive);
    const std::size_t s1 = strip_index(board, "S1");
    const Ribbon& ribbon = board.conductors.strips[s1].ribbon;
    CHECK(now.strips[s1].done_mm < along(ribbon, {99, 43})); // the patch begins at x = 99
    CHECK(now.strips[s1].done_mm > along(ribbon, {39, 43}));
    CHECK(now.strips[strip_index(board, "S2")].done_mm == Approx(63.0));
}

TEST_CASE("at a fold the view shows the run before, the fold, and the run after", "[progress]") {
    const DemoBoard board = demo_board("harbour-lighthouse");
    const int move = move_index(board, StepId::lay_positive, "4/S1/fold-2");
    const BoardProgress now = board_at(board.card, board.conductors, board.steps, StepId::lay_positive, move);
    const BoardView view = make_board_view(board.card, board.parts, board.conductors, now, {});
    REQUIRE(view.fold.has_value());
    CHECK(view.fold->at_mm == Vec2{39, 43});
    CHECK(view.fold->number == move + 1);
    CHECK(view.fold->right);
    CHECK(view.fold->outside.x < 0.0); // up, then right: the outside is at the upper left
    CHECK(view.fold->outside.y < 0.0);
    REQUIRE(view.run.has_value());
    CHECK(view.run->path_mm.front().x == Approx(39.0));
    CHECK(view.run->path_mm.back().x > 60.0);
    REQUIRE(view.halo_mm.size() == 3);
    CHECK(view.halo_mm.front() == Vec2{39, 84}); // from the fold before
    REQUIRE(view.start.has_value());
    CHECK(view.start->at_mm == Vec2{17, 84});
}

TEST_CASE("a stretch of a strip keeps its folds", "[progress]") {
    const DemoBoard board = demo_board("window-candle");
    const Ribbon& ribbon = board.conductors.strips[strip_index(board, "S1")].ribbon;
    CHECK(stretch(ribbon, 0, ribbon.length_mm).size() == 4);
    CHECK(stretch(ribbon, 10, 12).size() == 2);
    CHECK(stretch(ribbon, 5, 5).empty());
    const std::vector<Vec2> round_corner = stretch(ribbon, 20, 30); // the fold is 22 mm along
    REQUIRE(round_corner.size() == 3);
    CHECK(round_corner[1] == Vec2{42, 80});
}
