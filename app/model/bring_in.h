// Bring in: cards from outside (a folder or files dropped on the window, files picked in a browser) into the
// library. Exists so that what comes from outside is checked to its end before anything is written, and
// nothing that is there is written over (exchange/bundle.h).
#pragma once

#include "exchange/bundle.h"
#include "model/library.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// The folders of this library for keep_bundle().
[[nodiscard]] CardFolders card_folders(const Surroundings& around);

/// Checks the card and writes it to the library's cards, as it came. Gives the name it has there: the file's
/// own, with a number behind it when a different card of that name is there or shipped; the same card twice
/// is kept once.
[[nodiscard]] Outcome<std::string> bring_in_card(const Surroundings& around, const std::string& file_name,
                                                 const std::string& content);

/// Whatever comes from outside at one time: a card with its pictures is brought in, the shelf shows it and a
/// sentence says what happened; pictures alone go to take_picture().
void bring_in_files(AppState& state, const Surroundings& around, const std::vector<LooseFile>& files);
/// The same of a folder.
void bring_in_folder(AppState& state, const Surroundings& around, const std::string& folder);
/// The same of one file.
void bring_in(AppState& state, const Surroundings& around, const std::string& file_name,
              const std::string& content);

} // namespace lanternleaf
