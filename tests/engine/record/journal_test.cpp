// Journals on the disk: nothing torn is taken for whole, nothing confirmed is lost, nothing foreign is
// touched.
#include "support/make_build.h"

#include <catch2/catch.hpp>
#include <sys/mount.h>

using namespace lanternleaf;
using Catch::Matchers::Contains;

namespace {

Event note(const std::string& text) {
    return event_at(make::kMorning_s, EventKind::note, 0, text);
}

void must_add(JournalFile& journal, const Event& event) {
    const Outcome<Done> added = journal.add(event);
    INFO((added ? "" : added.problem().sentence()));
    REQUIRE(added.ok());
}

} // namespace

TEST_CASE("What is added is what is read", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-journal");
    const std::string path = folder.at("a.build.jsonl");
    const std::vector<Event> events = make::every_event();
    {
        Outcome<JournalFile> journal = JournalFile::open(path);
        REQUIRE(journal.ok());
        for (const Event& event : events) {
            must_add(journal.value(), event);
        }
        CHECK(journal.value().count() == static_cast<int>(events.size()));
    }
    CHECK(make::get_file(path) == make::journal_text(events));
    const Outcome<std::vector<Event>> read = read_journal(make::get_file(path), path);
    REQUIRE(read.ok());
    CHECK(make::journal_text(read.value()) == make::journal_text(events));
    CHECK(fold(read.value(), make::kParts).ok());
}

TEST_CASE("A build goes on where it was", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-resume");
    const std::string path = folder.at("a.build.jsonl");
    const std::vector<Event> events = make::every_event();
    for (const Event& event : events) { // the app is closed after every single event
        Outcome<JournalFile> journal = JournalFile::open(path);
        REQUIRE(journal.ok());
        must_add(journal.value(), event);
    }
    CHECK(make::get_file(path) == make::journal_text(events));
}

TEST_CASE("A torn last line is left out, wherever it was torn", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-torn");
    const std::string path = folder.at("a.build.jsonl");
    const std::vector<Event> events = {make::started(make::sample_card()), make::moved(1, "1/a"),
                                       make::moved(1, "1/ü")};
    for (std::size_t whole = 0; whole < events.size(); ++whole) {
        const std::vector<Event> kept(events.begin(), events.begin() + static_cast<long>(whole));
        const std::string before = make::journal_text(kept);
        const std::string last = write_event(events[whole], static_cast<int>(whole) + 1) + "\n";
        for (std::size_t length = 0; length < last.size(); ++length) {
            INFO(whole << " whole lines and " << length << " bytes of the next");
            const std::string text = before + last.substr(0, length);
            const Outcome<std::vector<Event>> read = read_journal(text, path);
            REQUIRE(read.ok());
            REQUIRE(read.value().size() == whole);
            // Opening cuts it off, and the next event stands where it should.
            if (length % 7 == 0 || length + 1 == last.size()) {
                make::put_file(path, text);
                Outcome<JournalFile> journal = JournalFile::open(path);
                REQUIRE(journal.ok());
                REQUIRE(make::get_file(path) == before);
                must_add(journal.value(), events[whole]);
                REQUIRE(make::get_file(path) == before + last);
            }
        }
    }
}

TEST_CASE("A last line with a hole that never reached the disk is left out", "[record][journal]") {
    const std::string before = make::journal_text({make::started(make::sample_card())});
    std::string last = write_event(make::moved(1, "1/a"), 2) + "\n";
    for (std::size_t hole = 0; hole + 1 < last.size(); ++hole) {
        std::string holed = last;
        holed[hole] = '\0';
        const Outcome<std::vector<Event>> read = read_journal(before + holed, "b");
        REQUIRE(read.ok());
        REQUIRE(read.value().size() == 1);
    }
    const Outcome<std::vector<Event>> middle = read_journal(before + std::string(1, '\0') + "\n" + last, "b");
    CHECK_FALSE(middle.ok());
}

TEST_CASE("A line spoilt in the middle is a Problem with its line", "[record][journal]") {
    std::string text = make::journal_text(make::every_event());
    const std::size_t second = text.find('\n') + 1;
    text[second + 3] = '!';
    const Outcome<std::vector<Event>> read = read_journal(text, "b.build.jsonl");
    REQUIRE_FALSE(read.ok());
    CHECK_THAT(read.problem().sentence(), Contains("b.build.jsonl") && Contains("line 2"));
}

TEST_CASE("A missing line is noticed", "[record][journal]") {
    std::string text = make::journal_text(make::every_event());
    const std::size_t second = text.find('\n') + 1;
    text.erase(second, text.find('\n', second) + 1 - second);
    CHECK_FALSE(read_journal(text, "b").ok());
}

