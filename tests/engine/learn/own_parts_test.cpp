// The maker's own parts as files: newest wins, earlier ones stay, forgetting is a file, bad ones stand aside.
#include "learn/own_parts.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "support/make_card.h"

#include <catch2/catch.hpp>
#include <filesystem>

using namespace lanternleaf;
namespace fs = std::filesystem;

namespace {

struct Library {
    std::string path = LANTERNLEAF_BUILD "/own-parts-test";

    Library() { fs::remove_all(path); }

    ~Library() { fs::remove_all(path); }

    void put(const std::string& name, const std::string& text) const {
        REQUIRE(make_folder(path + "/parts").ok());
        REQUIRE(write_file(path + "/parts/" + name, text).ok());
    }
};

Learnt tape_read(double ohm, const std::string& at) {
    TwoStripTest test;
    test.type = "copper-5";
    test.reading_ohm = ohm;
    test.answer = ohm < 0 ? JointAnswer::open : JointAnswer::ohms;
    const Outcome<Learnt> learnt = learn_tape(test, make::test_parts(), at);
    REQUIRE(learnt.ok());
    return learnt.value();
}

const std::string kMonday = "2026-05-04T10:00:00Z";
const std::string kTuesday = "2026-05-05T10:00:00Z";

} // namespace

TEST_CASE("Of two readings of a tape the newest holds and both files stay", "[learn]") {
    const Library library;
    const Parts shipped = make::test_parts();
    CHECK(load_own_parts(library.path, shipped).list.empty()); // nothing there yet is nothing wrong
    REQUIRE(keep_learnt(library.path, tape_read(-1, kTuesday)).ok());
    REQUIRE(keep_learnt(library.path, tape_read(0.4, kMonday)).ok()); // arrives later, was read earlier
    const Outcome<std::string> again = keep_learnt(library.path, tape_read(0.5, kMonday));
    REQUIRE(again.ok());
    CHECK(again.value() == "tape-copper-5-20260504-100000-2.parts.json"); // nothing is written over
    const OwnParts own = load_own_parts(library.path, shipped);
    CHECK(own.aside.empty());
    CHECK(own.parts.tapes.at("copper-5").adhesive == Adhesive::non_conductive);
    REQUIRE(own.list.size() == 1);
    CHECK(own.list[0].times == 3);
    CHECK(files_in(library.path + "/parts", ".parts.json").size() == 3);

    REQUIRE(forget_part(library.path, PartSort::tape, "copper-5", kTuesday).ok());
    CHECK(load_own_parts(library.path, shipped).list.empty());
    CHECK(files_in(library.path + "/parts", ".parts.json").size() == 3);
    REQUIRE(keep_learnt(library.path, tape_read(0.4, "2026-05-06T08:00:00Z")).ok());
    const OwnParts after = load_own_parts(library.path, shipped);
    REQUIRE(after.list.size() == 1);
    CHECK(after.list[0].times == 1);
}

TEST_CASE("Bad files of own parts stand aside, named, and the rest loads", "[learn]") {
    const Library library;
    const Parts shipped = make::test_parts();
    REQUIRE(keep_learnt(library.path, tape_read(0.4, kMonday)).ok());
    const std::string good = write_parts(tape_read(0.4, kMonday).parts);
    const auto with = [&good](const std::string& from, const std::string& to) {
        std::string text = good;
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return text.replace(at, from.size(), to);
    };
    const std::vector<std::pair<std::string, std::string>> bad = {
        {"empty", ""},
        {"cut", good.substr(0, good.size() / 2)},
        {"newer", with("\"lanternleaf\": 1", "\"lanternleaf\": 9")},
        {"card", with("\"parts\"", "\"card\"")},
        {"no-time", with("\"measured_at\": \"" + kMonday + "\",", "")},
        {"odd-time", with(kMonday, "2026-05-04")},
        {"negative", with("\"width_mm\": 5", "\"width_mm\": -5")},
        {"huge-number", with("\"width_mm\": 5", "\"width_mm\": 1e300")},
        {"cell", R"({"lanternleaf":1,"kind":"parts","cells":{}, "holders":{}})"},
        {"deep", std::string(5000, '[')},
        {"bytes", std::string(100, '\xff')},
        {"large", good + std::string(kMostOwnPartBytes, ' ')},
        {"no-package", R"({"lanternleaf":1,"kind":"parts","leds":{"x":{"package":"../../etc"}}})"},
    };
    for (const auto& [name, text] : bad) {
        library.put("tape-" + name + ".parts.json", text);
    }
    library.put("tape-x.forgotten.json", "{}");
    fs::create_directory(library.path + "/parts/folder.parts.json");
    fs::create_symlink("/dev/zero", library.path + "/parts/device.parts.json");
    const OwnParts own = load_own_parts(library.path, shipped);
    CHECK(own.parts.tapes.count("copper-5") == 1);
    CHECK(own.list.size() == 1);
    CHECK(own.aside.size() == bad.size() + 1);
    for (const Problem& problem : own.aside) {
        INFO(problem.sentence());
        CHECK(problem.sentence().find('\n') == std::string::npos);
        CHECK_FALSE(problem.file.empty());
    }
}

TEST_CASE("A card carries the own parts that it uses, and no others", "[learn]") {
    const Parts shipped = make::test_parts();
    const Learnt tape = tape_read(0.4, kMonday);
    Parts other = tape.parts;
    other.tapes["copper-10"] = tape.parts.tapes.at("copper-5");
    const Parts known = merged(shipped, other);
    Card card = make::sample_card();
    card.own_parts = carried_by(card, known);
    CHECK(card.own_parts == tape.parts);
    // Elsewhere, where nobody measured anything, it is read as it was here.
    const Outcome<Card> back = read_card(write_card(card), "sent.card.json", shipped);
    REQUIRE(back.ok());
    CHECK(merged(shipped, back.value().own_parts).tapes.at("copper-5") == tape.parts.tapes.at("copper-5"));
    CHECK(carried_by(make::sample_card(), shipped).empty());
}
