// Files: the engine's only touch of the file system: whole files in, whole files out, all or nothing.
#pragma once

#include "base/outcome.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// Larger files are refused before they are read: no card, parts file or journal comes near it.
inline constexpr std::size_t kMostBytes = 32U * 1024U * 1024U;

/// A file of more than `most` bytes is refused; none is read past kMostBytes.
[[nodiscard]] Outcome<std::string> read_file(const std::string& path, std::size_t most = kMostBytes);
/// Writes beside `path`, syncs, and renames over it: afterwards the file is the old one or the new one,
/// whole.
[[nodiscard]] Outcome<Done> write_file(const std::string& path, const std::string& content);
[[nodiscard]] Outcome<Done> make_folder(const std::string& path);
/// Whether anything has that name, a folder too.
[[nodiscard]] bool path_exists(const std::string& path);
/// Names (not paths) of the files in a folder that end in `ending`, sorted. A missing folder is empty.
[[nodiscard]] std::vector<std::string> files_in(const std::string& folder, const std::string& ending);

} // namespace lanternleaf
