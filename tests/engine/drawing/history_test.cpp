// History: any number of edits can be taken back to the very first card and done again to the very last.
#include "drawing/history.h"

#include "support/make_card.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;

TEST_CASE("a thousand edits are taken back and done again, each with its name") {
    History history(make::bare_card());
    std::vector<Card> cards{history.card()};
    for (int i = 0; i < 1000; ++i) {
        Card next = history.card();
        next.title = "after " + std::to_string(i);
        history.add("edit " + std::to_string(i), next);
        cards.push_back(next);
    }
    CHECK_FALSE(history.can_redo());
    for (int i = 999; i >= 0; --i) {
        CHECK(history.undo() == "edit " + std::to_string(i));
        CHECK(history.card() == cards[static_cast<std::size_t>(i)]);
    }
    CHECK_FALSE(history.can_undo());
    CHECK(history.undo().empty());
    CHECK(history.card() == cards.front());
    for (int i = 0; i < 1000; ++i) {
        CHECK(history.redo() == "edit " + std::to_string(i));
    }
    CHECK(history.card() == cards.back());
    CHECK(history.redo().empty());
}

TEST_CASE("a new edit after an undo forgets what was undone") {
    History history(make::bare_card());
    history.add("one", make::sample_card());
    history.undo();
    CHECK(history.redo_label() == "one");
    history.add("two", make::row_card(3));
    CHECK_FALSE(history.can_redo());
    CHECK(history.undo_label() == "two");
    CHECK(history.size() == 2);
}
