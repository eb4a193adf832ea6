// Ten thousand damaged files of each kind, the same ones on every run. Whatever stands in a file, the reader
// gives a value or one sentence: it never crashes, throws or hangs, and what it accepts it can write and read
// again.
#include "cardfile/cardfile.h"
#include "files/files.h"

#include <catch2/catch.hpp>

#include <functional>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

using namespace lanternleaf;

namespace {

using Json = nlohmann::ordered_json;

constexpr int kRounds = 10'000;

class Fuzzer {
public:
    explicit Fuzzer(std::uint64_t seed) : random_(seed) {}

    // One to three changes of the text or of the values in it.
    std::string damaged(const std::string& text, const Json& document) {
        std::string made = text;
        if (below(3) == 0) {
            Json changed = document;
            for (std::size_t i = 1 + below(3); i > 0; --i) {
                change_value(changed);
            }
            made = changed.dump(-1, ' ', false, Json::error_handler_t::replace);
        }
        if (made == text || below(4) == 0) {
            for (std::size_t i = 1 + below(3); i > 0; --i) {
                change_text(made);
            }
        }
        return made;
    }

private:
    std::size_t below(std::size_t limit) {
        return limit == 0 ? 0 : std::uniform_int_distribution<std::size_t>(0, limit - 1)(random_);
    }

    std::string chunk(const std::string& text) {
        const std::size_t at = below(text.size() + 1);
        return text.substr(at, below(200));
    }

    void change_text(std::string& text) {
        static const std::vector<std::string> pieces = {"1e308",
                                                        "-1e999",
                                                        "1e-400",
                                                        "99999999999999999999999999",
                                                        "-0.0",
                                                        "NaN",
                                                        "\"\\ud800\"",
                                                        "\xff",
                                                        "\xc3",
                                                        "\"",
                                                        "\\",
                                                        "{",
                                                        "}",
                                                        "[",
                                                        "]",
                                                        ",",
                                                        ":",
                                                        "null",
                                                        "true",
                                                        "/**/",
                                                        "\"id\":\"L1\",",
                                                        "\xf4\x90\x80\x80"};
        const std::size_t at = below(text.size() + 1);
        switch (below(9)) {
        case 0: // a bit
            if (at < text.size()) {
                text[at] = static_cast<char>(static_cast<unsigned char>(text[at]) ^ (1U << below(8)));
            }
            break;
        case 1: // a byte
            if (at < text.size()) {
                text[at] = static_cast<char>(below(256));
            }
            break;
        case 2:
            text.resize(at);
            break;
        case 3:
            text.insert(at, chunk(text));
            break;
        case 4:
            text.erase(at, below(200));
            break;
        case 5: { // two chunks swapped
            const std::size_t other = below(text.size() + 1);
            const std::size_t size = std::min({below(60), text.size() - at, text.size() - other});
            for (std::size_t i = 0; i < size; ++i) {
                std::swap(text[at + i], text[other + i]);
            }
            break;
        }
        case 6:
            text.insert(at, pieces[below(pieces.size())]);
            break;
        case 7: { // deep nesting
            const std::string open = below(2) == 0 ? "[" : "{\"a\":";
            for (std::size_t i = below(3000); i > 0; --i) {
                text.insert(at, open);
            }
            break;
        }
        default: // another number where one stands
            for (std::size_t i = at; i < text.size(); ++i) {
                if (text[i] >= '0' && text[i] <= '9') {
                    text.insert(i, std::to_string(random_()));
                    break;
                }
            }
        }
    }

