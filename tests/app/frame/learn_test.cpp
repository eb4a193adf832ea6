// Parts learnt at the table: a tape whose glue does not conduct changes what a cut joint is worth, and a
// light's mark tells the hands which way round.
#include "table.h"

#include "files/files.h"

#include <algorithm>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

/// Two strips of copper 5, with a meter that shows OL from end to end.
void learn_that_glue_is_dead(Table& table) {
    table.tap("shelf/settings");
    table.reach("settings/rows", "settings/learn");
    table.tap("learn/tape");
    table.reach("learn/stage-1", "learn/type/copper-5");
    table.reach("learn/stage-5", "learn/next");
    table.tap("learn/meter/yes");
    table.tap("learn/keypad/0");
    table.tap("learn/keypad/point");
    table.tap("learn/keypad/2");
    table.tap("learn/keypad/save");
    table.tap("learn/keypad/over");
    REQUIRE(table.app.state.learn.has_value());
    REQUIRE(table.app.state.learn->learnt.has_value());
    CHECK(table.app.state.learn->answers.strips.leads_ohm == Approx(0.2));
    table.tap("learn/close");
    CHECK(table.app.state.sheet == SheetKind::none);
}

/// A fold of the negative trace cut and lapped instead; what the step says of it.
VerdictState cut_a_fold(Table& table) {
    table.start("window-candle"); // it has no joint of its own
    table.tap("audience/way/go-on");
    table.build_to(3);
    int cut = -1;
    for (int moves = 0; moves < 8 && cut < 0; ++moves) {
        table.one_move();
        table.tap("make/differs");
        const auto& offers = table.app.state.differs.offers;
        for (std::size_t i = 0; i < offers.size(); ++i) {
            cut = offers[i].change.kind == ChangeKind::joint_cut ? static_cast<int>(i) : cut;
        }
        if (cut < 0) {
            table.tap("differs/close");
        }
    }
    REQUIRE(cut >= 0);
    table.reach("differs/rows", "differs/offer/" + std::to_string(cut));
    table.reach("differs/rows", "differs/save");
    REQUIRE(table.build().record.changes.size() == 1);
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    table.prove();
    return table.build().face == MakeFace::verdict ? table.build().verdict->state : VerdictState::proved;
}

} // namespace

TEST_CASE("A cut joint is good on glue that conducts, and stops the step once it is learnt not to",
          "[frame]") {
    {
        const OwnFolder library;
        Table table(library.path());
        CHECK(cut_a_fold(table) == VerdictState::proved);
    }
    const OwnFolder library;
    Table table(library.path());
    learn_that_glue_is_dead(table);
    CHECK(files_in(library.path() + "/parts", ".parts.json").size() == 1);
    CHECK(cut_a_fold(table) == VerdictState::stopped);
    CHECK(std::any_of(table.build().now.findings.begin(), table.build().now.findings.end(),
                      [](const Finding& finding) { return finding.rule == "joint-open"; }));
    // The journal holds what was known, so that the build is the same build in any library.
    const Outcome<Record> alone = fold(table.build().events, table.app.around.shipped);
    REQUIRE(alone.ok());
    CHECK(alone.value().card.own_parts.tapes.at("copper-5").adhesive == Adhesive::non_conductive);
}

TEST_CASE("A light's mark is learnt at its move, with an adult, and the move then names it", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
    table.build_to(6);
    while (open_move(table.build())->kind != MoveKind::place_led) {
        table.one_move();
    }
    CHECK_THAT(open_move(table.build())->sentence, Contains("touch-test"));
    table.reach("make/panel", "make/test-part");
    table.tap("learn/mark/line");
    REQUIRE(table.app.state.notice == Notice::asking); // a cell is handled next
    table.tap("notice/back");
    CHECK(table.app.state.learn->stage == LearnStage::led_mark);
    table.tap("learn/mark/line");
    table.fingers.hold("notice/adult", 4.3);
    table.fingers.frame(3);
    CHECK_FALSE(table.build().record.adult_confirmed); // the build asks again before its own cell goes in
    table.tap("learn/touch/minus");
    const std::string type = table.app.state.learn->answers.touch.type;
    table.reach("learn/stage-4", "learn/colour/" + table.build().parts.leds.at(type).colour);
    table.tap("learn/close");
    CHECK_THAT(open_move(table.build())->sentence,
               Contains("green line, its − side") && !Contains("touch-test"));
    CHECK(table.build().events.back().kind == EventKind::learnt);

    // Forgotten again: the shelf's cards go by the shipped part, this build by what it was told.
    table.tap("nav/shelf");
    table.tap("shelf/settings");
    table.reach("settings/rows", "settings/learn");
    table.tap("learn/forget/led/" + type);
    CHECK(table.app.state.learn->own.list.empty());
    CHECK(files_in(library.path() + "/parts", ".json").size() == 2);
}
