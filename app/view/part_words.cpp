#include "view/part_words.h"

#include <algorithm>

namespace lanternleaf {

std::string spoken_part(const std::string& id, const Words& words) {
    std::string key = "part.";
    key += id;
    if (english().has(key)) {
        return words(key);
    }
    std::string spaced = id;
    std::replace(spaced.begin(), spaced.end(), '-', ' ');
    return spaced;
}

std::string capital(std::string words) {
    if (words.empty()) {
        return words;
    }
    if (words[0] >= 'a' && words[0] <= 'z') {
        words[0] = static_cast<char>(words[0] - 'a' + 'A');
    } else if (words.size() > 1 && words[0] == '\xC3' && words[1] >= '\xA0' && words[1] <= '\xBE' &&
               words[1] != '\xB7') {
        words[1] = static_cast<char>(words[1] - 0x20); // UTF-8: the small letters à to þ stand 0x20 above
    }
    return words;
}

} // namespace lanternleaf
