// A batch of two by fingers: from the shelf to the closed board, cells matching; a class with a missing cell;
// two devices that share a library.
#include "table.h"

#include "batch/confirm_list.h"
#include "files/files.h"
#include "model/device_tag.h"

#include <set>

using namespace lanternleaf;

namespace {

// "Make several" of the candle: so many, for whom, for adults.
void begin_several(Table& table, int count, bool group) {
    table.reach("shelf", "shelf/several");
    table.tap("batch-card/window-candle");
    for (int less = table.app.state.new_batch->count; less > count; --less) {
        table.tap("batch-new/count/less");
    }
    if (group) {
        table.tap("batch-new/for/group");
    }
    table.tap("batch-new/next");
    table.tap("audience/adults");
    table.tap("audience/way/go-on");
    REQUIRE(table.app.state.batch.has_value());
}

// The adult's hands on the tray.
void count(Table& table, int out, int back) {
    table.reach("batch", "batch/cells");
    for (int i = 0; i < out; ++i) {
        table.tap("batch-cells/out/more");
    }
    for (int i = 0; i < back; ++i) {
        table.tap("batch-cells/back/more");
    }
    table.tap("batch-cells/adult"); // a tap is not enough
    CHECK(table.app.state.sheet == SheetKind::batch_cells);
    table.fingers.hold("batch-cells/adult", 4.3);
    table.fingers.frame(3);
    CHECK(table.app.state.sheet == SheetKind::none);
}

std::size_t moves_confirmed(const OpenBuild& build) {
    std::size_t moves = 0;
    for (const Event& event : build.events) {
        moves += event.kind == EventKind::move_done ? 1U : 0U;
    }
    return moves;
}

std::string said(const Table& table) {
    return table.app.state.batch->batch.closed ? "closed" : "open";
}

} // namespace

TEST_CASE("A batch of two from the shelf to closed: the second card by lists, every cell accounted for",
          "[frame]") {
    const OwnFolder library;
    Table table(library.path(), {820, 1180});
    begin_several(table, 2, false);
    count(table, 3, 0);
    CHECK(table.app.state.batch->board.cells.missing == 3);

    table.tap("batch/next"); // card 1, move by move
    CHECK_FALSE(table.build().by_list);
    table.build_to(8);
    REQUIRE(table.app.state.log.has_value());
    REQUIRE(table.app.state.log->finished);
    const std::vector<Event> by_moves = table.app.state.log_page.events;
    table.tap("nav/menu");
    table.tap("places/shelf");
    REQUIRE(table.app.state.batch.has_value()); // back on the board
    CHECK(table.app.state.batch->board.done == 1);
    CHECK(table.app.state.batch->board.cells.in_finished == 1);

    table.tap("batch/next"); // card 2, by lists
    REQUIRE(table.build().by_list);
    table.tap("make/way/moves");
    CHECK_FALSE(table.build().by_list);
    table.tap("make/way/list");
    // A line stands for its moves, and going back takes the whole line back.
    const std::size_t line = confirm_list(open_step(table.build()))[0].moves.size();
    table.tap("confirm/1");
    CHECK(moves_confirmed(table.build()) == line);
    if (table.build().face == MakeFace::move || table.there("make/back")) {
        table.tap("make/back");
        CHECK(table.build().record.steps[0].moves_done.empty());
    }
    table.build_to(8); // "make/done" confirms the next line
    REQUIRE(table.app.state.log.has_value());
    REQUIRE(table.app.state.log->finished);
    // The record is whole: the same moves as when they were confirmed one by one.
    std::set<std::string> first;
    std::set<std::string> second;
    for (const Event& event : by_moves) {
        if (event.kind == EventKind::move_done) {
            first.insert(event.text);
        }
    }
    for (const Event& event : table.app.state.log_page.events) {
        if (event.kind == EventKind::move_done) {
            second.insert(event.text);
        }
    }
    CHECK(first == second);

    table.tap("nav/menu");
    table.tap("places/shelf");
    CHECK(table.app.state.batch->board.done == 2);
    count(table, 0, 1); // the spare one comes back: 3 = 1 back + 2 in cards
    CHECK(table.app.state.batch->board.cells.matches());
    table.tap("batch/next"); // nothing left to begin: it closes
    REQUIRE(table.app.state.sheet == SheetKind::batch_close);
    table.fingers.hold("batch-close/adult", 4.3);
    table.fingers.frame(3);
    REQUIRE(said(table) == "closed");
    CHECK(table.app.state.batch->batch.closed->missing == 0);
    table.tap("batch/shelf");
    CHECK_FALSE(table.app.state.batch.has_value());
    CHECK(table.there("shelf/batch/" + table.app.state.batches[0].id));
}

TEST_CASE("A class closes with a missing cell only on record; a nickname can be hidden", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    begin_several(table, 2, true);
    count(table, 2, 1);
    table.tap("batch/next");
    table.tap("batch-name/add"); // nothing typed yet
    CHECK(table.app.state.batch->batch.makers.empty());
    table.tap("batch-name/field");
    table.fingers.type("Ines");
    table.tap("batch-name/add");
    CHECK(table.app.state.batch->batch.makers == std::vector<std::string>{"Ines"});
    table.tap("batch-name/close");
    table.tap("batch/row/1");
    table.tap("builder/hide");
    CHECK(table.app.state.batch->board.rows[0].shown == "Builder 1");
    CHECK(table.fingers.need("batch/row/1").label.find("Ines") == std::string::npos);
    table.tap("batch/go/1");
    CHECK(table.build().record.maker == "Ines");
    table.tap("nav/shelf");
    REQUIRE(table.app.state.batch.has_value());
    table.tap("batch/close");
    CHECK(table.there("batch-close/notice"));
    table.tap("batch-close/adult");
    CHECK(said(table) == "open");
    table.fingers.hold("batch-close/adult", 4.3);
    table.fingers.frame(3);
    REQUIRE(said(table) == "closed");
    CHECK(table.app.state.batch->batch.closed->missing == 1);
}

TEST_CASE("Two devices that share a library see one batch and write files of their own", "[frame]") {
    const OwnFolder library;
    const OwnFolder other_device;
    Table teacher(library.path());
    begin_several(teacher, 2, true);
    Table child(library.path());
    child.app.around.device = other_device.path();
    REQUIRE(device_tag(child.app.around) != device_tag(teacher.app.around));
    const std::string id = teacher.app.state.batch->batch.id;
    CHECK(id.find(device_tag(teacher.app.around)) != std::string::npos);
    child.tap("shelf/batch/" + id);
    child.tap("batch/next");
    child.tap("batch-name/field");
    child.fingers.type("Otter");
    child.tap("batch-name/begin");
    CHECK(child.build().shelf.card_name == "window-candle");
    child.build_to(2);
    teacher.tap("batch/look-again");
    REQUIRE(teacher.app.state.batch->board.rows.size() == 1);
    CHECK(teacher.app.state.batch->board.rows[0].shown == "Otter");
    CHECK(teacher.app.state.batch->board.rows[0].step == 2);
    CHECK(files_in(library.path() + "/batches", ".batch.jsonl").size() == 2);
}
