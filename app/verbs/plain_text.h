// Plain text: what the verbs print for people: columns that line up, and nothing from a file that could steer
// a terminal.
#pragma once

#include <string>
#include <vector>

namespace lanternleaf {

/// Control characters become spaces, so that a title cannot move the cursor or break a line.
[[nodiscard]] std::string printable(const std::string& text);
/// "1 light", "7 lights".
[[nodiscard]] std::string counted(int count, const std::string& one);
/// Rows as lines, each column as wide as its widest cell (counted in characters), two spaces between.
[[nodiscard]] std::string columns(const std::vector<std::vector<std::string>>& rows,
                                  const std::string& indent);
/// "N1, S1"; empty for none.
[[nodiscard]] std::string joined(const std::vector<std::string>& items);

} // namespace lanternleaf
