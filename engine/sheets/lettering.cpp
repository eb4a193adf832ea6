#include "sheets/lettering.h"

#include "sheets/haru.h"

#include <cstdint>
#include <utility>

namespace lanternleaf {

namespace {

// ---- UTF-8

constexpr std::uint32_t kUnknown = 0xFFFD;
constexpr const char* kUnknownText = "\xEF\xBF\xBD";
constexpr const char* kCut = "…";

// Reads one character at `at` and moves on; kUnknown (one byte taken) where it is not well-formed UTF-8.
std::uint32_t next_character(std::string_view text, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(at++);
    if (first < 0x80) {
        return first;
    }
    const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : 1;
    if (first < 0xC2 || first > 0xF4 || at + static_cast<std::size_t>(more) > text.size()) {
        return kUnknown;
    }
    std::uint32_t code = first & (0x3FU >> more);
    for (int i = 0; i < more; ++i) {
        const unsigned char next = byte(at + static_cast<std::size_t>(i));
        if ((next & 0xC0U) != 0x80U) {
            return kUnknown;
        }
        code = code << 6U | (next & 0x3FU);
    }
    const std::uint32_t least[] = {0x80, 0x800, 0x10000};
    if (code < least[more - 1] || (code >= 0xD800 && code <= 0xDFFF) || code > 0x10FFFF) {
        return kUnknown;
    }
    at += static_cast<std::size_t>(more);
    return code;
}

bool is_control(std::uint32_t code) {
    // C0, DEL, C1; line and paragraph separators; the marks that turn the direction of writing.
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029 ||
           (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069) || code == 0xFEFF;
}

// What the built-in face says instead of a sign it lacks; Windows code page 1252 else.
struct Instead {
    std::uint32_t code;
    const char* text;
};

constexpr Instead kInstead[] = {
    {0x2212, "\x96"}, {0x03A9, "ohm"},  {0x2126, "ohm"},  {0x2013, "\x96"}, {0x2014, "\x97"},
    {0x2018, "\x91"}, {0x2019, "\x92"}, {0x201C, "\x93"}, {0x201D, "\x94"}, {0x201E, "\x84"},
    {0x2026, "\x85"}, {0x20AC, "\x80"}, {0x2022, "\x95"}, {0x2192, "to"},   {0x2248, "about"},
    {0x2713, "v"},    {0x2264, "<="},   {0x2265, ">="},
};

std::string as_code_page_1252(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::uint32_t code = next_character(text, at);
        const Instead* known = nullptr;
        for (const Instead& one : kInstead) {
            known = one.code == code ? &one : known;
        }
        if (known != nullptr) {
            out += known->text;
        } else if (code < 0x100 && !is_control(code)) {
            out += static_cast<char>(code);
        } else {
            out += '?';
        }
    }
    return out;
}

} // namespace

std::string clean_text(std::string_view text, std::size_t most) {
    std::string out;
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        if (count == most) {
            return out + kCut;
        }
        const std::size_t from = at;
        const std::uint32_t code = next_character(text, at);
        if (is_control(code)) {
            out += ' ';
        } else if (code == kUnknown || code > 0xFFFF) {
            out += kUnknownText;
        } else {
            out += text.substr(from, at - from);
        }
    }
    return out;
}

struct Lettering::Face {
    PrintFonts files;
    Haru haru;
};

Outcome<Lettering> Lettering::open(const PrintFonts& files) {
    Outcome<Haru> haru = open_haru(files);
    if (!haru) {
        return haru.problem();
    }
    auto face = std::make_shared<Face>();
    face->files = files;
    face->haru = std::move(haru).value();
    return Lettering(std::move(face));
}

const PrintFonts& Lettering::files() const {
    return face_->files;
}

std::string Lettering::shown(const std::string& text) const {
    return face_->files.regular.empty() ? as_code_page_1252(text) : text;
}

double Lettering::width_mm(const std::string& text, double size_mm, bool bold) const {
    const std::string bytes = shown(text);
    const HPDF_TextWidth width =
        HPDF_Font_TextWidth(face_->haru.face[bold ? 1 : 0], reinterpret_cast<const HPDF_BYTE*>(bytes.data()),
                            static_cast<HPDF_UINT>(bytes.size()));
    return static_cast<double>(width.width) / 1000.0 * size_mm; // thousandths of an em
}

namespace {

// Where the characters of a text end, in bytes.
std::vector<std::size_t> ends_of(const std::string& text) {
    std::vector<std::size_t> ends;
    for (std::size_t at = 0; at < text.size();) {
        next_character(text, at);
        ends.push_back(at);
    }
    return ends;
}

} // namespace

std::string Lettering::fitted(const std::string& text, double size_mm, double column_mm, bool bold) const {
    if (width_mm(text, size_mm, bold) <= column_mm) {
        return text;
    }
    const std::vector<std::size_t> ends = ends_of(text);
    std::size_t low = 0; // characters that fit with the cut sign; none is always taken
    std::size_t high = ends.size();
    while (low + 1 < high) {
        const std::size_t middle = (low + high) / 2;
        const std::string tried = text.substr(0, ends[middle - 1]) + kCut;
        (width_mm(tried, size_mm, bold) <= column_mm ? low : high) = middle;
    }
    std::string kept = low == 0 ? "" : text.substr(0, ends[low - 1]);
    while (!kept.empty() && kept.back() == ' ') {
        kept.pop_back();
    }
    return kept + kCut;
}

std::vector<std::string> Lettering::lines(const std::string& text, double size_mm, double column_mm,
                                          bool bold, std::size_t most_lines) const {
    std::vector<std::string> words;
    std::string word;
    for (const char c : text + " ") {
        if (c != ' ') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::exchange(word, {}));
        }
    }
    std::vector<std::string> out;
    std::string line;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string longer = line.empty() ? words[i] : line + " " + words[i];
        if (width_mm(longer, size_mm, bold) <= column_mm) {
            line = longer;
            continue;
        }
        if (out.size() + 1 == most_lines) { // the last line: what is left, cut
            std::string rest = longer;
            for (std::size_t j = i + 1; j < words.size(); ++j) {
                rest += " " + words[j];
            }
            out.push_back(fitted(rest, size_mm, column_mm, bold));
            return out;
        }
        if (!line.empty()) {
            out.push_back(std::exchange(line, {}));
            --i; // the same word again, on a line of its own
            continue;
        }
        const std::vector<std::size_t> ends = ends_of(words[i]);
        std::size_t take = 1;
        while (take < ends.size() && width_mm(words[i].substr(0, ends[take]), size_mm, bold) <= column_mm) {
            ++take;
        }
        out.push_back(words[i].substr(0, ends[take - 1]));
        words[i].erase(0, ends[take - 1]);
        i -= words[i].empty() ? 0U : 1U;
    }
    if (!line.empty()) {
        out.push_back(line);
    }
    return out;
}

} // namespace lanternleaf
