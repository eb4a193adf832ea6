// A shipped words file as Words, for tests that look at another language.
#pragma once

#include "words/words.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>

namespace lanternleaf {

inline Words words_of(const std::string& language) {
    const std::string path = std::string(LANTERNLEAF_SOURCE) + "/assets/words/" + language + ".json";
    std::ifstream in(path, std::ios::binary);
    const Outcome<Words> words = read_words({std::istreambuf_iterator<char>(in), {}}, path);
    REQUIRE(words.ok());
    return words.value();
}

/// No message was missing and no name was left unfilled.
inline bool said_whole(const std::string& text) {
    return !text.empty() && text.find("⟦") == std::string::npos && text.find('{') == std::string::npos;
}

} // namespace lanternleaf
