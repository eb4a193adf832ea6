// Beside: a file that belongs to a card, put next to it. Exists so that every place that keeps a picture
// beside a card does it in one way: nothing that is there is written over, and no card ends up with the
// picture of another.
#pragma once

#include "base/outcome.h"

#include <string>

namespace lanternleaf {

/// Whether a name can stand for a file beside a card on every system: one line, no separator, no colon, no
/// two dots together, not hidden, no name that Windows keeps for devices; at most 100 bytes of UTF-8.
[[nodiscard]] bool is_plain_file_name(const std::string& name);

/// The name under which `bytes` would lie in `folder`: `wish` when nothing is there or the same bytes are,
/// else with "-2", "-3" before its ending.
[[nodiscard]] std::string name_beside(const std::string& folder, const std::string& wish,
                                      const std::string& bytes);

/// Writes the file there, on the disk when this returns, and gives its name. Bytes that lie there already are
/// left alone.
[[nodiscard]] Outcome<std::string> put_beside(const std::string& folder, const std::string& wish,
                                              const std::string& bytes);

/// The same for a file that lies elsewhere. A Problem when it cannot be read.
[[nodiscard]] Outcome<std::string> copy_beside(const std::string& from, const std::string& folder,
                                               const std::string& wish);

} // namespace lanternleaf
