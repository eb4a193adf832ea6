// Strip changes: what may happen to a strip on the table. Internal to guide/; see change.h for what each
// means. A strip that was cut or torn goes on as several: "N1", "N1b", "N1c"; pieces laid over it are "N1r",
// "N1r2". A later change to "N1" means whichever of these lies nearest to the place it names.
#pragma once

#include "guide/change.h"

namespace lanternleaf {

[[nodiscard]] Outcome<Card> change_strip(const Card& card, const Parts& parts, const Change& change);
/// A patch on top of the strip's piece nearest to the place.
[[nodiscard]] Outcome<Card> add_patch(const Card& card, const Parts& parts, const Change& change);
/// Whether `id` is the strip `base` or one of its pieces; pieces laid over it count only with `repairs`.
[[nodiscard]] bool is_piece_of(const std::string& id, const std::string& base, bool repairs);
/// "the card has no strip N9" as a Problem.
[[nodiscard]] Problem no_such(const char* what, const std::string& id);

} // namespace lanternleaf
