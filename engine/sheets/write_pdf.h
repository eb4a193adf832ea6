// Write PDF: pages in millimetres to the bytes of a PDF file (libharu).
// The same pages give the same bytes: no clock, no random name; dates stand in it only when given.
#pragma once

#include "sheets/lettering.h"
#include "sheets/page.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct PdfInfo {
    std::string title;
    std::string subject;
};

/// A photo on one of the pages, under its marks: baseline JPEG in RGB, stretched to fill the box.
struct PdfPicture {
    std::size_t page = 0; ///< from 0
    Box box_mm;
    std::string jpeg;
};

/// The faces of `lettering` are embedded (only the glyphs used); the built-in face is not. Every page opens
/// at its own size with print scaling off where the viewer heeds it.
[[nodiscard]] Outcome<std::string> write_pdf(const std::vector<Page>& pages, const Lettering& lettering,
                                             const PdfInfo& info,
                                             const std::vector<PdfPicture>& pictures = {});

} // namespace lanternleaf
