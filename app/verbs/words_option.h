// Words option: `--language` and `--inches` of the verbs that speak to a maker. Exists so that a sheet can be
// printed, and a build walked, in the language and lengths of whoever will read it. JSON stays as it is.
#pragma once

#include "verbs/verb.h"
#include "words/words.h"

namespace lanternleaf {

/// The two rows for a verb's arguments.
inline const Argument kLanguageOption = {"--language", "en|de|es",
                                         "what is written for people; en unless said"};
inline const Argument kInchesOption = {"--inches", nullptr, "lengths for people in inches"};

/// English where nothing is asked, and with `--json`. The Problem names an option or a words file.
[[nodiscard]] Outcome<Words> asked_words(const Arguments& args, const VerbSurroundings& around);

} // namespace lanternleaf
