// The Log by touch: a finished build gets a note and a photo, stands beside another, is copied whole, becomes
// a plan, and teaches the next build at the right move.
#include "app/frame/table.h"

#include "files/files.h"
#include "model/bring_in.h"

#include <algorithm>
#include <stb/stb_image_write.h>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

void append(void* out, void* data, int size) {
    static_cast<std::string*>(out)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

std::string a_jpeg() {
    const std::vector<unsigned char> rgb(40 * 30 * 3, 200);
    std::string bytes;
    REQUIRE(stbi_write_jpg_to_func(append, &bytes, 40, 30, 3, rgb.data(), 90) != 0);
    return bytes;
}

// A finished build of the candle, in which its first light was turned at step 2.
void build_with_a_turned_light(Table& table) {
    table.start("window-candle");
    table.tap("audience/way/go-on");
    table.build_to(2);
    Change turned;
    turned.kind = ChangeKind::led_turned;
    turned.part = table.build().record.card.leds[0].id;
    for (int i = 0; i < 2; ++i) { // and back
        table.app.state.differs.draft = turned;
        update(table.app.state, table.app.around, command::SaveDifference{});
    }
    table.build_to(8);
    REQUIRE(table.app.state.log.has_value());
    REQUIRE(table.app.state.log->finished);
    table.fingers.frame(5);
}

std::string builds_folder_of(const Table& table) {
    return table.app.around.library + "/builds/";
}

} // namespace

TEST_CASE("A finished build is kept with note, photo, copy and lesson", "[log]") {
    const OwnFolder library;
    Table table(library.path());
    build_with_a_turned_light(table);
    const std::string first = table.app.state.log_shelf.path;
    const std::string led = table.app.state.log->card.leds[0].id;

    // Every step opens its particulars: moves with times, readings.
    table.reach("log", "log/step/3");
    CHECK(table.app.state.sheet == SheetKind::log_step);
    CHECK(table.there("log-step/rows"));
    table.tap("log-step/close");

    // A note, typed.
    table.reach("log", "log/add-note");
    table.tap("log-note/field");
    table.fingers.type("Rub the first joint longer");
    table.tap("log-note/keep");
    REQUIRE(table.app.state.log->notes.size() == 1);
    CHECK(table.app.state.log->notes[0] == "Rub the first joint longer");
    CHECK_THAT(read_file(first).value(), Contains("Rub the first joint longer"));

    // A picture dropped on the window.
    bring_in(table.app.state, table.app.around, "IMG 1234.jpg", a_jpeg());
    table.fingers.frame(20);
    CHECK(table.app.state.log->photos.empty()); // not before it has its caption
    table.reach("log-new-photo/rows", "log-new-photo/caption/After dark");
    table.reach("log-new-photo/rows", "log-new-photo/keep");
    REQUIRE(table.app.state.log->photos.size() == 1);
    CHECK(table.app.state.log->photos[0].caption == "After dark");
    const std::string photo = builds_folder_of(table) + table.app.state.log->id + "/photo-1.jpg";
    CHECK(std::filesystem::is_regular_file(photo));

    // The copy: a folder in the library, and one file in the person's hands.
    table.tap("log/save-copy");
    REQUIRE(table.fingers.host.shared.size() == 1);
    CHECK(table.fingers.host.shared[0] == table.app.state.log->id + ".zip");
    CHECK(table.fingers.host.shared_bytes[0].compare(0, 2, "PK") == 0);
    const std::string copy = library.path() + "/copies/" + table.app.state.log->id;
    for (const char* name : {"record.html", "record.pdf", "readings.csv", "record.json", "build.jsonl",
                             "window-candle.card.json", "photos/photo-1.jpg"}) {
        INFO(name);
        CHECK(std::filesystem::is_regular_file(copy + "/" + name));
    }
    CHECK(read_file(copy + "/build.jsonl").value() == read_file(first).value());

    // Built again: the lesson stands at the light that was laid wrong, and at no other.
    table.tap("log/again");
    table.tap("audience/adults");
    table.tap("audience/way/go-on");
    REQUIRE(table.build().lessons.size() == 1);
    table.build_to(6);
    bool seen = false;
    for (int guard = 0; guard < 40 && open_move(table.build()) != nullptr && !seen; ++guard) {
        const Move& move = *open_move(table.build());
        const bool at_light = move.kind == MoveKind::place_led &&
                              std::find(move.parts.begin(), move.parts.end(), led) != move.parts.end();
        CHECK(table.there("make/lesson/1") == at_light);
        if (at_light) {
            CHECK(table.fingers.need("make/lesson/1").label ==
                  "Last time " + led + " was laid the wrong way round at first, then turned.");
            seen = true;
        }
        table.one_move();
    }
    CHECK(seen);
    table.build_to(8);

    // Side by side with the first.
    REQUIRE(table.app.state.log->finished);
    table.reach("log", "log/compare-with");
    table.tap("log-compare/1");
    REQUIRE(table.app.state.log_page.compare.has_value());
    CHECK(table.fingers.need("log/compare/2").label == "Mark the pads: differs"); // where it was turned
    CHECK(table.there("log/compare-back"));
    table.tap("log/compare-back");
    CHECK_FALSE(table.app.state.log_page.compare.has_value());

    // The figures over both.
    table.fingers.frame(10);
    REQUIRE(table.app.state.log_page.figures.done());
    CHECK(table.app.state.log_page.figures.count.figures().finished == 2);
}

