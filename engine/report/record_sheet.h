// Record sheet: a build's record as printed pages, with each figure on its predicted range.
#pragma once

#include "history/story.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

/// The PDF's bytes; the same story gives the same bytes. `fonts` empty: the built-in face.
[[nodiscard]] Outcome<std::string> record_pdf(const Story& story, Paper paper, const PrintFonts& fonts,
                                              const Words& words = english());

} // namespace lanternleaf
