// Haru: a libharu document that frees itself, with both faces loaded. Internal to sheets/; the only header
// that names the library. Errors do not jump: libharu keeps the first one and the caller asks for it at the
// end.
#pragma once

#include "base/outcome.h"
#include "sheets/lettering.h"

#include <hpdf.h>
#include <memory>

namespace lanternleaf {

struct FreeDocument {
    void operator()(HPDF_Doc document) const { HPDF_Free(document); }
};

struct Haru {
    std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, FreeDocument> document;
    HPDF_Font face[2] = {nullptr, nullptr}; ///< regular, bold
};

inline constexpr double kPointsPerMm = 72.0 / 25.4;

[[nodiscard]] Outcome<Haru> open_haru(const PrintFonts& files);

} // namespace lanternleaf
