// Photo pages: a record's photos as a grid with their captions, at the end of the printed record. Internal to
// report/.
#pragma once

#include "history/story.h"
#include "report/zip.h"
#include "sheets/lettering.h"
#include "sheets/paper.h"
#include "sheets/write_pdf.h"

#include <vector>

namespace lanternleaf {

/// Longest side of a printed photo in pixels: 250 dots an inch in a cell of the grid.
inline constexpr int kPrintedSide = 900;

/// Appends pages for those photos of the story whose files are among `photos` and hold a picture; the others
/// are left to the record's list. Each is written anew at kPrintedSide, which keeps the PDF small.
[[nodiscard]] std::vector<PdfPicture> add_photo_pages(const Story& story,
                                                      const std::vector<CopiedFile>& photos, Paper paper,
                                                      const SheetHead& head, const Lettering& lettering,
                                                      const Words& words, std::vector<Page>& pages);

} // namespace lanternleaf
