// Lettering: the typeface of the printed sheets: how wide words are, where lines break, what can be shown.
// Exists so that pages are laid out with the measures the PDF will use, and so that any title, however long
// or strange, ends inside its column.
#pragma once

#include "base/outcome.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace lanternleaf {

/// TrueType files; both empty for the built-in face, which knows Western European letters only.
struct PrintFonts {
    std::string regular;
    std::string bold;
};

/// One line of clean UTF-8 of at most `most` characters: control characters become spaces, what is not UTF-8
/// and what lies beyond the basic plane (which the PDF writer cannot encode) becomes U+FFFD, a cut ends in
/// "…".
[[nodiscard]] std::string clean_text(std::string_view text, std::size_t most = 2'000);

class Lettering {
public:
    /// The Problem names the file that cannot be used.
    [[nodiscard]] static Outcome<Lettering> open(const PrintFonts& files);

    /// Width of one line.
    [[nodiscard]] double width_mm(const std::string& text, double size_mm, bool bold = false) const;
    /// Broken at spaces, or within a word that is wider than the column; "…" ends the last of `most_lines`.
    [[nodiscard]] std::vector<std::string> lines(const std::string& text, double size_mm, double column_mm,
                                                 bool bold = false, std::size_t most_lines = 1'000) const;
    /// One line, cut with "…" to fit.
    [[nodiscard]] std::string fitted(const std::string& text, double size_mm, double column_mm,
                                     bool bold = false) const;
    [[nodiscard]] const PrintFonts& files() const;
    /// The text as the face can show it: for the built-in one, signs it lacks in other words ("Ω" is "ohm").
    [[nodiscard]] std::string shown(const std::string& text) const;

private:
    struct Face;

    explicit Lettering(std::shared_ptr<const Face> face) : face_(std::move(face)) {}

    std::shared_ptr<const Face> face_;
};

} // namespace lanternleaf
