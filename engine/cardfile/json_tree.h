// JSON tree: text to a tree of values, refusing what a broken or hostile file can do before anything walks
// it. Exists apart from the readers so that depth, size, encoding and repeated keys are settled once. Private
// to files of this module; the exception below never leaves it.
#pragma once

#include "base/outcome.h"

#include <cstddef>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace lanternleaf::cardfile {

/// Keeps the order of keys, so that what a later version added is written back as it stood.
using Tree = nlohmann::ordered_json;

/// The one way out of a reader when the file is not as it should be. `file` is filled in at the module's
/// face.
struct Refused {
    Problem problem;
};

/// The bounds within which a file is taken at all; far beyond any card, well within any tablet's memory.
inline constexpr std::size_t kMostTextBytes = 32U * 1024U * 1024U;
inline constexpr std::size_t kMostDepth = 64;
inline constexpr std::size_t kMostValues = 2'000'000;

/// Throws Refused: syntax problems name line and column, the others the JSON place. A key that stands twice
/// in one object is refused, because keeping either value would lose the other.
[[nodiscard]] Tree parse_tree(const std::string& text);

/// `place` and one more key or index, as a JSON pointer (RFC 6901: "~" is "~0", "/" is "~1"). Long keys are
/// shortened and control characters shown as "?", because the result is read by people.
[[nodiscard]] std::string place_below(const std::string& place, std::string_view key);
[[nodiscard]] std::string place_below(const std::string& place, std::size_t index);

/// At most `most` characters of UTF-8 text, fit to stand in a sentence: one line, no control characters, "…"
/// at a cut.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t most);
/// Characters (code points) in UTF-8 text.
[[nodiscard]] std::size_t characters(std::string_view text);

} // namespace lanternleaf::cardfile