    Json odd_value() {
        switch (below(12)) {
        case 0:
            return nullptr;
        case 1:
            return below(2) == 0;
        case 2:
            return -1;
        case 3:
            return 0;
        case 4:
            return 1e300;
        case 5:
            return random_();
        case 6:
            return "";
        case 7:
            return std::string(below(20'000), 'x');
        case 8:
            return Json::array();
        case 9:
            return Json::object();
        case 10:
            return Json::array({1, 2, 3});
        default:
            return std::uniform_real_distribution<double>(-20'000, 20'000)(random_);
        }
    }

    // Walks down at random and changes what it finds there.
    void change_value(Json& document) {
        Json* value = &document;
        while (value->is_structured() && !value->empty() && below(5) != 0) {
            const auto item = std::next(value->begin(), static_cast<std::ptrdiff_t>(below(value->size())));
            value = &*item;
        }
        switch (below(4)) {
        case 0:
            if (value->is_array() && !value->empty()) {
                value->erase(below(value->size()));
            } else if (value->is_object() && !value->empty()) {
                value->erase(std::next(value->begin(), static_cast<std::ptrdiff_t>(below(value->size()))));
            }
            break;
        case 1:
            if (value->is_array() && !value->empty()) {
                const Json copy = (*value)[below(value->size())];
                for (std::size_t i = below(40); i > 0; --i) {
                    value->push_back(copy);
                }
            }
            break;
        case 2:
            if (value->is_object()) {
                (*value)["later" + std::to_string(below(3))] = odd_value();
            }
            break;
        default:
            *value = odd_value();
        }
    }

    std::mt19937_64 random_;
};

struct Tally {
    int accepted = 0;
    int refused = 0;
};

void check_problem(const Problem& problem) {
    const std::string sentence = problem.sentence();
    REQUIRE_FALSE(problem.expected.empty());
    REQUIRE(sentence.find('\n') == std::string::npos);
    REQUIRE(sentence.find("fuzz.json") == 0);
    REQUIRE(sentence.size() < 1000);
    for (const char c : sentence) {
        REQUIRE(static_cast<unsigned char>(c) >= 0x20U); // nothing that could move a terminal's cursor
    }
}

std::string text_of(const std::string& name) {
    const auto text = read_file(std::string(LANTERNLEAF_SOURCE) + "/" + name);
    REQUIRE(text.ok());
    return text.value();
}

Parts shipped() {
    return read_parts(text_of("assets/parts.json"), "parts.json").value();
}

template <class Value>
Tally fuzz(const std::string& text, std::uint64_t seed,
           const std::function<Outcome<Value>(const std::string&)>& read,
           const std::function<std::string(const Value&)>& write) {
    const Json document = Json::parse(text);
    Fuzzer fuzzer(seed);
    Tally tally;
    for (int round = 0; round < kRounds; ++round) {
        const std::string damaged = fuzzer.damaged(text, document);
        INFO("round " << round);
        const Outcome<Value> outcome = read(damaged);
        if (!outcome.ok()) {
            check_problem(outcome.problem());
            ++tally.refused;
            continue;
        }
        ++tally.accepted;
        const std::string written = write(outcome.value());
        const Outcome<Value> again = read(written);
        INFO((again.ok() ? std::string() : again.problem().sentence()));
        REQUIRE(again.ok());
        REQUIRE(again.value() == outcome.value());
        REQUIRE(write(again.value()) == written);
    }
    return tally;
}

} // namespace

TEST_CASE("Damaged cards give a card or a sentence", "[fuzz]") {
    const Parts parts = shipped();
    // The sample with parts of its own, unknown keys and folded ends, so that every reader is reached.
    Json document = Json::parse(text_of("tests/data/one-window.card.json"));
    const Json all = Json::parse(text_of("assets/parts.json"));
    document["parts"] = {{"packages", {{"mine", all["packages"]["carrier"]}}},
                         {"leds", {{"mine-red", all["leds"]["carrier-red"]}}},
                         {"cells", {{"CR2032", all["cells"]["CR2032"]}}},
                         {"holders", {{"mine", all["holders"]["slide-20"]}}},
                         {"resistor", all["resistor"]}};
    document["laid"][0]["ends"] = {"plain", "folded"};
    document["later"] = {{"x", Json::array({1, Json::object()})}};
    const Tally tally = fuzz<Card>(
        document.dump(1), 1, [&](const std::string& text) { return read_card(text, "fuzz.json", parts); },
        write_card);
    // Both ways out are really taken; otherwise the damage would be too great or too small to test anything.
    CHECK(tally.accepted > kRounds / 50);
    CHECK(tally.refused > kRounds / 2);
    INFO(tally.accepted << " accepted, " << tally.refused << " refused");
    SUCCEED();
}

TEST_CASE("Damaged parts files give parts or a sentence", "[fuzz]") {
    Json document = Json::parse(text_of("assets/parts.json"));
    // One of each sort is enough to reach every reader, and keeps the file small.
    for (const char* sort : {"leds", "cells", "tapes"}) {
        Json one = Json::object();
        const auto first = document[sort].begin();
        one[first.key()] = first.value();
        document[sort] = one;
    }
    const Tally tally = fuzz<Parts>(
        document.dump(1), 2, [](const std::string& text) { return read_parts(text, "fuzz.json"); },
        write_parts);
    CHECK(tally.accepted > kRounds / 50);
    CHECK(tally.refused > kRounds / 2);
}

TEST_CASE("Every value of the card replaced by every wrong type is a card or a sentence", "[fuzz]") {
    const Parts parts = shipped();
    const Json document = Json::parse(text_of("tests/data/one-window.card.json"));
    const Json flat = document.flatten();
    const std::vector<Json> wrong = {nullptr,       true,           -1,    1e300, "", "word",
                                     Json::array(), Json::object(), {1, 2}};
    for (const auto& [place, value] : flat.items()) {
        // The value itself and everything above it.
        for (Json::json_pointer at(place); !at.empty(); at = at.parent_pointer()) {
            for (const Json& instead : wrong) {
                Json changed = document;
                changed[at] = instead;
                const auto card = read_card(changed.dump(), "fuzz.json", parts);
                if (!card.ok()) {
                    check_problem(card.problem());
                }
            }
        }
    }
}
