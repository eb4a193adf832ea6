// Print desk: what a printout takes from files: the faces, and what a maker pays. Exists so that the app and
// the command line find both in the same way.
#pragma once

#include "base/outcome.h"
#include "cardfile/prices.h"
#include "sheets/lettering.h"

#include <string>

namespace lanternleaf {

/// The faces that lie in a folder beside the other assets; the built-in one where they do not.
[[nodiscard]] PrintFonts print_fonts_in(const std::string& folder);
[[nodiscard]] Outcome<Prices> load_prices(const std::string& path);

} // namespace lanternleaf
