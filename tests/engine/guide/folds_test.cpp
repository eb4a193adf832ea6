// Left and right at a fold, for every heading: y runs down the sheet, so a clockwise turn is to the right.
#include "find_moves.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

std::vector<Move> folds_of(std::vector<Vec2> path_mm) {
    Card card = make::bare_card();
    card.laid.emplace_back(make::strip("N1", Side::negative, std::move(path_mm)));
    std::vector<Move> folds;
    const Step step = look::step(make_steps(card, make::kParts), StepId::lay_negative);
    for (const Move& move : step.moves) {
        if (move.kind == MoveKind::fold) {
            folds.push_back(move);
        }
    }
    return folds;
}

} // namespace

TEST_CASE("a clockwise square folds right at every corner", "[guide]") {
    // Up, right, down, left: the four headings one after another, each turn clockwise.
    const std::vector<Move> folds = folds_of({{70, 70}, {70, 20}, {130, 20}, {130, 80}, {90, 80}, {90, 50}});
    REQUIRE(folds.size() == 4);
    for (const Move& fold : folds) {
        CHECK(fold.turn_deg == Approx(90));
        CHECK(fold.title.rfind("Fold right", 0) == 0);
        CHECK(fold.sentence.find("swing it right") != std::string::npos);
    }
}

TEST_CASE("the same square mirrored folds left", "[guide]") {
    const std::vector<Move> folds = folds_of({{78, 70}, {78, 20}, {18, 20}, {18, 80}, {58, 80}, {58, 50}});
    REQUIRE(folds.size() == 4);
    for (const Move& fold : folds) {
        CHECK(fold.turn_deg == Approx(-90));
        CHECK(fold.title.rfind("Fold left", 0) == 0);
    }
}

TEST_CASE("other angles are said", "[guide]") {
    const std::vector<Move> folds = folds_of({{70, 80}, {70, 50}, {90, 30}});
    REQUIRE(folds.size() == 1);
    CHECK(folds[0].turn_deg == Approx(45));
    CHECK(folds[0].title.rfind("Fold right by 45°", 0) == 0);
}

TEST_CASE("a vertex on a straight line is no fold", "[guide]") {
    CHECK(folds_of({{70, 80}, {70, 50}, {70, 30}}).empty());
}

TEST_CASE("a fold is placed by the nearest LED, else by the edges", "[guide]") {
    Card card = make::bare_card();
    card.leds.push_back(make::led("L3", "carrier-white", {70, 20}, 0));
    card.laid.emplace_back(make::strip("N1", Side::negative, {{70, 80}, {70, 40}, {120, 40}, {120, 80}}));
    const Step step = look::step(make_steps(card, make::kParts), StepId::lay_negative);
    CHECK(look::move(step, "3/N1/fold-1").title == "Fold right at the corner below L3");
    CHECK(look::move(step, "3/N1/fold-2").title == "Fold right, 120 mm from the left, 40 mm from the top");
}

TEST_CASE("turning the whole card a quarter keeps left and right", "[guide]") {
    // The sample's S1 turned a quarter clockwise about the sheet's corner and shifted back onto it: (x, y) ->
    // (105 - y, x).
    const std::vector<Vec2> path{{54, 80}, {60, 80}, {60, 35}, {118, 35}};
    std::vector<Vec2> turned;
    for (const Vec2 p : path) {
        turned.push_back({105 - p.y, p.x});
    }
    const std::vector<Move> before = folds_of(path);
    const std::vector<Move> after = folds_of(turned);
    REQUIRE(before.size() == 2);
    REQUIRE(after.size() == 2);
    CHECK(before[0].turn_deg == Approx(-90));
    CHECK(before[1].turn_deg == Approx(90));
    CHECK(after[0].turn_deg == Approx(before[0].turn_deg));
    CHECK(after[1].turn_deg == Approx(before[1].turn_deg));
}
