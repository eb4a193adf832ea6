// What drawing leaves in the library: files of the maker's own, and nobody else's touched.
#include "drawing.h"

#include "cardfile/cardfile.h"

#include <algorithm>
#include <fstream>

using namespace lanternleaf;

TEST_CASE("a card that came with the app is copied by its first edit and stays as it was", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    const std::string shipped = d.app.around.assets + "/cards/window-candle.card.json";
    const std::string before = read_file(shipped).value();
    d.touch("shelf/draw/window-candle");
    CHECK(cards_in(library.path()).empty()); // looking changes nothing
    d.touch("draw/tool/foam");
    d.touch("draw/do/more");
    REQUIRE(cards_in(library.path()) == std::vector<std::string>{"window-candle-2.card.json"});
    CHECK(read_file(shipped).value() == before);
    // Its picture came along.
    const std::vector<std::string> pictures = files_in(library.path() + "/cards", ".png");
    CHECK(std::find(pictures.begin(), pictures.end(), "window-candle.png") != pictures.end());
    CHECK(d.draw().path == library.path() + "/cards/window-candle-2.card.json");
}

TEST_CASE("a file that someone else changed meanwhile is left alone", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    const std::string path = library.path() + "/cards/new-card.card.json";
    Card other = d.draw().card;
    other.title = "Another tablet was here";
    std::ofstream(path) << write_card(other);
    const std::string theirs = read_file(path).value();
    d.touch("draw/tool/foam");
    d.touch("draw/do/more");
    CHECK(read_file(path).value() == theirs);
    CHECK(cards_in(library.path()).size() == 2);
    CHECK(d.draw().saved);
    CHECK(d.draw().path != path);
}

TEST_CASE("when the disk refuses, the plan stays on the table and the maker is told", "[frame]") {
    const OwnFolder library;
    std::ofstream(library.path() + "/cards") << "a file where the folder should be";
    Drawing d(library.path());
    d.touch("shelf/new");
    d.touch("draw-new/a6");
    d.paper({50, 40});
    CHECK(d.draw().card.leds.size() == 1);
    CHECK_FALSE(d.draw().saved);
    CHECK_FALSE(d.fingers.toast().empty());
}