TEST_CASE("A photo taken out of the record is gone from both, and one missing is named", "[log]") {
    const OwnFolder library;
    Table table(library.path());
    build_with_a_turned_light(table);
    for (int i = 0; i < 2; ++i) {
        bring_in(table.app.state, table.app.around, "x.jpg", a_jpeg());
        table.fingers.frame(20);
        table.reach("log-new-photo/rows", "log-new-photo/keep");
    }
    const std::string folder = builds_folder_of(table) + table.app.state.log->id;
    REQUIRE(table.app.state.log->photos.size() == 2);
    table.reach("log", "log/photo/1");
    table.tap("log-photo/remove");
    REQUIRE(table.app.state.log->photos.size() == 1);
    CHECK_FALSE(std::filesystem::exists(folder + "/photo-1.jpg"));
    CHECK(std::filesystem::exists(folder + "/photo-2.jpg"));

    std::filesystem::remove(folder + "/photo-2.jpg");
    table.tap("nav/shelf");
    table.tap("nav/log");
    REQUIRE(table.app.state.log_page.photos.size() == 1);
    CHECK_FALSE(table.app.state.log_page.photos[0].there);
    CHECK_THAT(table.fingers.need("log/photo/1").label, Contains("file is missing"));
    table.tap("log/save-copy"); // nothing else breaks
    CHECK(table.fingers.host.shared.size() == 1);
}

TEST_CASE("What is no picture, or comes elsewhere, changes nothing", "[log]") {
    const OwnFolder library;
    Table table(library.path());
    build_with_a_turned_light(table);
    const std::string before = read_file(table.app.state.log_shelf.path).value();
    bring_in(table.app.state, table.app.around, "x.jpg", a_jpeg().substr(0, 60));
    CHECK_THAT(table.app.state.said, Contains("x.jpg") && Contains("expected"));
    CHECK_FALSE(table.app.state.log_page.new_photo.has_value());
    bring_in(table.app.state, table.app.around, "x.jpg", a_jpeg());
    table.fingers.frame(20);
    table.tap("log-new-photo/close");
    CHECK(table.app.state.log->photos.empty());
    CHECK(read_file(table.app.state.log_shelf.path).value() == before);
    CHECK_FALSE(std::filesystem::exists(builds_folder_of(table) + table.app.state.log->id));
}

TEST_CASE("A folder that refuses keeps the note and says one sentence", "[log]") {
    const OwnFolder library;
    Table table(library.path());
    build_with_a_turned_light(table);
    // Something stands where the copies and the photos would go.
    REQUIRE(write_file(library.path() + "/copies", "x").ok());
    REQUIRE(write_file(builds_folder_of(table) + table.app.state.log->id, "x").ok());
    update(table.app.state, table.app.around, command::Log{logbook::SaveCopy{}});
    CHECK_FALSE(table.app.state.said.empty());
    CHECK(table.app.state.to_give.empty());
    bring_in(table.app.state, table.app.around, "x.jpg", a_jpeg());
    update(table.app.state, table.app.around, command::Log{logbook::KeepPhoto{}});
    CHECK(table.app.state.log->photos.empty());
    CHECK(table.app.state.log_page.new_photo.has_value()); // still there to be kept elsewhere
    // The journal away: the note stays in its field.
    std::filesystem::rename(table.app.state.log_shelf.path, library.path() + "/away");
    update(table.app.state, table.app.around, command::Log{logbook::TypeNote{"keep me"}});
    table.app.state.said.clear();
    update(table.app.state, table.app.around, command::Log{logbook::KeepNote{}});
    CHECK_FALSE(table.app.state.said.empty());
    CHECK(table.app.state.log_page.note == "keep me");
    CHECK(table.app.state.log->notes.empty());
}

TEST_CASE("My changes as the plan: a new card that opens, the old one as it was", "[log]") {
    const OwnFolder library;
    Table table(library.path());
    table.start("window-candle");
    table.tap("audience/way/go-on");
    table.build_to(7);
    Change foam;
    foam.kind = ChangeKind::foam_layers;
    foam.count = 4;
    table.app.state.differs.draft = foam;
    update(table.app.state, table.app.around, command::SaveDifference{});
    update(table.app.state, table.app.around, command::GoTo{Place::log});
    table.fingers.frame(5);
    for (const char* name : {"window-candle-as-built", "window-candle-as-built-2"}) {
        update(table.app.state, table.app.around, command::GoTo{Place::log});
        table.fingers.frame(3);
        if (std::string(name).back() == '2') { // another card of that name is there by now
            REQUIRE(write_file(library.path() + "/cards/window-candle-as-built.card.json",
                               read_file(table.app.around.assets + "/cards/night-tram.card.json").value())
                        .ok());
        }
        table.tap("log/as-plan");
        CHECK(table.app.state.place == Place::shelf);
        const std::string path = library.path() + "/cards/" + name + ".card.json";
        INFO(path);
        const Outcome<OpenCard> card = open_card(path, table.app.around.shipped);
        REQUIRE(card.ok());
        CHECK(card.value().card.foam->layers == 4);
        CHECK_THAT(card.value().card.title, Contains("as built"));
        CHECK(std::any_of(table.app.state.cards.begin(), table.app.state.cards.end(),
                          [&](const ShelfCard& one) { return one.name == name && one.trouble.empty(); }));
    }
}
