// The screen stays on while hands are busy, and only then: a tablet left on the shelf may go dark.
#include "table.h"

using namespace lanternleaf;

TEST_CASE("The screen is kept on from the first move to the end of the build", "[frame]") {
    const OwnFolder folder;
    Table table(folder.path());
    table.fingers.frame(2);
    CHECK_FALSE(table.fingers.host.screen_on);
    table.start("window-candle");
    table.tap("audience/way/go-on");
    REQUIRE(table.build().record.step == 1);
    CHECK(table.fingers.host.screen_on);
    table.one_move();
    CHECK(table.fingers.host.screen_on);
    table.tap("nav/shelf");
    CHECK_FALSE(table.fingers.host.screen_on);
    table.tap("nav/make");
    CHECK(table.fingers.host.screen_on);
}
