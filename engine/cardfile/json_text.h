// JSON text: a tree as people like to read and diff it: two spaces, short things on one line, one part of the
// card a line, every number in the fewest digits that read back as the same number. Exists because the
// library's printer puts each coordinate on a line of its own.
#pragma once

#include "cardfile/json_tree.h"

#include <string>

namespace lanternleaf::cardfile {

/// The whole document with a newline at its end. Ill-formed UTF-8 becomes U+FFFD, a number that is not finite
/// 0 (and an assert: it is our own bug).
[[nodiscard]] std::string pretty(const Tree& root);

/// On one line; what is read back prints the same again.
[[nodiscard]] std::string compact(const Tree& value);

/// Shortest text that reads back as the same number: "148", "0.1", "1e-20"; never "-0".
[[nodiscard]] std::string number_text(double value);
[[nodiscard]] std::string number_text(const Tree& number);

/// Appends to `object` the members of `extras` (JSON text of an object, or "") whose keys it does not have
/// yet.
void append_extras(Tree& object, const std::string& extras);

} // namespace lanternleaf::cardfile
