// Bring in: a card file from outside (dropped on the window, picked in a browser) into the library.
// Exists so that what comes from outside is read whole before anything is written, and nothing that is there
// is written over.
#pragma once

#include "model/library.h"

#include <string>

namespace lanternleaf {

/// Checks the card and writes it to the library's cards, as it came. Gives the name it has there: the file's
/// own, with a number behind it when a different card of that name is there or shipped; the same card twice
/// is kept once.
[[nodiscard]] Outcome<std::string> bring_in_card(const Surroundings& around, const std::string& file_name,
                                                 const std::string& content);

/// Whatever comes from outside: a picture goes to take_picture(); a card is brought in, the shelf shows it,
/// and a sentence says what happened.
void bring_in(AppState& state, const Surroundings& around, const std::string& file_name,
              const std::string& content);

} // namespace lanternleaf
