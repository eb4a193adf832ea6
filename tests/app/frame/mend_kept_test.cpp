// What Mend keeps and takes back: answers that outlive a kill, what a check found, none that fits, and the
// library's own mends.
#include "mending_table.h"

#include "model/mend_history.h"

using namespace lanternleaf;

TEST_CASE("A kill in the middle of Mend loses nothing that was told", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        std::vector<double> chance;
        std::vector<std::string> told;
        std::string test;
        std::string journal;
        {
            Table table(library.path(), size);
            open_mend_at_lights(table);
            table.reach("mend", "mend/cool");
            table.tap("board/led/L1");
            table.tap("board/led/L2");
            table.tap("board/led/L2");
            table.reach("mend", "mend/rest/dark");
            table.reach("mend", "mend/pressing/yes");
            table.reach("mend", "mend/answer/" + std::to_string(mend_of(table).test->offered.back()));
            table.reach("mend", "mend/cannot-tell");
            chance = mend_of(table).session.chance;
            told = table.build().record.mend_told;
            test = mend_of(table).test->id;
            journal = table.build().shelf.path;
            CHECK(told.size() >= 10);
        } // the app is gone: nothing was saved on the way out
        Table table(library.path(), size);
        update(table.app.state, table.app.around, command::Resume{journal});
        update(table.app.state, table.app.around, command::GoTo{Place::mend});
        table.fingers.frame(3);
        CHECK(table.build().record.mend_told == told);
        CHECK(mend_of(table).warm_asked);
        CHECK(mend_of(table).session.chance == chance);
        REQUIRE(mend_of(table).test.has_value());
        CHECK(mend_of(table).test->id == test);
        CHECK(mend_of(table).session.evidence.looks[0] == Look::lit);
        CHECK(mend_of(table).session.evidence.looks[1] == Look::dim);
        // And it can still be taken back, one by one to the first.
        for (std::size_t i = told.size(); i > 0; --i) {
            update(table.app.state, table.app.around, command::Mend{mend::TakeBack{}});
            CHECK(table.build().record.mend_told.size() == i - 1);
        }
        CHECK_FALSE(mend_of(table).warm_asked);
        CHECK(mend_of(table).session.evidence.count() == mend_of(table).from_record);
    }
}

TEST_CASE("A library that cannot be written tells so and changes no answer", "[frame][mend]") {
    const OwnFolder library;
    Table table(library.path());
    open_mend_at_lights(table);
    table.reach("mend", "mend/cool");
    const std::vector<double> chance = mend_of(table).session.chance;
    const std::size_t events = table.build().events.size();
    std::filesystem::rename(library.path() + "/builds", library.path() + "/away");
    update(table.app.state, table.app.around, command::Mend{mend::TapLight{"L1"}});
    CHECK_FALSE(table.app.state.said.empty());
    CHECK(mend_of(table).session.chance == chance);
    CHECK(table.build().events.size() == events);
    std::filesystem::rename(library.path() + "/away", library.path() + "/builds");
    update(table.app.state, table.app.around, command::Mend{mend::TapLight{"L1"}});
    CHECK(mend_of(table).session.evidence.looks[0] == Look::lit);
}

TEST_CASE("From lights that are not as expected Mend opens with them tapped", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        table.start("harbour-lighthouse");
        table.tap("audience/way/go-on");
        table.build_to(6);
        while (table.build().face == MakeFace::move) {
            table.one_move();
        }
        const std::vector<Led> leds = table.build().record.as_built.leds;
        for (const Led& led : leds) { // L3 dark, the others lit
            for (int i = 0; i < (led.id == "L3" ? 3 : 1); ++i) {
                table.reach("make/proof", "make/light/" + led.id);
            }
        }
        table.reach("make/proof", "make/save-seen");
        REQUIRE(table.build().face == MakeFace::verdict);
        table.reach("make/verdict", "make/find-fault");
        REQUIRE(table.app.state.place == Place::mend);
        CHECK(mend_of(table).from_record >= leds.size());
        for (std::size_t i = 0; i < leds.size(); ++i) {
            CHECK(mend_of(table).session.evidence.looks[i] == (leds[i].id == "L3" ? Look::dark : Look::lit));
        }
        table.reach("mend", "mend/cool");
        CHECK_FALSE(table.there("mend/rest/dark")); // they are known
        CHECK(names(table, FaultKind::led_turned, "L3"));
    }
}

