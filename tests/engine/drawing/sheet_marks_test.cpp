// Creases and places to keep clear under a finger: found, moved, sized, turned, and never off the sheet.
#include "drawing/sheet_marks.h"

#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

namespace {

Card with_marks() {
    Card card = make::bare_card(); // 148 x 105 mm
    card.sheet.folds = {{{74, 0}, {74, 105}, {}}};
    card.sheet.keepouts = {{"window", {{10, 10}, {30, 10}, {30, 25}, {10, 25}}, {}}};
    return card;
}

Card after(const Card& card, const Edit& edit) {
    const Outcome<Card> done = apply_edit(card, make::test_parts(), edit);
    REQUIRE(done.ok());
    return done.value();
}

SheetMark mark(const Card& card, const std::string& id) {
    const std::optional<SheetMark> found = find_mark(card.sheet, id);
    REQUIRE(found.has_value());
    return *found;
}

} // namespace

TEST_CASE("a mark goes by its place in the list and is found under a finger", "[drawing]") {
    const Card card = with_marks();
    CHECK(mark_at(card.sheet, {20, 20}, 5) == "clear-1");
    CHECK(mark_at(card.sheet, {76, 60}, 5) == "crease-1");
    CHECK(mark_at(card.sheet, {100, 60}, 5).empty());
    CHECK_FALSE(find_mark(card.sheet, "crease-2"));
    CHECK_FALSE(find_mark(card.sheet, "clear-0"));
    CHECK_FALSE(find_mark(card.sheet, "L1"));
    CHECK(place_of_mark(card.sheet, mark(card, "clear-1")) == Vec2{20, 17.5});
}

TEST_CASE("a crease slides square to itself and stays on the sheet", "[drawing]") {
    const Card card = with_marks();
    const SheetMark crease = mark(card, "crease-1");
    CHECK(after(card, move_mark(card.sheet, crease, {-10, 33})).sheet.folds[0].from_mm == Vec2{64, 0});
    CHECK(after(card, move_mark(card.sheet, crease, {500, 0})).sheet.folds[0].to_mm == Vec2{148, 105});
    const Card turned = after(card, turn_mark(card.sheet, crease));
    CHECK(turned.sheet.folds[0].from_mm == Vec2{0, 52.5});
    CHECK(turned.sheet.folds[0].to_mm == Vec2{148, 52.5});
    CHECK(after(turned, turn_mark(turned.sheet, crease)).sheet.folds[0].from_mm == Vec2{74, 0});
    CHECK(after(card, remove_mark(card.sheet, crease)).sheet.folds.empty());
}

TEST_CASE("a place to keep clear is moved, sized by its corners and turned", "[drawing]") {
    const Card card = with_marks();
    const SheetMark clear = mark(card, "clear-1");
    const auto outline = [](const Card& c) { return c.sheet.keepouts[0].outline_mm; };
    CHECK(outline(after(card, move_mark(card.sheet, clear, {5, -50}))) ==
          std::vector<Vec2>{{15, 0}, {35, 0}, {35, 15}, {15, 15}});
    // The corner across stays put, the two beside follow.
    CHECK(outline(after(card, move_mark_corner(card.sheet, clear, 2, {50, 40}))) ==
          std::vector<Vec2>{{10, 10}, {50, 10}, {50, 40}, {10, 40}});
    CHECK(outline(after(card, move_mark_corner(card.sheet, clear, 0, {5, 6}))) ==
          std::vector<Vec2>{{5, 6}, {30, 6}, {30, 25}, {5, 25}});
    // Dragged past the corner across, it keeps its least size instead of turning inside out.
    CHECK(outline(after(card, move_mark_corner(card.sheet, clear, 2, {-20, -20}))) ==
          std::vector<Vec2>{{10, 10}, {14, 10}, {14, 14}, {10, 14}});
    const Card turned = after(card, turn_mark(card.sheet, clear));
    CHECK(words_of_mark(turned.sheet, clear) == "15 mm × 20 mm");
    for (const Vec2 corner : outline(turned)) {
        CHECK((corner.x >= 0 && corner.y >= 0));
    }
    Card odd = card;
    odd.sheet.keepouts[0].outline_mm = {{10, 10}, {40, 12}, {20, 30}};
    CHECK(outline(after(odd, move_mark_corner(odd.sheet, mark(odd, "clear-1"), 1, {44, 20})))[1] ==
          Vec2{44, 20});
}

TEST_CASE("what is added lies on the sheet, however small the sheet is", "[drawing]") {
    for (const double side : {30.0, 60.0, 300.0}) {
        Card card = make::bare_card();
        card.sheet.width_mm = side;
        card.sheet.height_mm = side;
        card = after(card, add_crease(card.sheet));
        card = after(card, add_clear(card.sheet));
        CHECK(find_mark(card.sheet, "crease-1"));
        for (const Vec2 corner : card.sheet.keepouts.at(0).outline_mm) {
            CHECK((corner.x >= 0 && corner.y >= 0 && corner.x <= side && corner.y <= side));
        }
    }
}
