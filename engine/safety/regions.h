// Regions: whom to call when a coin cell may have been swallowed, by country, from a file that can be put
// right without a new program. Exists because countries differ in what they tell people to do first.
#pragma once

#include "base/outcome.h"

#include <string>
#include <vector>

namespace lanternleaf {

struct Region {
    std::string id;
    std::string name;
    std::string ambulance; ///< may be empty: "your local emergency number"
    std::string help_name; ///< poison line; may be empty
    std::string help;
    std::string first;  ///< what to do first, one or two sentences
    std::string food;   ///< what to do about food and drink
    std::string source; ///< where the line was read
};

struct RegionTable {
    std::string checked;     ///< ISO date of the last check
    std::string checked_how; ///< what that check was, in plain words
    std::vector<Region> regions;
};

/// A Problem names the place and what was expected. At least one region, with the id "any", must be there.
[[nodiscard]] Outcome<RegionTable> read_regions(const std::string& text, const std::string& file);
/// The region with this id, else "any".
[[nodiscard]] const Region& region_of(const RegionTable& table, const std::string& id);
/// "25 November 2026" from "2026-11-25"; the text itself when it is not such a date.
[[nodiscard]] std::string spoken_date(const std::string& iso_date);

} // namespace lanternleaf
