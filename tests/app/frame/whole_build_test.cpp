// Whole builds by taps on named targets, as a maker does them: every demo card, every form of the screen.
#include "table.h"

#include "files/files.h"

using namespace lanternleaf;

namespace {

const Size kSizes[] = {{1180, 820}, {820, 1180}, {390, 844}};

} // namespace

TEST_CASE("Each demo card is built to a finished record, on each form of the screen", "[frame]") {
    for (const char* card : {"window-candle", "harbour-lighthouse", "night-tram"}) {
        for (const Size size : kSizes) {
            INFO(card << " at " << size.w);
            const OwnFolder library;
            Table table(library.path(), size);
            if (size.w < 600 && std::string(card) != "harbour-lighthouse") {
                table.reach("shelf", std::string("shelf/card/") + card);
                table.tap("audience/adults");
            } else {
                table.start(card);
            }
            table.tap("audience/way/go-on");
            CHECK(table.app.state.place == Place::make);
            table.build_to(8);
            REQUIRE(table.app.state.log.has_value());
            const Record& record = *table.app.state.log;
            CHECK(record.finished);
            CHECK(record.adult_confirmed);
            for (const StepRecord& step : record.steps) {
                CHECK(step.proved);
                CHECK_FALSE(step.regardless);
            }
            CHECK(table.app.state.place == Place::log);
        }
    }
}

TEST_CASE("The cell waits for an adult: a tap does not confirm, four seconds do", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("window-candle");
    table.tap("audience/way/go-on");
    table.build_to(6);
    for (int guard = 0; guard < 20 && table.app.state.notice != Notice::asking; ++guard) {
        table.tap("make/done");
    }
    REQUIRE(table.app.state.notice == Notice::asking);
    table.tap("notice/adult");
    CHECK(table.app.state.notice == Notice::asking);
    table.fingers.hold("notice/adult", 2.0);
    CHECK_FALSE(table.build().record.adult_confirmed);
    table.tap("notice/back");
    CHECK_FALSE(table.build().record.cell_in);
    table.tap("make/done"); // still the notice: there is no way round it
    CHECK(table.app.state.notice == Notice::asking);
    table.fingers.hold("notice/adult", 4.3);
    table.fingers.frame(3);
    CHECK(table.build().record.adult_confirmed);
    table.tap("make/done");
    CHECK(table.build().record.cell_in);
}

TEST_CASE("A build goes on where it was when the app is opened again", "[frame]") {
    const OwnFolder library;
    std::string move;
    {
        Table table(library.path());
        table.start("harbour-lighthouse");
        table.tap("audience/way/go-on");
        table.build_to(3);
        table.one_move();
        table.one_move();
        move = open_move(table.build())->id;
    }
    Table again(library.path());
    REQUIRE(again.app.state.builds.size() == 1);
    again.tap("shelf/build/" + again.app.state.builds.front().id);
    CHECK(again.build().record.step == 3);
    CHECK(open_move(again.build())->id == move);
}

TEST_CASE("A small child in the house: the flap is not offered as it is", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("window-candle", "small-children");
    CHECK_FALSE(table.there("audience/way/go-on"));
    CHECK(table.there("audience/way/screw-holder"));
    table.tap("audience/way/without-cell");
    CHECK(table.build().record.audience == Audience::small_children);
    REQUIRE(table.build().record.notes.size() == 1);
}

TEST_CASE("Nothing is drawn while nobody touches the app", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
    table.fingers.idle(8.0); // chevrons and picture come to rest
    CHECK(table.fingers.idle(5.0) == 0);
}

TEST_CASE("for small children the screwed holder gets traces of its own, and the card is built to its end",
          "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("window-candle", "small-children");
    table.tap("audience/way/screw-holder");
    REQUIRE(table.build().record.card.holder.type == "screw-20");
    CHECK(table.build().now.count(Level::problem) == 0);
    table.build_to(8);
    CHECK(table.build().record.finished);
    CHECK(proved_count(table.build().record) == kStepCount);
}

TEST_CASE("where no way to the screwed holder is found, nothing is begun and Draw opens to change the plan",
          "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("night-tram", "small-children");
    table.tap("audience/way/screw-holder");
    CHECK_FALSE(table.app.state.build.has_value());
    CHECK(table.app.state.place == Place::draw);
    REQUIRE(table.app.state.draw.has_value());
    CHECK(table.app.state.draw->card.holder.type == "screw-20");
    CHECK(files_in(library.path() + "/builds", ".jsonl").empty());
}
