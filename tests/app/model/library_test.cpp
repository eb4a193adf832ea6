// One folder, several programs: nothing is lost, nothing is written over, and what cannot be read is named.
#include "model/library.h"

#include "files/files.h"
#include "model/bring_in.h"
#include "model/update.h"
#include "support/make_build.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <sys/wait.h>
#include <unistd.h>

using namespace lanternleaf;

namespace {

struct Room {
    Room() : folder("lanternleaf-library") {
        around.assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
        around.library = folder.at("library");
        around.now_s = make::kMorning_s;
        Outcome<Parts> parts = load_parts(around.assets);
        REQUIRE(parts.ok());
        around.shipped = std::move(parts).value();
        const Outcome<Done> made = make_folder(around.library);
        REQUIRE(made.ok());
    }

    [[nodiscard]] std::string card() const {
        return std::string(LANTERNLEAF_SOURCE) + "/tests/data/one-window.card.json";
    }

    [[nodiscard]] std::string start() const {
        const Outcome<std::string> path = start_build(around, card(), Audience::adults, {});
        REQUIRE(path.ok());
        return path.value();
    }

    [[nodiscard]] std::string builds() const { return around.library + "/builds"; }

    void put(const std::string& name, const std::string& text) const {
        make::put_file(builds() + "/" + name, text);
    }

    make::TempFolder folder;
    Surroundings around;
};

std::string text_of(const std::string& path) {
    const Outcome<std::string> text = read_file(path);
    REQUIRE(text.ok());
    return text.value();
}

ShelfBuild shelf_of(const std::string& path) {
    ShelfBuild shelf;
    shelf.path = path;
    return shelf;
}

const ShelfBuild* listed(const std::vector<ShelfBuild>& builds, const std::string& id) {
    const auto same = [&](const ShelfBuild& build) { return build.id == id; };
    const auto found = std::find_if(builds.begin(), builds.end(), same);
    return found == builds.end() ? nullptr : &*found;
}

// What one of the two programs does: builds started, moves confirmed in each, settings and cards written, all
// in the same second. Gives 0 when everything it was told to be confirmed was.
int work(const Surroundings& around, const std::string& card, const std::string& card_text, int rounds) {
    for (int round = 0; round < rounds; ++round) {
        const Outcome<std::string> path =
            start_build(around, card, Audience::adults, {}, {"", std::to_string(::getpid())});
        if (!path) {
            return 1;
        }
        Outcome<OpenBuild> build = take_up_build(around, shelf_of(path.value()));
        if (!build || !build.value().looking_only.empty()) {
            return 2;
        }
        for (int i = 0; i < 5; ++i) {
            const Event note = event_at(0, EventKind::note, 0, "note " + std::to_string(i));
            if (!confirm(around, build.value(), note)) {
                return 3;
            }
        }
        Settings settings;
        settings.text_scale = round % 2 == 0 ? 1.0 : 1.3;
        write_settings(around, settings);
        const std::string own = card_text + std::string(static_cast<std::size_t>(round % 3), '\n');
        if (!bring_in_card(around, "Shared.card.json", own)) {
            return 4;
        }
        static_cast<void>(list_builds(around));
    }
    return 0;
}

} // namespace

