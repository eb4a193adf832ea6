// Desk: a card opened together with all that is known of its parts. The one place where the app and the
// command line start, so that both read the same files the same way.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "card/parts.h"

#include <string>

namespace lanternleaf {

struct OpenCard {
    Card card;
    Parts parts; ///< the shipped ones with the card's own laid over
    std::string path;
};

/// parts.json of the assets folder.
[[nodiscard]] Outcome<Parts> load_parts(const std::string& assets_folder);
[[nodiscard]] Outcome<OpenCard> open_card(const std::string& path, const Parts& shipped);

/// `shipped` with the own parts (learn/own_parts.h) of the library that this card lies in laid over: a card
/// in FOLDER/cards belongs to the library FOLDER. Any other card: `shipped` as it is.
[[nodiscard]] Parts parts_beside(const std::string& card_path, const Parts& shipped);

/// "harbour" from ".../harbour.card.json" or ".../harbour.json": what builds and printouts of it are named
/// after.
[[nodiscard]] std::string name_of_card_file(const std::string& path);

} // namespace lanternleaf
