// The wrapping half of Fonts: breaking text into lines, bold spans, shortening with an ellipsis.
#include "paint/fonts.h"

#include <algorithm>
#include <cstddef>

namespace lanternleaf {

namespace {

/// Bytes of the UTF-8 character that begins at text[at].
std::size_t character_length(std::string_view text, std::size_t at) {
    std::size_t n = 1;
    while (at + n < text.size() && (static_cast<unsigned char>(text[at + n]) & 0xC0) == 0x80) {
        ++n;
    }
    return n;
}

/// Something that stays together on a line: letters in one weight, a space, or the end of a line.
struct Word {
    enum class Kind { Letters, Space, NewLine } kind = Kind::Letters;
    std::string text;
    Weight weight = Weight::Regular;
    bool glued = false; ///< no space before it: only the weight changes ("**L1**,")
};

std::vector<Word> words_of(std::string_view text, Weight base) {
    std::vector<Word> words;
    Weight weight = base;
    bool open = false;
    for (std::size_t i = 0; i < text.size();) {
        if (text.substr(i, 2) == "**") {
            weight = weight == base ? Weight::Bold : base;
            open = false;
            i += 2;
        } else if (text[i] == '\n' || text[i] == ' ') {
            words.push_back({text[i] == '\n' ? Word::Kind::NewLine : Word::Kind::Space, " ", weight, false});
            open = false;
            ++i;
        } else {
            if (!open) {
                const bool glued = !words.empty() && words.back().kind == Word::Kind::Letters;
                words.push_back({Word::Kind::Letters, "", weight, glued});
                open = true;
            }
            const std::size_t n = character_length(text, i);
            words.back().text += text.substr(i, n);
            i += n;
        }
    }
    return words;
}

/// Adds a word to a line, joining it to the run before when the weight is the same.
void append(TextLine& line, const std::string& text, float width, Weight weight) {
    if (!line.runs.empty() && line.runs.back().weight == weight) {
        line.runs.back().text += text;
        line.runs.back().width += width;
    } else {
        line.runs.push_back({text, line.width, width, weight});
    }
    line.width += width;
}

} // namespace

std::vector<TextLine> Fonts::wrap(std::string_view text, TextStyle style, float max_width) const {
    std::vector<TextLine> lines;
    if (text.empty()) {
        return lines;
    }
    const std::vector<Word> words = words_of(text, style.weight);
    lines.emplace_back();
    float space = 0; // width of a space waiting between two words; dropped at a line's end
    Weight space_weight = style.weight;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const Word& word = words[i];
        TextStyle set = style;
        set.weight = word.weight;
        if (word.kind == Word::Kind::NewLine) {
            lines.emplace_back();
            space = 0;
            continue;
        }
        if (word.kind == Word::Kind::Space) {
            space += lines.back().runs.empty() ? 0 : width(" ", set);
            space_weight = word.weight;
            continue;
        }
        // Words glued to this one must come along to the same line.
        float together = width(word.text, set);
        for (std::size_t k = i + 1; k < words.size() && words[k].glued; ++k) {
            TextStyle next = style;
            next.weight = words[k].weight;
            together += width(words[k].text, next);
        }
        if (!word.glued && !lines.back().runs.empty() && lines.back().width + space + together > max_width) {
            lines.emplace_back();
            space = 0;
        }
        if (space > 0) {
            append(lines.back(), " ", space, space_weight);
            space = 0;
        }
        // A single word wider than the line is broken between characters rather than let run out of its box.
        for (std::size_t at = 0; at < word.text.size();) {
            const std::string_view rest = std::string_view(word.text).substr(at);
            const float room = max_width - lines.back().width;
            std::size_t take = rest.size();
            if (width(rest, set) > room) {
                take = 0;
                while (take < rest.size()) {
                    const std::size_t n = character_length(rest, take);
                    if (width(rest.substr(0, take + n), set) > room) {
                        break;
                    }
                    take += n;
                }
                if (take == 0) {
                    if (!lines.back().runs.empty()) {
                        lines.emplace_back();
                        continue;
                    }
                    take = character_length(rest, 0);
                }
            }
            append(lines.back(), std::string(rest.substr(0, take)), width(rest.substr(0, take), set),
                   word.weight);
            at += take;
            if (at < word.text.size()) {
                lines.emplace_back();
            }
        }
    }
    return lines;
}

float Fonts::wrapped_height(std::string_view text, TextStyle style, float max_width) const {
    return static_cast<float>(wrap(text, style, max_width).size()) * style.lead;
}

std::string Fonts::fitted(std::string_view text, TextStyle style, float max_width) const {
    if (width(text, style) <= max_width) {
        return std::string(text);
    }
    const float room = max_width - width("…", style);
    std::size_t keep = 0;
    while (keep < text.size()) {
        const std::size_t n = character_length(text, keep);
        if (width(text.substr(0, keep + n), style) > room) {
            break;
        }
        keep += n;
    }
    while (keep > 0 && text[keep - 1] == ' ') {
        --keep;
    }
    return std::string(text.substr(0, keep)) + "…";
}

} // namespace lanternleaf