TEST_CASE("A reading far off leads to Mend with the figure known", "[frame][mend]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
    table.build_to(3);
    while (open_move(table.build()) != nullptr && !open_move(table.build())->check) {
        table.one_move();
    }
    table.tap("make/check/field");
    table.tap("keypad/over");
    REQUIRE(table.build().face == MakeFace::verdict);
    table.reach("make/verdict", "make/find-fault");
    REQUIRE(table.app.state.place == Place::mend);
    CHECK(mend_of(table).session.evidence.readings.size() == 1);
    CHECK_FALSE(mend_of(table).lights_there);
    // No light is placed and no + tape laid: none of their faults may be among the causes.
    for (const Cause& cause : mend_of(table).causes) {
        CHECK(cause.kind != FaultKind::led_turned);
        CHECK(cause.kind != FaultKind::cell_upside_down);
    }
}

TEST_CASE("None of these fits: what to do, a line in the record, and from the beginning", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/cool");
        table.reach("mend", "mend/rest/dark");
        table.reach("mend", "mend/none");
        CHECK(mend_of(table).chosen == MendState::kNoneFits);
        table.reach("mend", "mend/note");
        CHECK(table.build().record.notes.back() == "Mend found no cause that fits.");
        table.reach("mend", "mend/tests");
        CHECK(mend_of(table).chosen == MendState::kNoCause);
        CHECK(table.there("mend/cannot-tell"));
        table.reach("mend", "mend/none");
        table.reach("mend", "mend/start-again");
        CHECK(table.build().record.mend_told.empty());
        CHECK(table.there("mend/cool"));
        CHECK(mend_of(table).session.evidence.looks[0] == Look::unseen);
    }
}

TEST_CASE("An answer can be taken back, lights cleared, a meter laid aside", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/cool");
        const std::string led = table.build().record.as_built.leds[0].id;
        table.tap("board/led/" + led);
        table.tap("board/led/" + led);
        CHECK(mend_of(table).session.evidence.looks[0] == Look::dim);
        table.reach("mend", "mend/undo");
        CHECK(mend_of(table).session.evidence.looks[0] == Look::lit);
        table.reach("mend", "mend/pressing/no");
        CHECK(mend_of(table).session.evidence.pressing_changes == false);
        table.reach("mend", "mend/pressing/no");
        CHECK_FALSE(mend_of(table).session.evidence.pressing_changes.has_value());
        const bool had = mend_of(table).tools.meter;
        table.reach("mend", "mend/have/meter");
        CHECK(mend_of(table).tools.meter != had);
        table.reach("mend", "mend/clear");
        CHECK(mend_of(table).session.evidence.looks[0] == Look::unseen);
        table.reach("mend", "mend/undo"); // even that
        CHECK(mend_of(table).session.evidence.looks[0] == Look::lit);
    }
}

TEST_CASE("The library's own mends move its priors", "[frame][mend]") {
    const OwnFolder library;
    CHECK(read_mend_history(library.path()).mends == 0);
    Table table(library.path());
    open_mend_at_lights(table);
    table.reach("mend", "mend/cool");
    CHECK(mend_of(table).past_mends == 0);
    const auto share = [&] {
        double sum = 0.0;
        for (const Fault& fault : mend_of(table).session.model->faults) {
            sum += fault.kind == FaultKind::led_dead ? fault.prior : 0.0;
        }
        return sum;
    };
    const double before = share();
    table.reach("mend", "mend/rest/dark");
    for (int i = 0; i < 3; ++i) { // as three cards with a spent light
        Event mended;
        mended.kind = EventKind::mended;
        mended.fault = "led-dead";
        mended.text = "L1 no longer lights";
        REQUIRE(confirm(table.app.around, *table.app.state.build, mended).ok());
    }
    const MendHistory history = read_mend_history(library.path());
    CHECK(history.mends == 3);
    CHECK(history.past.found[static_cast<std::size_t>(FaultKind::led_dead)] == 3);
    table.app.state.mend.reset();
    update(table.app.state, table.app.around, command::GoTo{Place::mend});
    CHECK(mend_of(table).past_mends == 3);
    CHECK(share() > before);
    CHECK(share() < 5.0 * before);
}

TEST_CASE("Without a build Mend gives first help", "[frame][mend]") {
    const OwnFolder library;
    Table table(library.path());
    update(table.app.state, table.app.around, command::GoTo{Place::mend});
    table.fingers.frame(2);
    CHECK_FALSE(table.app.state.mend.has_value());
    CHECK(table.fingers.find("mend/answer/0") == nullptr);
}
