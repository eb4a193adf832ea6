// import from outside: a card someone sent goes into a library, and a library's own parts are under its
// cards.
#include "desk/desk.h"
#include "files/files.h"
#include "learn/own_parts.h"
#include "support/ask_verb.h"

#include <catch2/catch.hpp>
#include <filesystem>

using namespace lanternleaf;
using Catch::Matchers::Contains;

TEST_CASE("import puts a sent card into a library, and refuses a folder without one", "[verbs][import]") {
    const make::TempFolder folder("lanternleaf-import-verb");
    const std::string sent = folder.at("sent");
    const std::string library = folder.at("library");
    REQUIRE(make_folder(sent).ok());
    const Answer none = ask({"import", sent, "--into", library});
    CHECK(none.status == 2);
    CHECK_THAT(none.err, Contains("no card"));
    CHECK_FALSE(std::filesystem::exists(library));
    make::put_file(sent + "/Window.card.json", make::get_file(kSample));
    const Answer answer = ask({"import", sent, "--into", library});
    INFO(answer.out << answer.err);
    CHECK(answer.status == 0);
    CHECK(make::get_file(library + "/cards/window.card.json") == make::get_file(kSample));
    CHECK_THAT(ask({"import", sent, "--into", library}).out, Contains("was there already"));

    // What this library's maker learnt holds for its cards.
    const std::string card = library + "/cards/window.card.json";
    CHECK_THAT(ask({"steps", card}).out, !Contains("green line"));
    const Outcome<Parts> shipped = load_parts(kTop + "/assets");
    REQUIRE(shipped.ok());
    TouchTest test;
    test.type = "carrier-white";
    test.looks = "green line";
    const Outcome<Learnt> learnt = learn_led(test, shipped.value(), "2026-05-04T10:00:00Z");
    REQUIRE(learnt.ok());
    REQUIRE(keep_learnt(library, learnt.value()).ok());
    CHECK_THAT(ask({"steps", card}).out, Contains("green line"));
    CHECK_THAT(ask({"steps", kSample}).out, !Contains("green line"));
}
