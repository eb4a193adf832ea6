// What the tests of the card file share: the test card, the shipped parts, and one change to a JSON document.
#pragma once

#include "cardfile/cardfile.h"
#include "files/files.h"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <string>

namespace lanternleaf::test {

using Json = nlohmann::ordered_json;

inline std::string source_text(const std::string& name) {
    const auto text = read_file(std::string(LANTERNLEAF_SOURCE) + "/" + name);
    REQUIRE(text.ok());
    return text.value();
}

inline const std::string& sample_text() {
    static const std::string text = source_text("tests/data/one-window.card.json");
    return text;
}

inline const Parts& shipped() {
    static const Parts parts = [] {
        const auto read = read_parts(source_text("assets/parts.json"), "parts.json");
        INFO((read.ok() ? std::string() : read.problem().sentence()));
        REQUIRE(read.ok());
        return read.value();
    }();
    return parts;
}

inline Json sample_json() {
    return Json::parse(sample_text());
}

inline Outcome<Card> read_sample(const std::string& text) {
    return read_card(text, "x.card.json", shipped());
}

inline Card sample() {
    const auto card = read_sample(sample_text());
    INFO((card.ok() ? std::string() : card.problem().sentence()));
    REQUIRE(card.ok());
    return card.value();
}

/// `document` with `value` at a JSON pointer, or without what is there when `value` is null.
inline Json with(Json document, const std::string& at, const Json* value) {
    const Json::json_pointer pointer(at);
    if (value != nullptr) {
        document[pointer] = *value;
    } else if (Json& parent = document[pointer.parent_pointer()]; parent.is_array()) {
        parent.erase(static_cast<std::size_t>(std::stoul(pointer.back())));
    } else {
        parent.erase(pointer.back());
    }
    return document;
}

} // namespace lanternleaf::test
