// Record sheet: a build's record as printed pages, with each figure on its predicted range.
#pragma once

#include "history/story.h"
#include "report/zip.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

inline constexpr std::size_t kMostPrintedPhotos = 18;

/// The PDF's bytes; the same story gives the same bytes. `fonts` empty: the built-in face.
/// Of the story's photos, those among `photos` stand at the end, up to kMostPrintedPhotos of them.
[[nodiscard]] Outcome<std::string> record_pdf(const Story& story, Paper paper, const PrintFonts& fonts,
                                              const Words& words = english(),
                                              const std::vector<CopiedFile>& photos = {});

} // namespace lanternleaf
