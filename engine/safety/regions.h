// Regions: whom to call when a coin cell may have been swallowed, by country, from a file that can be put
// right without a new program. Exists because countries differ in what they tell people to do first.
#pragma once

#include "base/outcome.h"
#include "words/words.h"

#include <map>
#include <string>
#include <vector>

namespace lanternleaf {

/// What of a region is told in another language; the numbers stay.
struct RegionWords {
    std::string name;
    std::string help_name;
    std::string first;
    std::string food;
};

struct Region {
    std::string id;
    std::string name;
    std::string ambulance; ///< may be empty: "your local emergency number"
    std::string help_name; ///< poison line; may be empty
    std::string help;
    std::string first;                     ///< what to do first, one or two sentences
    std::string food;                      ///< what to do about food and drink
    std::string source;                    ///< where the line was read
    std::map<std::string, RegionWords> in; ///< by language: "de"
};

struct RegionTable {
    std::string checked;                               ///< ISO date of the last check
    std::string checked_how;                           ///< what that check was, in plain words
    std::map<std::string, std::string> checked_how_in; ///< by language
    std::vector<Region> regions;
};

/// A Problem names the place and what was expected. At least one region, with the id "any", must be there.
[[nodiscard]] Outcome<RegionTable> read_regions(const std::string& text, const std::string& file);
/// The region with this id, else "any".
[[nodiscard]] const Region& region_of(const RegionTable& table, const std::string& id);
/// What to do anywhere, for when there is no table.
[[nodiscard]] Region built_in_region(const Words& words = english());
/// The region as it is told in that language; where the file has not got it, as it is (English).
[[nodiscard]] Region told(const Region& region, const Words& words);
[[nodiscard]] std::string checked_how(const RegionTable& table, const Words& words);
/// "25 November 2026" from "2026-11-25"; the text itself when it is not such a date.
[[nodiscard]] std::string spoken_date(const std::string& iso_date, const Words& words = english());
/// "25 Nov": where the year is told elsewhere.
[[nodiscard]] std::string short_date(const std::string& iso_date, const Words& words = english());

} // namespace lanternleaf
