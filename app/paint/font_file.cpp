#include "paint/font_file.h"

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <fstream>
#include <iterator>
#include <optional>
#include <utility>

namespace lanternleaf {

namespace {

/// Big-endian 16-bit number at `at`, or nothing past the end.
std::optional<std::uint16_t> u16(const std::vector<unsigned char>& bytes, std::size_t at) {
    if (at + 2 > bytes.size()) {
        return std::nullopt;
    }
    return static_cast<std::uint16_t>(bytes[at] << 8 | bytes[at + 1]);
}

/// Where the table with this four-letter tag begins.
std::optional<std::size_t> table_at(const std::vector<unsigned char>& bytes, const char* tag) {
    const auto count = u16(bytes, 4);
    for (std::size_t i = 0; count && i < *count; ++i) {
        const std::size_t row = 12 + 16 * i;
        if (row + 16 > bytes.size()) {
            break;
        }
        if (std::memcmp(bytes.data() + row, tag, 4) == 0) {
            return std::size_t{bytes[row + 8]} << 24 | std::size_t{bytes[row + 9]} << 16 |
                   std::size_t{bytes[row + 10]} << 8 | std::size_t{bytes[row + 11]};
        }
    }
    return std::nullopt;
}

/// A signed field of a table, in font units.
std::optional<float> field(const std::vector<unsigned char>& bytes, const char* tag, std::size_t offset) {
    const auto table = table_at(bytes, tag);
    if (!table) {
        return std::nullopt;
    }
    const auto raw = u16(bytes, *table + offset);
    if (!raw) {
        return std::nullopt;
    }
    return static_cast<float>(static_cast<std::int16_t>(*raw));
}

} // namespace

Outcome<FontFile> read_font(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    if (!in) {
        return Problem{file.string(), "", "expected a TrueType font here, but the file cannot be opened"};
    }
    FontFile font;
    font.bytes.assign(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());

    const auto em = field(font.bytes, "head", 18);
    const auto ascent = field(font.bytes, "hhea", 4);
    const auto descent = field(font.bytes, "hhea", 6);
    const auto version = field(font.bytes, "OS/2", 0);
    const auto x_height = field(font.bytes, "OS/2", 86);
    const auto cap_height = field(font.bytes, "OS/2", 88);
    if (!em || *em <= 0 || !ascent || !descent || *ascent - *descent <= 0) {
        return Problem{file.string(), "", "expected a TrueType font with head and hhea tables"};
    }
    font.ascent = *ascent / *em;
    font.descent = -*descent / *em;
    // Tables older than version 2 have no such fields; 0.7 and 0.5 em are usual for text faces (common
    // practice).
    const bool told = version && *version >= 2 && cap_height && x_height && *cap_height > 0;
    font.cap_height = told ? *cap_height / *em : 0.7f;
    font.x_height = told ? *x_height / *em : 0.5f;
    return font;
}

} // namespace lanternleaf
