// Sequence: from a card to its seven steps and their moves, with the reading to expect at each.
// Exists so that a card nobody has built before still has a guide; nothing here knows any demo card.
#pragma once

#include "card/parts.h"
#include "guide/step.h"
#include "words/words.h"

namespace lanternleaf {

/// Always seven steps, in order; a step with nothing to do (no crossing, no foam) has no moves and a proof
/// that says so. Pass the card as built so far to get predictions that follow what was really done.
[[nodiscard]] std::vector<Step> make_steps(const Card& card, const Parts& parts,
                                           const Words& words = english());

/// The card as it lies on the table once `step` is done and nothing later: earlier steps' strips, patches and
/// parts only. Strips that are still waiting with a loose tail before a crossing are cut back to it.
[[nodiscard]] Card card_after(const Card& card, const Parts& parts, StepId step);

/// The strips that must wait: for each such strip of `card` (index into Card::laid) the arc length at which
/// its tail is left loose, before the first patch it has to cross.
struct Tail {
    int laid_index = 0;
    double stop_mm = 0.0;
    std::string patch; ///< id of the patch it waits for
};

[[nodiscard]] std::vector<Tail> tails(const Card& card, const Parts& parts);

} // namespace lanternleaf
