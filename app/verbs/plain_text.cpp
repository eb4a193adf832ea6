#include "verbs/plain_text.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Characters of UTF-8 text; combining marks and wide scripts are not looked into.
std::size_t width_of(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

} // namespace

std::string printable(const std::string& text) {
    std::string shown = text;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const auto code = static_cast<unsigned char>(shown[i]);
        // U+0080 to U+009F, C2 80 to C2 9F in UTF-8, are control characters too.
        const bool second_set =
            code == 0xC2U && i + 1 < shown.size() && static_cast<unsigned char>(shown[i + 1]) < 0xA0U;
        if (code < 0x20U || code == 0x7FU) {
            shown[i] = ' ';
        } else if (second_set) {
            shown[i] = ' ';
            shown[i + 1] = ' ';
        }
    }
    return shown;
}

std::string counted(int count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string columns(const std::vector<std::vector<std::string>>& rows, const std::string& indent) {
    std::vector<std::size_t> widths;
    for (const auto& row : rows) {
        widths.resize(std::max(widths.size(), row.size()), 0);
        for (std::size_t i = 0; i < row.size(); ++i) {
            widths[i] = std::max(widths[i], width_of(row[i]));
        }
    }
    std::string text;
    for (const auto& row : rows) {
        std::string line = indent;
        for (std::size_t i = 0; i < row.size(); ++i) {
            line += row[i] + std::string(widths[i] - width_of(row[i]) + 2, ' ');
        }
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + "\n";
    }
    return text;
}

std::string joined(const std::vector<std::string>& items) {
    std::string text;
    for (const std::string& item : items) {
        text += (text.empty() ? "" : ", ") + item;
    }
    return text;
}

} // namespace lanternleaf
