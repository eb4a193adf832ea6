#include "paint/icon_path.h"

#include <array>
#include <cctype>
#include <charconv>
#include <cstddef>
#include <optional>

namespace lanternleaf {

namespace {

constexpr float kTolerance = 0.02f; // grid units: under a tenth of a pixel at 46 pt
constexpr float kDegree = 3.14159265358979f / 180;

/// Walks the text word by word.
class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {}

    [[nodiscard]] bool done() {
        while (at_ < text_.size() && text_[at_] == ' ') {
            ++at_;
        }
        return at_ >= text_.size();
    }

    [[nodiscard]] bool at_letter() {
        return !done() && std::isalpha(static_cast<unsigned char>(text_[at_])) != 0;
    }

    char letter() { return text_[at_++]; }

    [[nodiscard]] std::size_t place() const { return at_; }

    template <std::size_t N>
    std::optional<std::array<float, N>> numbers() {
        std::array<float, N> out{};
        for (float& value : out) {
            if (done()) {
                return std::nullopt;
            }
            const char* begin = text_.data() + at_;
            const auto [end, code] = std::from_chars(begin, text_.data() + text_.size(), value);
            if (code != std::errc{}) {
                return std::nullopt;
            }
            at_ += static_cast<std::size_t>(end - begin);
        }
        return out;
    }

private:
    std::string_view text_;
    std::size_t at_ = 0;
};

/// Reads the numbers of one command and adds to the icon; false when they are not there.
bool add_command(char command, Reader& reader, IconPath& icon, bool& working) {
    auto begin = [&](bool closed) -> IconStroke& {
        icon.strokes.push_back({{}, closed});
        return icon.strokes.back();
    };
    if (command == 'Z') {
        if (!working) {
            return false;
        }
        icon.strokes.back().closed = true;
        working = false;
        return true;
    }
    if (command == 'M') {
        if (const auto n = reader.numbers<2>()) {
            begin(false).points.push_back({(*n)[0], (*n)[1]});
            working = true;
            return true;
        }
    } else if (command == 'L') {
        if (const auto n = reader.numbers<2>(); n && working) {
            icon.strokes.back().points.push_back({(*n)[0], (*n)[1]});
            return true;
        }
    } else if (command == 'C') {
        if (const auto n = reader.numbers<6>(); n && working) {
            add_cubic(icon.strokes.back().points, {(*n)[0], (*n)[1]}, {(*n)[2], (*n)[3]}, {(*n)[4], (*n)[5]},
                      kTolerance);
            return true;
        }
    } else if (command == 'Q') {
        if (const auto n = reader.numbers<4>(); n && working) {
            add_quadratic(icon.strokes.back().points, {(*n)[0], (*n)[1]}, {(*n)[2], (*n)[3]}, kTolerance);
            return true;
        }
    } else if (command == 'O') {
        if (const auto n = reader.numbers<3>()) {
            Polyline& points = begin(true).points;
            add_arc(points, {(*n)[0], (*n)[1]}, (*n)[2], 0, 360 * kDegree, kTolerance);
            points.pop_back();
            working = false;
            return true;
        }
    } else if (command == 'A') {
        if (const auto n = reader.numbers<5>()) {
            if (!working) {
                begin(false);
                working = true;
            }
            add_arc(icon.strokes.back().points, {(*n)[0], (*n)[1]}, (*n)[2], (*n)[3] * kDegree,
                    (*n)[4] * kDegree, kTolerance);
            return true;
        }
    } else if (command == 'R') {
        if (const auto n = reader.numbers<5>()) {
            begin(true).points = rounded_rect({(*n)[0], (*n)[1], (*n)[2], (*n)[3]}, (*n)[4]);
            working = false;
            return true;
        }
    } else if (command == 'D') {
        if (const auto n = reader.numbers<2>()) {
            icon.dots.push_back({(*n)[0], (*n)[1]});
            working = false;
            return true;
        }
    }
    return false;
}

} // namespace

Outcome<IconPath> read_icon_path(std::string_view text) {
    Reader reader(text);
    IconPath icon;
    char command = 0;
    bool working = false;
    while (!reader.done()) {
        if (reader.at_letter()) {
            command = reader.letter();
            working = working && command != 'M';
        } else if (command == 'M') {
            command = 'L'; // further pairs after M are lines
        }
        if (!add_command(command, reader, icon, working)) {
            return Problem{"icon path", "letter " + std::to_string(reader.place()),
                           std::string("expected a complete '") + command + "' command"};
        }
        if (command == 'Z') {
            command = 0;
        }
    }
    return icon;
}

} // namespace lanternleaf
