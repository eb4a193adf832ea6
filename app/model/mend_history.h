// Mend history: how often each kind of fault was mended in this library.
// Exists so that Mend's priors follow the maker's own cards; read from the journals, kept nowhere else.
#pragma once

#include "mend/past_mends.h"

#include <string>

namespace lanternleaf {

struct MendHistory {
    PastMends past;
    int mends = 0;
};

/// From every journal in the library's folder of builds, builds that the engine walked through left out. A
/// journal that cannot be read tells nothing here; the shelf names it.
[[nodiscard]] MendHistory read_mend_history(const std::string& library);

} // namespace lanternleaf
