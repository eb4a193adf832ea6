// The promise of the journal put to the test: a process that confirms moves is killed at any moment, and no
// move it confirmed is missing afterwards.
#include "support/make_build.h"

#include <catch2/catch.hpp>
#include <csignal>
#include <random>
#include <sys/wait.h>

using namespace lanternleaf;

namespace {

// Child: takes the build up, adds moves for ever, and says each one's number on the pipe once add has
// returned.
[[noreturn]] void confirm_moves(const std::string& path, int pipe_end) {
    Outcome<JournalFile> journal = JournalFile::open(path);
    if (!journal) {
        _exit(2);
    }
    if (journal.value().count() == 0 && !journal.value().add(make::started(make::sample_card()))) {
        _exit(3);
    }
    for (;;) {
        const int number = journal.value().count() + 1;
        if (!journal.value().add(make::moved(1, "move-" + std::to_string(number)))) {
            _exit(4);
        }
        if (::write(pipe_end, &number, sizeof number) != sizeof number) {
            _exit(5);
        }
    }
}

// The last number the child said; 0 when it said none.
int last_confirmed(int pipe_end) {
    int last = 0;
    int number = 0;
    while (::read(pipe_end, &number, sizeof number) == sizeof number) {
        last = number;
    }
    return last;
}

int add_notes(const std::string& path, int count) {
    Outcome<JournalFile> journal = JournalFile::open(path);
    if (!journal || !journal.value().add(make::started(make::sample_card(), path))) {
        return 1;
    }
    for (int i = 0; i < count; ++i) {
        if (!journal.value().add(event_at(i, EventKind::note, 0, path + std::to_string(i)))) {
            return 1;
        }
    }
    return 0;
}

} // namespace

TEST_CASE("No confirmed move is lost when the program is killed", "[record][journal][crash]") {
    const make::TempFolder folder("lanternleaf-kill");
    const std::string path = folder.at("a.build.jsonl");
    std::mt19937 random(20260504); // fixed, so that a failure comes again
    std::uniform_int_distribution<int> wait_us(0, 20000);
    int kills_with_moves = 0;
    int confirmed = 0;
    for (int round = 0; round < 50; ++round) {
        int ends[2];
        REQUIRE(::pipe(ends) == 0);
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            ::close(ends[0]);
            confirm_moves(path, ends[1]);
        }
        ::close(ends[1]);
        ::usleep(static_cast<useconds_t>(wait_us(random)));
        ::kill(child, SIGKILL);
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        REQUIRE(WIFSIGNALED(status)); // killed at work, not given up
        const int last = last_confirmed(ends[0]);
        ::close(ends[0]);
        kills_with_moves += last > 0 ? 1 : 0;
        confirmed = std::max(confirmed, last);

        const Outcome<std::vector<Event>> events = read_journal(make::get_file(path), path);
        INFO("round " << round << (events ? "" : ": " + events.problem().sentence()));
        REQUIRE(events.ok());
        REQUIRE(static_cast<int>(events.value().size()) >= confirmed);
        for (std::size_t i = 1; i < events.value().size(); ++i) {
            REQUIRE(events.value()[i].text == "move-" + std::to_string(i + 1));
        }
        if (!events.value().empty()) {
            const Outcome<Record> record = fold(events.value(), make::kParts);
            REQUIRE(record.ok());
            REQUIRE(record.value().steps[0].moves_done.size() == events.value().size() - 1);
        }
    }
    INFO(kills_with_moves << " of 50 kills came after a confirmed move, " << confirmed
                          << " events in the end");
    CHECK(kills_with_moves >= 10); // else the test has shown nothing
}

TEST_CASE("Two programs add to two builds in one folder", "[record][journal][crash]") {
    const make::TempFolder folder("lanternleaf-two");
    const std::string paths[2] = {folder.at("a.build.jsonl"), folder.at("b.build.jsonl")};
    constexpr int kNotes = 100;
    pid_t children[2];
    for (int i = 0; i < 2; ++i) {
        children[i] = ::fork();
        REQUIRE(children[i] >= 0);
        if (children[i] == 0) {
            _exit(add_notes(paths[i], kNotes));
        }
    }
    for (int i = 0; i < 2; ++i) {
        int status = 0;
        REQUIRE(::waitpid(children[i], &status, 0) == children[i]);
        CHECK((WIFEXITED(status) && WEXITSTATUS(status) == 0));
    }
    for (const std::string& path : paths) {
        const Outcome<std::vector<Event>> events = read_journal(make::get_file(path), path);
        REQUIRE(events.ok());
        REQUIRE(events.value().size() == kNotes + 1);
        CHECK(events.value().back().text == path + std::to_string(kNotes - 1));
    }
}
