// Spoilt journals, events and scripts by the thousand: each gives a Problem or a valid record, never a crash.
#include "record/script.h"
#include "support/make_build.h"

#include <catch2/catch.hpp>
#include <random>

using namespace lanternleaf;

namespace {

constexpr int kMutations = 10'000;

// Pieces that tend to upset readers, put in at random places.
const std::vector<std::string> kNasty = {"\n",
                                         std::string(1, '\0'),
                                         "{",
                                         "}",
                                         "[",
                                         "]",
                                         "\"",
                                         "\\",
                                         ",",
                                         ":",
                                         "-1",
                                         "1e999",
                                         "99999999999999999999",
                                         "null",
                                         "true",
                                         "\xff",
                                         "\xC2\x80",
                                         "{\"n\":1}",
                                         "\\u0000",
                                         "\\ud800",
                                         "0",
                                         "8",
                                         "\"step\":0",
                                         "[[[[[[[[[[[[",
                                         "NaN",
                                         "\"OL\""};

std::string mutated(std::string text, std::mt19937& random) {
    const auto below = [&random](std::size_t n) { return n == 0 ? 0 : random() % n; };
    const std::size_t edits = 1 + below(4);
    for (std::size_t i = 0; i < edits; ++i) {
        const std::size_t at = below(text.size());
        switch (below(6)) {
        case 0: // one bit
            if (!text.empty()) {
                text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
            }
            break;
        case 1: // something nasty
            text.insert(at, kNasty[below(kNasty.size())]);
            break;
        case 2: // a piece taken out
            text.erase(at, 1 + below(40));
            break;
        case 3: // a piece said twice
            text.insert(at, text.substr(below(text.size()), 1 + below(200)));
            break;
        case 4: // cut short
            text.resize(at);
            break;
        default: { // two lines swapped
            const std::size_t first = text.find('\n', at);
            const std::size_t second = first == std::string::npos ? first : text.find('\n', first + 1);
            if (second != std::string::npos) {
                const std::string line = text.substr(first, second - first);
                text.erase(first, line.size());
                text.insert(at, line);
            }
        }
        }
    }
    return text;
}

// Whether the text folded; the record of a text that does must be writable.
bool survives(const std::string& text) {
    const Outcome<std::vector<Event>> events = read_journal(text, "spoilt.build.jsonl");
    if (!events) {
        REQUIRE_FALSE(events.problem().sentence().empty());
        REQUIRE(events.problem().sentence().find('\n') == std::string::npos);
        return false;
    }
    const Outcome<Record> record = fold(events.value(), make::kParts);
    if (!record) {
        REQUIRE_FALSE(record.problem().sentence().empty());
        return false;
    }
    REQUIRE(write_record(record.value(), make::kParts).size() > 100);
    REQUIRE(record.value().step >= 1);
    REQUIRE(record.value().step <= kStepCount + 1);
    return true;
}

} // namespace

TEST_CASE("Spoilt journals give a Problem or a record", "[fuzz][journal]") {
    const std::string whole = make::journal_text(make::every_event());
    REQUIRE(survives(whole));
    std::mt19937 random(1); // fixed, so that a failure comes again
    int records = 0;
    for (int i = 0; i < kMutations; ++i) {
        INFO("mutation " << i);
        records += survives(mutated(whole, random)) ? 1 : 0;
    }
    INFO(records << " of " << kMutations << " still gave a record");
    CHECK(records > 0); // both ways out were tried
    CHECK(records < kMutations);
}

TEST_CASE("Spoilt scripts give a Problem or a script", "[fuzz][journal]") {
    const std::string whole = R"({"lanternleaf":1,"kind":"script","for":"class","steps":[
        {"step":4,"note":"x","changes":[{"kind":"joint-cut","part":"S1","at_mm":[60,35],"mm":6,"count":2}],
         "readings":[{"check":"flap-to-bed","value":"OL"},{"check":"a","value":0.4,"by":"eye"}],
         "if_stopped":{"fixes":[{"kind":"led-turned","part":"L1"}],"seen":{"L1":"lit"},"regardless":"y"}}]})";
    REQUIRE(read_script(whole, "s").ok());
    std::mt19937 random(2);
    int read = 0;
    for (int i = 0; i < kMutations; ++i) {
        const Outcome<BuildScript> script = read_script(mutated(whole, random), "s");
        read += script ? 1 : 0;
        if (!script) {
            REQUIRE(script.problem().sentence().find('\n') == std::string::npos);
        }
    }
    CHECK(read > 0);
    CHECK(read < kMutations);
}

TEST_CASE("A journal opened by mistake on anything is opened whole or left alone", "[fuzz][journal]") {
    const make::TempFolder folder("lanternleaf-fuzz");
    const std::string path = folder.at("a.build.jsonl");
    const std::string whole = make::journal_text(make::every_event());
    std::mt19937 random(3);
    for (int i = 0; i < 500; ++i) {
        const std::string text = mutated(whole, random);
        make::put_file(path, text);
        const bool opened = JournalFile::open(path).ok();
        const std::string after = make::get_file(path);
        INFO("mutation " << i);
        REQUIRE(after == (opened ? text.substr(0, whole_lines_end(text)) : text));
    }
}
