// Record page: a build's record as one HTML page that a screen reader reads well and a printer prints.
// Exists so that a record can be read without this program. No script, no style that hides anything, nothing
// loaded from elsewhere but the photos beside it.
#pragma once

#include "history/story.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

/// HTML 5, UTF-8, well-formed as XML too (so that strict readers take it). Headings run h1, h2 without a
/// gap; tables have a caption and headers with scope; photos have their caption as alternative text.
[[nodiscard]] std::string record_page(const Story& story, const Words& words = english());

} // namespace lanternleaf
