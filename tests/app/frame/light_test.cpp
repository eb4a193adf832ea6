// The Light sheet as a maker uses it: opened from Make, looked at, moved, closed.
#include "table.h"

#include <algorithm>

using namespace lanternleaf;

namespace {

void open_lighthouse(Table& table) {
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
}

} // namespace

TEST_CASE("Light opens from Make, its slider changes the shares, and it closes to where it was", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    const bool night = table.app.state.settings.night;
    table.tap("board/light");
    REQUIRE(table.app.state.light.has_value());
    CHECK(table.there("light/plot"));
    CHECK_FALSE(table.there("make/done"));
    CHECK(table.fingers.ui().theme().night); // always by night...
    CHECK(table.app.state.settings.night == night);
    const std::string fresh = table.fingers.need("light/share/L7").value;

    const float width = table.fingers.need("light/hours").rect.w;
    table.fingers.drag("light/hours", width * 0.2f, 0);
    table.fingers.frame(2);
    const double dragged_h = table.app.state.light->hours;
    CHECK(dragged_h > 0.5 * table.app.state.light->most_h); // from the middle, where the finger went down
    CHECK(dragged_h < 0.9 * table.app.state.light->most_h);
    CHECK(table.fingers.need("light/share/L7").value != fresh);

    table.tap("light/view/traces");
    CHECK(table.app.state.light->traces);
    table.tap("light/close");
    CHECK_FALSE(table.app.state.light.has_value());
    CHECK(table.there("make/done"));
    CHECK(table.fingers.ui().theme().night == night); // ...and the room as it was
}

TEST_CASE("In Light the arrow keys step half an hour and Escape closes it", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_lighthouse(table);
    table.tap("board/light");
    table.fingers.frame(2);
    for (int i = 0; i < 3; ++i) {
        table.fingers.key(Key::Right);
        table.fingers.frame(2);
    }
    CHECK(table.app.state.light->hours == Approx(1.5));
    table.fingers.key(Key::Left);
    table.fingers.frame(2);
    CHECK(table.app.state.light->hours == Approx(1.0));
    table.fingers.key(Key::Escape);
    table.fingers.frame(2);
    CHECK_FALSE(table.app.state.light.has_value());
}

TEST_CASE("The safety chip and the places stay one tap away from Light, at every size", "[frame]") {
    for (const Size size : {Size{1180, 820}, Size{820, 1180}, Size{390, 844}}) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_lighthouse(table);
        update(table.app.state, table.app.around, command::OpenLight{});
        table.fingers.frame(2);
        const Targets& targets = table.fingers.targets();
        const auto chip = std::find_if(targets.all().begin(), targets.all().end(), [](const Target& target) {
            return target.name.find("safety") != std::string::npos;
        });
        REQUIRE(chip != targets.all().end());
        CHECK(targets.reachable(*chip));
        table.tap(chip->name);
        CHECK(table.app.state.notice == Notice::reading);
        update(table.app.state, table.app.around, command::CloseNotice{});
        update(table.app.state, table.app.around, command::GoTo{Place::shelf});
        table.fingers.frame(2);
        CHECK_FALSE(table.app.state.light.has_value());
    }
}
