// Bundle: a card that someone sent, with its pictures: checked from end to end while nothing is written, then
// kept under names of this library. Exists because what comes from outside is never trusted: not its names,
// not its sizes, not its pictures. Sentences are for the maker, in their words: which file, where, what was
// expected.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "words/words.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// A file as it was found, dropped or picked. Only the last part of a name with separators counts.
struct LooseFile {
    std::string name;
    std::string bytes;
};

inline constexpr std::size_t kMostLooseFiles = 40;
inline constexpr std::size_t kMostCardBytes = 4U * 1024U * 1024U;
inline constexpr std::size_t kMostBundleBytes = 96U * 1024U * 1024U;

/// The files of a folder, nothing below it. Refused: no folder, a link or device in it, too many files, one
/// that is too large. Files that are neither card nor picture are passed over unread.
[[nodiscard]] Outcome<std::vector<LooseFile>> read_bundle_folder(const std::string& folder,
                                                                 const Words& words = english());

/// A card with what belongs to it, all checked. Pictures are PNGs of our own (exchange/plain_picture.h).
struct CardBundle {
    std::string stem; ///< wished name: small letters, digits, dashes
    Card card;
    std::string text;  ///< the card's file as it came
    std::string art;   ///< the picture under the plan; empty when it did not come
    std::string front; ///< the picture on the shelf; empty when it did not come
    bool art_missing = false;
};

/// Exactly one card, and of the pictures those that it names or that are named after it. `shipped` supplies
/// the types that the card does not bring itself.
[[nodiscard]] Outcome<CardBundle> check_bundle(const std::vector<LooseFile>& files, const Parts& shipped,
                                               const Words& words = english());

/// Where cards lie, and whose names are taken besides.
struct CardFolders {
    std::string library;       ///< its folder "cards" is made when it is missing
    std::string shipped_cards; ///< a card of a name from here would hide the shipped one
};

struct KeptCard {
    std::string name; ///< file name without its ending
    bool was_there = false;
};

/// Writes pictures first, the card last: the card is there whole with all that is its own, or not at all. A
/// name that is taken gets a number; the same card twice is kept once. On a Problem what was written is taken
/// away again.
[[nodiscard]] Outcome<KeptCard> keep_bundle(const CardBundle& bundle, const CardFolders& folders);

/// A card with its pictures as files to send: NAME.card.json, its art and its shelf picture out of `folder`,
/// under the names that check_bundle() looks for. `known` supplies the own parts it must carry.
[[nodiscard]] std::vector<LooseFile> pack_card(const Card& card, const std::string& name,
                                               const std::string& folder, const Parts& known);

} // namespace lanternleaf
