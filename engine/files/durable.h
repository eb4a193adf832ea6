// Durable: the three calls that the C++ library lacks for "what was written is on the disk", and nothing
// more. Exists so that the differences between systems stay out of files.cpp. The Windows side has not been
// run yet.
#pragma once

#include <cstdio>
#include <filesystem>

namespace lanternleaf::durable {

/// As std::fopen, for any path; null with errno set when it fails.
[[nodiscard]] std::FILE* open(const std::filesystem::path& path, const char* mode);
/// Hands the flushed content of `file` to the disk; false with errno set when the disk refuses.
[[nodiscard]] bool sync(std::FILE* file);
/// Makes a rename in `folder` last. Best effort: the rename itself has succeeded, and some file systems
/// cannot.
void sync_folder(const std::filesystem::path& folder);

} // namespace lanternleaf::durable
