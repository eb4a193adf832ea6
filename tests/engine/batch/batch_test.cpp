// A batch as the fold of its files: joining, cells, closing, several devices, and files that are no batch.
#include "batch/batch.h"
#include "batch/batch_file.h"
#include "support/make_batch.h"

#include <catch2/catch.hpp>

using namespace lanternleaf;
using make::batch_event;

namespace {

const std::string kId = "harbour-lighthouse-20260504-100000";

BuildProgress build(const std::string& maker, bool finished, bool cell_in) {
    BuildProgress one;
    one.id = maker;
    one.maker = maker;
    one.finished = finished;
    one.cell_in = cell_in;
    return one;
}

std::string refusal(const std::string& text) {
    const Outcome<std::vector<BatchEvent>> events = read_batch_journal(text, "b.batch.jsonl");
    return events ? "" : events.problem().sentence();
}

} // namespace

TEST_CASE("Every batch event reads back as it was written", "[batch]") {
    const std::vector<BatchEvent> events = make::every_batch_event(kId);
    CHECK(events.size() >=
          static_cast<std::size_t>(kBatchEventKindCount) - 1); // 'opened' begins another file
    const Outcome<std::vector<BatchEvent>> again = read_batch_journal(make::batch_text(events), "b");
    REQUIRE(again.ok());
    CHECK(again.value() == events);
}

TEST_CASE("Devices write files of their own and see one batch", "[batch]") {
    BatchEvent opened = batch_event(BatchEventKind::opened, 50, kId);
    const std::vector<BatchEvent> teacher = {make::batch_started(kId, 20, BatchFor::group),
                                             batch_event(BatchEventKind::joined, 10, "Ines"),
                                             make::cells(BatchEventKind::cells_out, 22, 60)};
    const std::vector<BatchEvent> other = {opened, batch_event(BatchEventKind::joined, 55, "Otter"),
                                           batch_event(BatchEventKind::joined, 56, "Ines"),
                                           make::cells(BatchEventKind::cells_back, 2, 70)};
    const Outcome<Batch> one = fold_batch({teacher, other});
    const Outcome<Batch> turned = fold_batch({other, teacher});
    REQUIRE(one.ok());
    REQUIRE(turned.ok());
    CHECK(one.value().makers == std::vector<std::string>{"Ines", "Otter"});
    CHECK(one.value().cells_out == 22);
    CHECK(one.value().cells_back == 2);
    CHECK(turned.value().makers == one.value().makers);
    CHECK(fold_batch({other}).problem().expected.find("may still be on its way") != std::string::npos);
    CHECK(!fold_batch({teacher, teacher}).ok());
    opened.text = "another-20260504-100000";
    CHECK(!fold_batch({teacher, {opened}}).ok());
}

TEST_CASE("Cells out are cells back, in finished cards, or missing", "[batch]") {
    Batch batch;
    batch.cells_out = 5;
    batch.cells_back = 2;
    // Out 5 = back 2 + in a finished card 1 + missing 2, of which one lies in a card that is still being
    // made.
    const std::vector<BuildProgress> builds = {build("a", true, true), build("b", false, true),
                                               build("c", true, false)};
    const CellBalance cells = cell_balance(batch, builds);
    CHECK(cells.in_finished == 1);
    CHECK(cells.in_open == 1);
    CHECK(cells.missing == 2);
    CHECK_FALSE(cells.matches());
    batch.cells_back = 4;
    CHECK(cell_balance(batch, builds).matches());
    batch.cells_back = 6;
    CHECK(cell_balance(batch, builds).missing == -2);
    batch.cells_each = 2; // two cells in each card: 5 - 2 x 1 - 6
    CHECK(cell_balance(batch, builds).missing == -3);
}

TEST_CASE("A count is put right by counting the other way, and closing stays on record", "[batch]") {
    std::vector<BatchEvent> events = {make::batch_started(kId, 2, BatchFor::group),
                                      make::cells(BatchEventKind::cells_out, 4, 10),
                                      make::cells(BatchEventKind::cells_out, -1, 11)};
    BatchEvent closed = batch_event(BatchEventKind::closed, 90);
    closed.out = 3;
    closed.in_cards = 2;
    closed.missing = 1;
    events.push_back(closed);
    Outcome<Batch> batch = fold_batch({events});
    REQUIRE(batch.ok());
    CHECK(batch.value().cells_out == 3);
    REQUIRE(batch.value().closed);
    CHECK(batch.value().closed->missing == 1);
    events.push_back(batch_event(BatchEventKind::reopened, 95));
    CHECK_FALSE(fold_batch({events}).value().closed);
}

