// Zip: several files as one, for devices that hand on one file at a time. Nothing is compressed: photos and
// PDF are already. Exists because a copy of a record is a folder, and a browser gives out files.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace lanternleaf {

/// A file of a copy; `name` may hold a folder, "photos/photo-1.jpg".
struct CopiedFile {
    std::string name;
    std::string bytes;
};

/// A ZIP archive after PKWARE's APPNOTE 6.3.3 (local headers, central directory, method 0 "stored", names in
/// UTF-8 by general purpose bit 11). Every file lies under `folder`. Stays below 4 GB, the form's own limit,
/// because each file does (files/files.h). Times are the form's zero, 1 January 1980: the same files give the
/// same bytes.
[[nodiscard]] std::string zip(const std::string& folder, const std::vector<CopiedFile>& files);

/// CRC-32 as ITU-T V.42 and ISO/IEC 3309 have it, reflected 0xEDB88320.
[[nodiscard]] std::uint32_t crc32_of(std::string_view bytes);

} // namespace lanternleaf
