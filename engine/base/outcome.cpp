#include "base/outcome.h"

namespace lanternleaf {

std::string Problem::sentence() const {
    std::string text = file;
    if (!place.empty()) {
        text += (text.empty() ? "" : ": ") + place;
    }
    if (!expected.empty()) {
        text += (text.empty() ? "" : ": ") + expected;
    }
    for (char& c : text) {
        if (c == '\n' || c == '\r' || c == '\t') {
            c = ' '; // the promise is one line, whatever a file name or a key holds
        }
    }
    return text;
}

} // namespace lanternleaf
