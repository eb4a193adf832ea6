#include "findings/colour_words.h"

namespace lanternleaf {

std::string colour_words(const std::string& colour, const Words& words) {
    const std::string key = "findings.colour_" + colour;
    return words.has(key) ? words(key) : colour;
}

} // namespace lanternleaf
