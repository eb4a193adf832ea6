// Part words: what a tape, a colour, a package or a holder is called in front of a maker.
// Exists because a part is kept by its id ("copper-5"), which is no word of any language; parts of one's own
// have no translation and are called by their id.
#pragma once

#include "words/words.h"

#include <string>

namespace lanternleaf {

/// "copper 5" of the id "copper-5": the message "part." and the id where there is one, else the id, spaced.
[[nodiscard]] std::string spoken_part(const std::string& id, const Words& words);

/// With a capital at the front, as at the beginning of a line: ASCII and the letters of Latin-1.
[[nodiscard]] std::string capital(std::string words);

} // namespace lanternleaf
