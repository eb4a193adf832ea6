// Learn words: what was learnt, in one line for the maker, the list and a build's record.
#pragma once

#include "learn/learnt.h"
#include "learn/own_parts.h"
#include "words/words.h"

#include <string>

namespace lanternleaf {

/// "Carrier white", from a part's id.
[[nodiscard]] std::string part_name(const std::string& id);

/// "Copper 5: its glue conducts. A joint as long as it is wide has 0.3 Ω." `planned`: the id it was taken
/// for; another colour is then named.
[[nodiscard]] std::string learnt_line(const Words& words, const Learnt& learnt,
                                      const std::string& planned = "");
/// The same of a part in force.
[[nodiscard]] std::string learnt_line(const Words& words, const OwnPart& part, const Parts& known);

} // namespace lanternleaf
