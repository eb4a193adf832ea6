#include "exchange/names.h"

#include "cardfile/json_tree.h"

#include <algorithm>

namespace lanternleaf::exchange {

namespace {

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

std::string last_part(const std::string& path) {
    const std::size_t slash = path.find_last_of("/\\");
    return slash == std::string::npos ? path : path.substr(slash + 1);
}

std::string without_ending(const std::string& name) {
    return name.substr(0, name.rfind('.'));
}

bool ends_with(const std::string& name, const std::string& ending) {
    return name.size() >= ending.size() && std::equal(ending.rbegin(), ending.rend(), name.rbegin(),
                                                      [](char a, char b) { return small(a) == small(b); });
}

bool is_picture_name(const std::string& name) {
    return ends_with(name, ".png") || ends_with(name, ".jpg") || ends_with(name, ".jpeg");
}

std::string plain_stem(const std::string& card_file) {
    std::string name = last_part(card_file);
    for (const char* ending : {kCardEnding, ".json"}) {
        if (ends_with(name, ending)) {
            name.resize(name.size() - std::string(ending).size());
            break;
        }
    }
    std::string plain;
    for (const char c : name) {
        const char low = small(c);
        if ((low >= 'a' && low <= 'z') || (low >= '0' && low <= '9')) {
            plain += low;
        } else if (!plain.empty() && plain.back() != '-') {
            plain += '-';
        }
    }
    plain.resize(std::min<std::size_t>(plain.size(), 60));
    while (!plain.empty() && plain.back() == '-') {
        plain.pop_back();
    }
    return plain.empty() ? "card" : plain;
}

std::string shown_name(const std::string& name) {
    return cardfile::shortened(last_part(name), 60);
}

} // namespace lanternleaf::exchange
