// UTC: moments as the text that stands in journals and records, "2026-05-04T10:00:00Z" (ISO 8601, RFC 3339).
// Exists so that a journal reads the same in every time zone. Nothing here asks a clock; the caller brings
// the time.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace lanternleaf {

/// Seconds since 1970-01-01T00:00:00Z as text. Years outside 0000..9999 are held at that range's end.
[[nodiscard]] std::string utc_text(std::int64_t at_s);
/// The text form again as seconds; nothing when it is not exactly of that form or no such day exists.
[[nodiscard]] std::optional<std::int64_t> utc_from(const std::string& text);

/// The moment as it stands in ids and file names, "20260504-100000": they then sort by time.
[[nodiscard]] std::string utc_stamp(std::int64_t at_s);

} // namespace lanternleaf
