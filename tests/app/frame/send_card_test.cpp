// A card's file goes out as the plan stands, and comes in again the same.
#include "drawing.h"

#include "model/bring_in.h"

using namespace lanternleaf;

TEST_CASE("a card's file is handed to the host whole, and can be brought in by another", "[frame]") {
    const OwnFolder here;
    Drawing drawing(here.path());
    drawing.tap("shelf/draw/window-candle");
    drawing.tap("draw/card");
    drawing.reach("draw-card/rows", "draw-card/send");
    const FakeHost& host = drawing.fingers.host;
    REQUIRE(host.shared == std::vector<std::string>{"window-candle.card.json", "window-candle.png",
                                                    "window-candle-front.png"});

    const OwnFolder there;
    Table other(there.path());
    bring_in(other.app.state, other.app.around, "their candle.card.json", host.shared_bytes[0]);
    const auto& cards = other.app.state.cards;
    CHECK(std::any_of(cards.begin(), cards.end(), [](const ShelfCard& card) {
        return card.name == "their-candle" && card.trouble.empty() && card.lights > 0;
    }));
    CHECK(other.app.state.said.find("did not come with it") != std::string::npos); // its picture

    // All of it, as picked together; the names are taken by the shipped card's.
    std::vector<LooseFile> files;
    for (std::size_t i = 0; i < host.shared.size(); ++i) {
        files.push_back({host.shared[i], host.shared_bytes[i]});
    }
    bring_in_files(other.app.state, other.app.around, files);
    CHECK(std::any_of(cards.begin(), cards.end(), [](const ShelfCard& card) {
        return card.name == "window-candle-2" && card.trouble.empty() && !card.picture.empty();
    }));
}

TEST_CASE("the shelf asks the host for a card's file where it has a picker, else says how it comes in",
          "[frame]") {
    for (const Size size : {Size{1180, 820}, Size{820, 1180}, Size{390, 844}}) {
        const OwnFolder here;
        Table table(here.path(), size);
        table.reach("shelf", "shelf/bring-in");
        CHECK(table.fingers.host.cards_asked == 0);
        table.fingers.host.picks = true;
        table.reach("shelf", "shelf/bring-in");
        CHECK(table.fingers.host.cards_asked == 1);
    }
}
