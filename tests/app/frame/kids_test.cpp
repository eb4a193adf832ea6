// A child at the table: targets of 15 mm, and moves with the cell that a child's tap does not confirm.
#include "table.h"

using namespace lanternleaf;

TEST_CASE("with a child at the table an adult's move takes a hold, and targets are 15 mm", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    table.app.state.settings.kids = true;
    table.fingers.look.kids = true;
    table.start("window-candle");
    table.tap("audience/way/go-on");
    const float least = table.fingers.ui().m.mm(15) - 0.5f;
    CHECK(table.fingers.need("make/done").rect.h >= least);
    CHECK(table.fingers.need("make/differs").rect.h >= least);
    table.build_to(6);
    while (table.build().face == MakeFace::move && !open_move(table.build())->adult_only) {
        table.one_move();
    }
    REQUIRE(open_move(table.build()) != nullptr);
    REQUIRE(open_move(table.build())->adult_only);
    table.fingers.frame(2);
    CHECK(table.fingers.find("make/adult") != nullptr);
    const std::size_t before = table.build().events.size();
    const Notice notice = table.app.state.notice;
    table.tap("make/done");
    CHECK(table.build().events.size() == before);
    CHECK(table.app.state.notice == notice);
    table.fingers.hold("make/done", 4.3);
    table.fingers.frame(2);
    const bool went_on = table.build().events.size() > before || table.app.state.notice != notice;
    CHECK(went_on);
}