TEST_CASE("A file that is no journal is refused and left as it is", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-foreign");
    const std::string path = folder.at("letter.txt");
    for (const char* text : {"Dear Ada", "Dear Ada,\nhere is the card", "{\"lanternleaf\":2}\nhalf", "{}",
                             "\n", "{\"kind\":\"card\"}"}) {
        make::put_file(path, text);
        INFO(text);
        CHECK_FALSE(JournalFile::open(path).ok());
        CHECK(make::get_file(path) == text);
    }
    CHECK_FALSE(JournalFile::open(folder.at("no/such/folder/a.build.jsonl")).ok());
    CHECK_FALSE(JournalFile::open(folder.at("")).ok()); // a folder
}

TEST_CASE("Creating refuses a file that is there", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-create");
    const std::string path = folder.at("a.build.jsonl");
    REQUIRE(JournalFile::create(path).ok());
    const Outcome<JournalFile> again = JournalFile::create(path);
    REQUIRE_FALSE(again.ok());
    CHECK_THAT(again.problem().sentence(), Contains(path) && Contains("already there"));
}

TEST_CASE("One writer per build", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-lock");
    const std::string path = folder.at("a.build.jsonl");
    Outcome<JournalFile> first = JournalFile::open(path);
    REQUIRE(first.ok());
    must_add(first.value(), make::started(make::sample_card()));
    const Outcome<JournalFile> second = JournalFile::open(path);
    REQUIRE_FALSE(second.ok());
    CHECK_THAT(second.problem().sentence(), Contains("another window"));
    must_add(first.value(), note("still mine"));
}

TEST_CASE("A journal changed by something else is not written to", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-changed");
    const std::string path = folder.at("a.build.jsonl");
    Outcome<JournalFile> journal = JournalFile::open(path);
    REQUIRE(journal.ok());
    must_add(journal.value(), make::started(make::sample_card()));
    SECTION("grown") {
        std::ofstream(path, std::ios::app) << "{\"n\":2}\n";
        CHECK_FALSE(journal.value().add(note("x")).ok());
    }
    SECTION("taken away") {
        std::filesystem::remove(path);
        CHECK_FALSE(journal.value().add(note("x")).ok());
        CHECK_FALSE(std::filesystem::exists(path));
    }
}

TEST_CASE("An event that could not be read again is not written", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-unreadable");
    const std::string path = folder.at("a.build.jsonl");
    Outcome<JournalFile> journal = JournalFile::open(path);
    REQUIRE(journal.ok());
    Event broken = make::started(make::sample_card());
    broken.card = "{ not a card";
    CHECK_FALSE(journal.value().add(broken).ok());
    CHECK_FALSE(journal.value().add(make::moved(9, "x")).ok());
    CHECK(make::get_file(path).empty());
    must_add(journal.value(), make::started(make::sample_card()));
}

TEST_CASE("Moving a journal moves the file with it", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-move");
    Outcome<JournalFile> opened = JournalFile::open(folder.at("a.build.jsonl"));
    REQUIRE(opened.ok());
    JournalFile held = std::move(opened).value();
    must_add(held, make::started(make::sample_card()));
    JournalFile other = std::move(held);
    must_add(other, note("x"));
    CHECK(other.count() == 2);
}

TEST_CASE("A full disk is a Problem, and the journal stays whole", "[record][journal]") {
    const make::TempFolder folder("lanternleaf-full");
    const std::string disk = folder.at("disk");
    std::filesystem::create_directories(disk);
    if (mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=16k") != 0) {
        WARN("SKIPPED: a small disk can only be mounted as root");
        return;
    }
    const std::string path = disk + "/a.build.jsonl";
    int confirmed = 0;
    std::string sentence;
    {
        Outcome<JournalFile> journal = JournalFile::open(path);
        REQUIRE(journal.ok());
        must_add(journal.value(), make::started(make::sample_card()));
        confirmed = 1;
        // Lines of odd length, so that the one that does not fit is written in part.
        for (; sentence.empty() && confirmed < 1000; ++confirmed) {
            const Outcome<Done> added = journal.value().add(note(std::string(777, 'x')));
            if (!added) {
                sentence = added.problem().sentence();
                --confirmed;
            }
        }
        const std::string text = make::get_file(path);
        CHECK(text.back() == '\n'); // the part that fitted was cut off again
        const Outcome<std::vector<Event>> read = read_journal(text, path);
        CHECK((read.ok() && static_cast<int>(read.value().size()) == confirmed));
        // A shorter line still fits, and the journal goes on.
        const Outcome<Done> shorter = journal.value().add(note("x"));
        INFO((shorter ? "" : shorter.problem().sentence()));
        CHECK(shorter.ok());
    }
    CHECK_THAT(sentence, Contains(path) && Contains("disk is full"));
    CHECK(fold(read_journal(make::get_file(path), path).value(), make::kParts).ok());
    umount(disk.c_str());
}