TEST_CASE("Two programs on one library at once lose nothing", "[model][library]") {
    const Room room;
    constexpr int kRounds = 12;
    const std::string card_text = text_of(room.card());
    pid_t child[2];
    for (pid_t& one : child) {
        one = ::fork();
        REQUIRE(one >= 0);
        if (one == 0) {
            ::_exit(work(room.around, room.card(), card_text, kRounds));
        }
    }
    for (const pid_t one : child) {
        int status = 0;
        REQUIRE(::waitpid(one, &status, 0) == one);
        CHECK(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
    }
    const std::vector<ShelfBuild> builds = list_builds(room.around);
    CHECK(builds.size() == 2 * kRounds);
    std::map<std::string, int> made;
    std::set<std::string> ids;
    for (const ShelfBuild& shelf : builds) {
        CHECK(shelf.trouble.empty());
        const Outcome<OpenBuild> build = open_build(room.around, shelf);
        REQUIRE(build.ok());
        CHECK(build.value().record.notes.size() == 5); // every confirmed event is there, and no other's
        CHECK(build.value().record.id == shelf.id);
        ids.insert(build.value().record.id);
        ++made[build.value().record.maker];
    }
    CHECK(ids.size() == builds.size());
    REQUIRE(made.size() == 2);
    CHECK(made.begin()->second == kRounds);
    // Every version of the card that was brought in is there, and nothing half-written.
    std::set<std::string> versions;
    for (const ShelfCard& card : list_cards(room.around, builds)) {
        CHECK(card.trouble.empty());
        if (card.name.rfind("shared", 0) == 0) {
            versions.insert(text_of(card.path));
        }
    }
    CHECK(versions.size() == 3);
    const double scale = read_settings(room.around).text_scale;
    CHECK((scale == 1.0 || scale == Approx(1.3)));
}

TEST_CASE("The second program to open a build is told so, and can only look", "[model][library]") {
    const Room room;
    const std::string path = room.start();
    Outcome<OpenBuild> first = take_up_build(room.around, shelf_of(path));
    REQUIRE(first.ok());
    CHECK(first.value().looking_only.empty());
    const std::string before = text_of(path);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        Outcome<OpenBuild> second = take_up_build(room.around, shelf_of(path));
        const bool told =
            second.ok() && second.value().looking_only.find("another window") != std::string::npos;
        const bool refused =
            second.ok() && !confirm(room.around, second.value(), event_at(0, EventKind::note, 0, "no")).ok();
        ::_exit(told && refused && !second.value().steps.empty() ? 0 : 1);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(text_of(path) == before);
    CHECK(confirm(room.around, first.value(), event_at(0, EventKind::note, 0, "mine")).ok());
    { const OpenBuild let_go = std::move(first).value(); }
    Outcome<OpenBuild> again = take_up_build(room.around, shelf_of(path));
    REQUIRE(again.ok());
    CHECK(again.value().looking_only.empty());
    CHECK(again.value().record.notes.size() == 1);
}

TEST_CASE("A build that went on elsewhere is not written on from an old reading", "[model][library]") {
    const Room room;
    const std::string path = room.start();
    Outcome<OpenBuild> old = open_build(room.around, shelf_of(path));
    Outcome<OpenBuild> other = open_build(room.around, shelf_of(path));
    REQUIRE(other.ok());
    REQUIRE(confirm(room.around, other.value(), event_at(0, EventKind::note, 0, "first")).ok());
    const std::string before = text_of(path);
    const Outcome<Done> late = confirm(room.around, old.value(), event_at(0, EventKind::note, 0, "late"));
    REQUIRE_FALSE(late.ok());
    CHECK(late.problem().sentence().find("gone on") != std::string::npos);
    CHECK(text_of(path) == before);
}

TEST_CASE("What a synchroniser leaves behind is named while the rest opens", "[model][library]") {
    const Room room;
    const std::string path = room.start();
    const std::string name = path.substr(path.rfind('/') + 1);
    const std::string id = name.substr(0, name.rfind(".build.jsonl"));
    const std::string whole = text_of(path);
    std::string later = whole;
    later += write_event(event_at(make::kMorning_s, EventKind::note, 0, "on"), 3) + "\n";
    std::string other = whole;
    other[other.find("2026-05-04T10:00:00Z")] = '3'; // another build of the same name, from another tablet
    std::string own = whole;                         // a build of its own, whose last line was being written
    own.replace(own.find(id), id.size(), "torn-20260504-100007");
    const std::map<std::string, std::string> files = {
        {"empty-20260504-100001.build.jsonl", ""},
        {"hole-20260504-100002.build.jsonl", std::string(512, '\0')},
        {"half-20260504-100003.build.jsonl", whole.substr(0, whole.find('\n') / 2)},
        {"foreign-20260504-100004.build.jsonl", "\x89PNG\r\n\x1a\nnot ours"},
        {"spoiled-20260504-100005.build.jsonl", whole + "#### not a line ####\n"},
        {"newer-20260504-100006.build.jsonl", "{\"lanternleaf\":9,\"kind\":\"build\",\"n\":1}\n"},
        {id + " (1).build.jsonl", whole.substr(0, whole.find('\n') + 1)},
        {id + " (2).build.jsonl", later},
        {id + " (3).build.jsonl", other},
        {"torn-20260504-100007.build.jsonl", own + own.substr(0, 40)},
    };
    for (const auto& [file, text] : files) {
        room.put(file, text);
    }
    room.put("notes.txt", "a file of somebody else");
    const std::vector<ShelfBuild> builds = list_builds(room.around);
    CHECK(builds.size() == files.size() + 1);
    for (const ShelfBuild& build : builds) {
        const std::string file = build.id + ".build.jsonl";
        const bool opens = file == name || file == id + " (3).build.jsonl" || build.id.rfind("torn", 0) == 0;
        INFO(build.id << ": " << build.trouble);
        CHECK(build.trouble.empty() == opens);
        if (!opens) {
            CHECK(build.trouble.find(file.substr(0, 5)) != std::string::npos); // it is named
        }
    }
    CHECK(listed(builds, "empty-20260504-100001")->trouble.find("on its way") != std::string::npos);
    CHECK(listed(builds, "half-20260504-100003")->trouble.find("on its way") != std::string::npos);
    CHECK(listed(builds, id + " (1)")->trouble.find("earlier copy") != std::string::npos);
    CHECK(listed(builds, id + " (2)")->trouble.find("longer copy") != std::string::npos);
    CHECK(listed(builds, id)->number == 1);
    // Looking at a folder changes nothing in it.
    for (const auto& [file, text] : files) {
        CHECK(text_of(room.builds() + "/" + file) == text);
    }
}

TEST_CASE("A journal that cannot be written to can still be looked at", "[model][library]") {
    const Room room;
    const std::string path = room.start();
    std::string spoiled = text_of(path);
    REQUIRE(::truncate(path.c_str(), static_cast<off_t>(spoiled.size() - 3)) == 0);
    const Outcome<OpenBuild> torn = take_up_build(room.around, shelf_of(path));
    REQUIRE(torn.ok()); // the torn line was never confirmed
    CHECK(torn.value().events.size() == 1);
}

TEST_CASE("A build's batch and its maker's nickname stay with it", "[model][library]") {
    const Room room;
    const Outcome<std::string> path =
        start_build(room.around, room.card(), Audience::school_class, {}, {"batch-1", "Fern"});
    REQUIRE(path.ok());
    const std::vector<ShelfBuild> builds = list_builds(room.around);
    REQUIRE(builds.size() == 1);
    CHECK(builds[0].batch == "batch-1");
    CHECK(builds[0].maker == "Fern");
    const Outcome<OpenBuild> build = open_build(room.around, builds[0]);
    REQUIRE(build.ok());
    CHECK(build.value().record.maker == "Fern");
    const std::string record = write_record(build.value().record, build.value().parts);
    CHECK(record.find("\"maker\": \"Fern\"") != std::string::npos);
}
