// What goes wrong at the table: readings that are off, tape that tore, a light turned, going on regardless.
#include "table.h"

#include <algorithm>

using namespace lanternleaf;

namespace {

void open_lighthouse(Table& table) {
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
}

void type_reading(Table& table, const std::string& digits) {
    for (const char c : digits) {
        table.tap(c == '.' ? "keypad/point" : std::string("keypad/") + c);
    }
    table.tap("keypad/save");
}

} // namespace

TEST_CASE("A reading within its range is kept; one far off leads to the verdict", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    table.build_to(3);
    while (open_move(table.build()) != nullptr && !open_move(table.build())->check) {
        table.one_move();
    }
    const Check check = *open_move(table.build())->check;
    REQUIRE(check.kind == CheckKind::resistance);
    table.tap("make/check/field");
    type_reading(table, "0.2");
    REQUIRE(last_reading(table.build(), check.id) != nullptr);
    CHECK(*last_reading(table.build(), check.id)->value == Approx(0.2));
    CHECK(table.build().face == MakeFace::move);

    table.tap("make/check/field");
    type_reading(table, "88");
    CHECK(table.build().face == MakeFace::verdict);
    CHECK(table.build().verdict->state == VerdictState::stopped);

    const std::string move = open_move(table.build())->id;
    table.tap("make/done"); // "Measure again": at the move it was taken for, not at the end of the step
    CHECK(table.build().face == MakeFace::move);
    CHECK(open_move(table.build())->id == move);
    table.tap("make/check/field");
    type_reading(table, "0.2");
    CHECK(table.build().face == MakeFace::move);
}

TEST_CASE("A tear said by the maker stops the step; the bridge proves it", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    table.build_to(3);
    table.one_move();
    table.one_move();
    table.tap("make/differs");
    const auto& offers = table.app.state.differs.offers;
    const auto tear = std::find_if(offers.begin(), offers.end(),
                                   [](const ChangeOffer& o) { return o.change.kind == ChangeKind::tear; });
    REQUIRE(tear != offers.end());
    table.tap("differs/offer/" + std::to_string(tear - offers.begin()));
    table.tap("differs/length/more");
    table.tap("differs/save");
    REQUIRE(table.build().record.changes.size() == 1);
    CHECK(table.build().record.changes[0].change.mm == Approx(2.0));
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    table.prove();
    REQUIRE(table.build().face == MakeFace::verdict);
    table.tap("make/done"); // "I bridged it: check again"
    CHECK(table.build().record.step == 4);
    CHECK(table.build().record.changes.size() == 2);
    CHECK(table.build().record.at(StepId::lay_negative).proved);
}

TEST_CASE("A turned light is caught at step 6 and turned back", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    table.build_to(6);
    while (open_move(table.build()) != nullptr && open_move(table.build())->kind != MoveKind::place_led) {
        table.one_move();
    }
    table.tap("make/differs");
    table.tap("differs/offer/0");
    table.tap("differs/save");
    CHECK(table.build().record.changes.back().change.kind == ChangeKind::led_turned);
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    table.prove();
    REQUIRE(table.build().face == MakeFace::verdict);
    const auto& findings = table.build().verdict->findings;
    CHECK(std::any_of(findings.begin(), findings.end(),
                      [](const Finding& finding) { return finding.rule == "led-reversed"; }));
    CHECK(table.build().record.step == 6);
}

TEST_CASE("Going on regardless opens the next step and stays on record", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    table.build_to(5);
    while (table.build().face == MakeFace::move) {
        table.tap("make/differs");
        const auto& offers = table.app.state.differs.offers;
        const auto missing = std::find_if(offers.begin(), offers.end(), [](const ChangeOffer& o) {
            return o.change.kind == ChangeKind::patch_missing;
        });
        if (missing != offers.end() && table.build().record.changes.empty()) {
            table.tap("differs/offer/" + std::to_string(missing - offers.begin()));
            table.tap("differs/save");
        } else {
            table.tap("differs/close");
            table.one_move();
        }
    }
    table.prove();
    REQUIRE(table.build().face == MakeFace::verdict); // the forgotten patch is caught at its step
    table.tap("make/regardless");
    table.tap("regardless/practice");
    CHECK(table.build().record.step == 6);
    CHECK(table.build().record.at(StepId::insulate).regardless);
    CHECK_FALSE(table.build().record.at(StepId::insulate).proved);
}

TEST_CASE("The safety words are one tap away from every place and over every sheet", "[frame]") {
    const OwnFolder library;
    for (const Size size : {Size{1180, 820}, Size{390, 844}}) {
        Table table(library.path(), size);
        open_lighthouse(table);
        for (const Place place : {Place::shelf, Place::draw, Place::make, Place::mend, Place::log}) {
            update(table.app.state, table.app.around, command::GoTo{place});
            table.tap("safety");
            CHECK(table.app.state.notice == Notice::reading);
            table.tap("notice/back");
        }
        update(table.app.state, table.app.around, command::GoTo{Place::make});
        for (const SheetKind sheet :
             {SheetKind::wrong, SheetKind::steps, SheetKind::settings, SheetKind::places}) {
            update(table.app.state, table.app.around, command::OpenSheet{sheet});
            table.tap("safety");
            CHECK(table.app.state.notice == Notice::reading);
            table.tap("notice/back");
        }
    }
}
