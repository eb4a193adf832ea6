// Route report: `route --json`. Exists apart from the other reports since it tells of a card that is being
// made.
#pragma once

#include "routing/route.h"

#include <string>

namespace lanternleaf {

/// `file` is where the card was written; null in the report when there was none to write.
[[nodiscard]] std::string route_report(const RouteResult& result, const std::string& file);

} // namespace lanternleaf
