// Readings table: a build's readings as comma-separated values for a spreadsheet.
#pragma once

#include "history/story.h"

#include <string>

namespace lanternleaf {

/// RFC 4180: one header line, lines end in CR LF, a field with a comma, quote or line end stands in quotes
/// and a quote in it is doubled. UTF-8. A field that a spreadsheet would take for a formula (it opens with
/// = + - @) gets a leading apostrophe, as common practice has it; numbers are left alone.
[[nodiscard]] std::string readings_table(const Story& story);

/// One field, quoted where it must be.
[[nodiscard]] std::string csv_field(const std::string& text);

} // namespace lanternleaf
