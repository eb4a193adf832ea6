// On disk: two questions about a path. Internal to exchange/.
#pragma once

#include <string>

namespace lanternleaf::exchange {

/// Anything at all, a dangling link too.
[[nodiscard]] bool is_there(const std::string& path);
/// A file of exactly these bytes.
[[nodiscard]] bool holds(const std::string& path, const std::string& bytes);

} // namespace lanternleaf::exchange
