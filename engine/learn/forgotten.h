// Forgotten: the small file by which a maker takes back what was learnt of a part, NAME.forgotten.json.
// Internal to learn/.
#pragma once

#include "learn/learnt.h"

#include <string>
#include <vector>

namespace lanternleaf {

inline constexpr const char* kForgottenEnding = ".forgotten.json";

struct Forgotten {
    PartSort sort = PartSort::led;
    std::string id;
    std::string at; ///< readings up to and with this moment no longer count
};

/// {"lanternleaf":1,"kind":"forgotten","sort":"tape","id":"copper-5","at":"2026-05-04T10:00:00Z"}
[[nodiscard]] std::string write_forgotten(const Forgotten& forgotten);
/// All of a folder; files that cannot be read go to `aside`.
[[nodiscard]] std::vector<Forgotten> load_forgotten(const std::string& folder, std::vector<Problem>& aside);

} // namespace lanternleaf
