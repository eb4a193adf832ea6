// What cannot be opened is told at the foot of the shelf, and the rest of the shelf works as ever.
#include "app/frame/table.h"

#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace lanternleaf;

TEST_CASE("The shelf names a file it cannot open, and the other build goes on", "[frame][shelf]") {
    const OwnFolder folder;
    std::string journal;
    {
        Table table(folder.path());
        table.start("window-candle");
        table.tap("audience/way/go-on");
        table.one_move();
        journal = table.build().shelf.path;
    }
    std::ofstream(folder.path() + "/builds/holiday-20260101-100000.build.jsonl") << "a holiday letter\n";
    std::ofstream(folder.path() + "/builds/empty-20260101-100001.build.jsonl");
    Table table(folder.path());
    CHECK(table.there("shelf/aside"));
    CHECK(table.app.state.builds.size() == 3);
    const std::string id = table.app.state.builds.front().id;
    CHECK(journal.find(id) != std::string::npos);
    CHECK_FALSE(table.there("shelf/build/holiday-20260101-100000"));
    table.tap("shelf/build/" + id);
    CHECK(table.build().record.steps[0].moves_done.size() == 1);
    CHECK(table.build().looking_only.empty());
    CHECK(std::filesystem::exists(folder.path() + "/builds/holiday-20260101-100000.build.jsonl"));
}

TEST_CASE("A build that another window has open is looked at, and says so once", "[frame][shelf]") {
    const OwnFolder folder;
    Table first(folder.path());
    first.start("window-candle");
    first.tap("audience/way/go-on");
    const std::size_t events = first.build().events.size();
    Table second(folder.path());
    second.tap("shelf/build/" + first.build().shelf.id);
    CHECK(second.fingers.toast().find("only look") != std::string::npos);
    second.one_move();
    CHECK(second.build().events.size() == events); // nothing was confirmed
    first.one_move();
    CHECK(first.build().events.size() == events + 1);
}
