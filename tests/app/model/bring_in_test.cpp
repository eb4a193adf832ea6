// Cards from outside: read whole before anything is written, never over what is there.
#include "model/bring_in.h"

#include "files/files.h"
#include "model/update.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <string>

using namespace lanternleaf;

namespace {

struct Shelf {
    Shelf() {
        folder = (std::filesystem::temp_directory_path() / "lanternleaf-bring-XXXXXX").string();
        REQUIRE(mkdtemp(folder.data()) != nullptr);
        around.assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
        around.library = folder + "/library";
        Outcome<Parts> parts = load_parts(around.assets);
        REQUIRE(parts.ok());
        around.shipped = std::move(parts).value();
    }

    ~Shelf() {
        std::error_code ignored;
        std::filesystem::remove_all(folder, ignored);
    }

    Shelf(const Shelf&) = delete;
    Shelf& operator=(const Shelf&) = delete;

    [[nodiscard]] std::vector<std::string> cards() const {
        return files_in(around.library + "/cards", ".card.json");
    }

    std::string folder;
    Surroundings around;
};

std::string sample() {
    const Outcome<std::string> text =
        read_file(std::string(LANTERNLEAF_SOURCE) + "/tests/data/one-window.card.json");
    REQUIRE(text.ok());
    return text.value();
}

} // namespace

TEST_CASE("A card from outside lies in the library as it came, under a plain name", "[model]") {
    const Shelf shelf;
    const Outcome<std::string> name =
        bring_in_card(shelf.around, "/somewhere/Our Window (1).card.json", sample());
    REQUIRE(name.ok());
    CHECK(name.value() == "our-window-1");
    const Outcome<std::string> there = read_file(shelf.around.library + "/cards/our-window-1.card.json");
    REQUIRE(there.ok());
    CHECK(there.value() == sample());
}

TEST_CASE("The same card is kept once, another of its name beside it", "[model]") {
    const Shelf shelf;
    REQUIRE(bring_in_card(shelf.around, "w.card.json", sample()).value() == "w");
    CHECK(bring_in_card(shelf.around, "w.json", sample()).value() == "w");
    CHECK(shelf.cards().size() == 1);
    CHECK(bring_in_card(shelf.around, "w.card.json", sample() + "\n").value() == "w-2");
    CHECK(read_file(shelf.around.library + "/cards/w.card.json").value() == sample());
    // A shipped card of that name would be hidden by one in the library.
    CHECK(bring_in_card(shelf.around, "window-candle.card.json", sample()).value() == "window-candle-2");
}

TEST_CASE("What is no card is refused with a sentence and leaves nothing behind", "[model]") {
    const Shelf shelf;
    for (const char* text : {"", "hello", "{}", "{\"lanternleaf\":1,\"kind\":\"parts\"}"}) {
        const Outcome<std::string> name = bring_in_card(shelf.around, "photo.jpg", text);
        REQUIRE_FALSE(name.ok());
        CHECK(name.problem().sentence().find("photo.jpg") != std::string::npos);
    }
    CHECK_FALSE(std::filesystem::exists(shelf.around.library));
}

TEST_CASE("A card that was brought in stands on the shelf, and a sentence says so", "[model]") {
    const Shelf shelf;
    AppState state = open_app(shelf.around);
    const std::size_t before = state.cards.size();
    bring_in(state, shelf.around, "one-window.card.json", sample());
    CHECK(state.cards.size() == before + 1);
    CHECK(state.said.find("One window is on the shelf. Its picture one-window.png") == 0);
    bring_in(state, shelf.around, "one-window.card.json", sample());
    CHECK(state.cards.size() == before + 1);
    CHECK(state.said == "One window is on the shelf already.");
    bring_in(state, shelf.around, "x.json", "no");
    CHECK(state.cards.size() == before + 1);
    CHECK(state.said.find("x.json") == 0);
}

TEST_CASE("A picture is no card: it is told where it belongs and the library stays as it was", "[model]") {
    const Shelf shelf;
    AppState state = open_app(shelf.around);
    bring_in(state, shelf.around, "photo.jpg", "\xff\xd8\xff\xe0 and so on");
    CHECK(state.said.find("Log") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(shelf.around.library));
}
