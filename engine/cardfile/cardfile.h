// Card file: cards and parts to and from the JSON of format.md (assets/schema has the same as JSON Schema).
// Exists so that a file anyone wrote either becomes a Card that every later stage can trust, or one clear
// sentence. Unknown keys are kept through a load and save; a file of a newer version is refused and left
// alone.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "card/parts.h"

#include <string>

namespace lanternleaf {

/// The version of card, parts and record files that this program reads and writes.
inline constexpr int kFileVersion = 1;

/// `file` is only for naming in a Problem. `shipped` supplies the types a card names; a card that names one
/// that neither it nor `shipped` has is refused with the place.
[[nodiscard]] Outcome<Card> read_card(const std::string& text, const std::string& file, const Parts& shipped);
[[nodiscard]] Outcome<Parts> read_parts(const std::string& text, const std::string& file);
/// A maker's own parts: as read_parts, but an LED may name a package of `shipped`.
[[nodiscard]] Outcome<Parts> read_own_parts(const std::string& text, const std::string& file,
                                            const Parts& shipped);
/// Pretty JSON, two spaces, keys in format.md's order, unknown keys last, newline at the end.
[[nodiscard]] std::string write_card(const Card& card);
[[nodiscard]] std::string write_parts(const Parts& parts);

} // namespace lanternleaf
