#include "life/evenness.h"

#include "base/tolerance.h"

#include <algorithm>
#include <cassert>

namespace lanternleaf {

Likeness likeness_of(double ratio) {
    if (ratio >= 0.92) {
        return Likeness::same;
    }
    if (ratio >= 0.80) {
        return Likeness::barely;
    }
    if (ratio >= tolerance::kPlainlyDimmer) {
        return Likeness::slightly;
    }
    return ratio >= 0.25 ? Likeness::visibly : Likeness::much;
}

const char* name_of(Likeness likeness) {
    switch (likeness) {
    case Likeness::same:
        return "same";
    case Likeness::barely:
        return "barely different";
    case Likeness::slightly:
        return "slightly different";
    case Likeness::visibly:
        return "visibly different";
    case Likeness::much:
        break;
    }
    return "much different";
}

std::vector<NeighbourLight> evenness_of(const Card& card, std::span<const double> mcd) {
    assert(mcd.size() == card.leds.size());
    std::vector<NeighbourLight> all;
    for (std::size_t i = 0; i < card.leds.size(); ++i) {
        NeighbourLight one;
        one.led = static_cast<int>(i);
        double nearest_mm = 1e300;
        for (std::size_t j = 0; j < card.leds.size(); ++j) {
            const double mm = distance(card.leds[i].at_mm, card.leds[j].at_mm);
            if (j != i && mm < nearest_mm) {
                nearest_mm = mm;
                one.neighbour = static_cast<int>(j);
            }
        }
        if (one.neighbour >= 0) {
            const double own = std::max(mcd[i], 0.0);
            const double other = std::max(mcd[static_cast<std::size_t>(one.neighbour)], 0.0);
            const double most = std::max(own, other);
            one.ratio = most > 0.0 ? std::min(own, other) / most : 1.0;
            one.dimmer = own < other;
            one.likeness = likeness_of(one.ratio);
        }
        all.push_back(one);
    }
    return all;
}

double worst_ratio(std::span<const NeighbourLight> neighbours) {
    double worst = 1.0;
    for (const NeighbourLight& one : neighbours) {
        worst = std::min(worst, one.ratio);
    }
    return worst;
}

} // namespace lanternleaf