TEST_CASE("A nickname can be hidden although its journals keep it", "[batch]") {
    BatchEvent shown = batch_event(BatchEventKind::shown_as, 20, "Ines");
    shown.as = "Builder 1";
    const Outcome<Batch> batch = fold_batch({{make::batch_started(kId, 2, BatchFor::group),
                                              batch_event(BatchEventKind::joined, 10, "Ines"), shown}});
    REQUIRE(batch.ok());
    CHECK(shown_maker(batch.value(), "Ines") == "Builder 1");
    CHECK(shown_maker(batch.value(), "Otter") == "Otter");
}

TEST_CASE("Nicknames are short", "[batch]") {
    CHECK(tidy_nickname("  Ines \t und  Otto ") == "Ines und Otto");
    CHECK(tidy_nickname("Grünschnäbelchen und Co") == "Grünschnäbelchen"); // 16 characters, 18 bytes
    CHECK(tidy_nickname("ines@school").empty());
    CHECK(tidy_nickname("a\nb").empty());
    CHECK(tidy_nickname("   ").empty());
}

TEST_CASE("What is no batch is refused in one sentence with its line", "[batch]") {
    const std::string first = write_batch_event(make::batch_started(kId, 2, BatchFor::group), 1) + "\n";
    const auto second = [&first](const std::string& line) { return refusal(first + line + "\n"); };
    CHECK(refusal("not json\n").find("line 1") != std::string::npos);
    CHECK(refusal(R"({"lanternleaf":1,"kind":"build","n":1})"
                  "\n")
              .find("batch") != std::string::npos);
    CHECK(refusal(R"({"lanternleaf":2,"kind":"batch","n":1})"
                  "\n")
              .find("version") != std::string::npos);
    CHECK(second(R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"dances"})").find("this version knows") !=
          std::string::npos);
    CHECK(second(R"({"n":3,"at":"2026-05-04T10:00:00Z","event":"note","text":"x"})").find("line 2, /n") !=
          std::string::npos);
    CHECK(second(R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"cells-out","cells":2})").find("adult") !=
          std::string::npos);
    CHECK(second(R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"cells-out","cells":2,"adult":false})")
              .find("an adult counts") != std::string::npos);
    CHECK(second(R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"cells-out","cells":9e99,"adult":true})")
              .find("/cells") != std::string::npos);
    CHECK(second(R"({"n":2,"at":"2026-05-04T10:00:00Z","event":"joined","maker":"Ines Maria of Number 4"})")
              .find("nickname") != std::string::npos);
    std::string led_out = first;
    led_out.replace(led_out.find(kId), kId.size(), "../../else");
    CHECK(refusal(led_out).find("id") != std::string::npos);
    CHECK(refusal(first + first).find("line 2") != std::string::npos);
    // Torn and huge.
    CHECK(refusal(first + R"({"n":2,"at":"2026)").empty());
    CHECK(refusal(first + std::string(2'000'000, '[') + "\n").find("line 2") != std::string::npos);
}

TEST_CASE("A batch's file has one writer, loses a torn line only, and is not written over", "[batch]") {
    const make::TempFolder folder("lanternleaf-batch");
    const std::string path = folder.at(kId + ".batch.jsonl");
    {
        Outcome<BatchFile> file = BatchFile::create(path);
        REQUIRE(file.ok());
        REQUIRE(file.value().add(make::batch_started(kId, 2, BatchFor::group)).ok());
        CHECK(BatchFile::open(path).problem().expected.find("close the batch there first") !=
              std::string::npos);
        BatchEvent bad = batch_event(BatchEventKind::joined, 1, "ines@school");
        CHECK_FALSE(file.value().add(bad).ok());
    }
    CHECK(!BatchFile::create(path).ok());
    const std::string whole = make::get_file(path);
    make::put_file(path, whole + R"({"n":2,"at":)");
    {
        Outcome<BatchFile> file = BatchFile::open(path);
        REQUIRE(file.ok());
        CHECK(file.value().count() == 1);
        REQUIRE(file.value().add(batch_event(BatchEventKind::joined, 5, "Otter")).ok());
    }
    const Outcome<std::vector<BatchEvent>> events = read_batch_journal(make::get_file(path), path);
    REQUIRE(events.ok());
    CHECK(events.value().size() == 2);
    const std::string other = folder.at("other.batch.jsonl");
    make::put_file(other, "my diary\n");
    CHECK(!BatchFile::open(other).ok());
    CHECK(make::get_file(other) == "my diary\n");
}
