// Other holder: a card whose cell is to be held another way, with traces that reach the new holder's
// contacts. Exists because a holder that a small child cannot open has its pads elsewhere: swapping it alone
// leaves both traces ending on bare paper.
#pragma once

#include "card/card.h"
#include "card/parts.h"

#include <string>

namespace lanternleaf {

struct Rehoused {
    Card card;          ///< with the other holder; lights stay where they are, though some may be turned
    bool sound = false; ///< no problems; else the traces are as they were and must be laid by hand
    bool laid_anew = false;
};

/// The holder keeps its place; its direction is changed when no way is found otherwise.
[[nodiscard]] Rehoused with_other_holder(const Card& card, const Parts& parts, const std::string& holder);

} // namespace lanternleaf
