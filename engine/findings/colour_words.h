// Colour words: a light's colour as people call it.
// Exists so that the guide and the findings name the colours of the parts file alike.
#pragma once

#include "words/words.h"

#include <string>

namespace lanternleaf {

/// "red" as the parts file has it, in the maker's language; a colour of a maker's own part stays as it is.
[[nodiscard]] std::string colour_words(const std::string& colour, const Words& words);

} // namespace lanternleaf
