#include "routing/other_holder.h"

#include "findings/review.h"
#include "routing/route.h"

namespace lanternleaf {

Rehoused with_other_holder(const Card& card, const Parts& parts, const std::string& holder) {
    Rehoused out{card, false, false};
    out.card.holder.type = holder;
    if (review(out.card, parts).count(Level::problem) == 0) {
        out.sound = true;
        return out;
    }
    for (const double turn_deg : {0.0, 180.0, 90.0, 270.0}) {
        RouteRequest request;
        request.card = out.card;
        request.card.holder.turn_deg = card.holder.turn_deg + turn_deg;
        request.parts = parts;
        RouteResult found = route(request);
        if (found.clean()) {
            return {std::move(found.suggestions.front().card), true, true};
        }
    }
    return out;
}

} // namespace lanternleaf
