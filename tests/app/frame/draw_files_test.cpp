// What drawing leaves in the library: files of the maker's own, and nobody else's touched.
#include "drawing.h"

#include "cardfile/cardfile.h"
#include "model/take_picture.h"

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

TEST_CASE("the sheets asked for are printed by touch, as one PDF handed to the host", "[frame]") {
    for (const Size size : {Size{1180, 820}, Size{820, 1180}}) {
        const OwnFolder library;
        Drawing d(library.path(), size);
        draw_seven(d);
        d.touch("draw/card");
        d.reach("draw-card/rows", "draw-card/print");
        d.touch("print/steps"); // not these
        d.reach("print/rows", "print/paper/letter");
        CHECK(d.app.state.print.paper == Paper::letter);
        CHECK_FALSE(d.app.state.print.with_steps);
        d.touch("print/make");
        REQUIRE(d.fingers.host.shared.size() == 1);
        CHECK(d.fingers.host.shared[0].ends_with(".pdf"));
        CHECK(d.fingers.host.shared_bytes[0].starts_with("%PDF-"));
        CHECK(d.app.state.sheet == SheetKind::none);
        // None chosen: said, and nothing handed out.
        d.app.state.print = {};
        for (bool PrintoutWish::*page : {&PrintoutWish::with_template, &PrintoutWish::with_steps,
                                         &PrintoutWish::with_list, &PrintoutWish::with_label}) {
            d.app.state.print.*page = false;
        }
        update(d.app.state, d.app.around, command::Draw{draw::Print{}});
        CHECK(d.app.state.to_give.empty());
        CHECK_FALSE(d.app.state.said.empty());
    }
}

TEST_CASE("a picture from outside goes beside the card and under the plan; none is written over", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    const std::string png("\x89PNG\r\n\x1a\n and more");
    take_picture(d.app.state, d.app.around, "my drawing.png", png);
    REQUIRE(d.draw().card.sheet.art.has_value());
    const Art first = *d.draw().card.sheet.art;
    CHECK(first.width_mm == d.draw().card.sheet.width_mm);
    const Outcome<std::string> kept = read_file(library.path() + "/cards/" + first.file);
    REQUIRE(kept.ok());
    CHECK(kept.value() == png);
    take_picture(d.app.state, d.app.around, "my drawing.png", png + "other");
    CHECK(d.draw().card.sheet.art->file != first.file);
    CHECK(read_file(library.path() + "/cards/" + first.file).value() == png);
    const Card before = d.draw().card;
    take_picture(d.app.state, d.app.around, "notes.txt", "no picture");
    CHECK(d.draw().card == before);
    d.touch("draw/card");
    d.reach("draw-card/rows", "draw-card/no-art");
    CHECK_FALSE(d.draw().card.sheet.art.has_value());
}
