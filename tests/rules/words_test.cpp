// Every message the code names is in the words files, and every message there is named by the code.
#include "words/words.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

namespace fs = std::filesystem;
using namespace lanternleaf;

namespace {

bool part_of_key(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '.';
}

// The literals of a source file that look like a message's key, or like the beginning of one that ends in "."
// or "_".
void keys_in(const std::string& text, const std::set<std::string>& sections, std::set<std::string>& found) {
    for (std::size_t open = text.find('"'); open != std::string::npos; open = text.find('"', open + 1)) {
        std::size_t end = open + 1;
        while (end < text.size() && part_of_key(text[end])) {
            ++end;
        }
        const std::string literal = text.substr(open + 1, end - open - 1);
        const std::size_t dot = literal.find('.');
        if (end < text.size() && text[end] == '"' && dot != std::string::npos &&
            sections.count(literal.substr(0, dot)) != 0) {
            found.insert(literal);
        }
    }
}

} // namespace

TEST_CASE("The code and the words files name the same messages", "[rules]") {
    const std::vector<std::string> keys = english().keys();
    std::set<std::string> sections;
    for (const std::string& key : keys) {
        sections.insert(key.substr(0, key.find('.')));
    }
    std::set<std::string> named;
    for (const char* folder : {"engine", "app", "platforms"}) {
        for (const auto& entry : fs::recursive_directory_iterator(fs::path(LANTERNLEAF_SOURCE) / folder)) {
            const std::string ending = entry.path().extension().string();
            if (ending == ".h" || ending == ".cpp") {
                std::ifstream in(entry.path(), std::ios::binary);
                keys_in({std::istreambuf_iterator<char>(in), {}}, sections, named);
            }
        }
    }
    for (const std::string& name : named) {
        // A beginning of keys: the rest is put on while the program runs.
        const bool begins = name.back() == '.' || name.back() == '_';
        const auto at = std::lower_bound(keys.begin(), keys.end(), name);
        INFO("named in the code: " << name);
        CHECK(at != keys.end());
        CHECK((begins ? at != keys.end() && at->compare(0, name.size(), name) == 0 : english().has(name)));
    }
    for (const std::string& key : keys) {
        bool used = named.count(key) != 0;
        for (std::size_t at = 0; at < key.size() && !used; ++at) {
            used = (key[at] == '.' || key[at] == '_') && named.count(key.substr(0, at + 1)) != 0;
        }
        INFO("in the words files, but nowhere in the code: " << key);
        CHECK(used);
    }
}
