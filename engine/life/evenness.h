// Evenness: how bright each light is against its nearest neighbour on the sheet. Exists because the eye does
// not see millicandela, it sees that one window is dimmer than the one beside it.
#pragma once

#include "card/card.h"

#include <span>
#include <vector>

namespace lanternleaf {

/// Steps of a comparison side by side. `visibly` is one brightness bin of the LED makers (0.63, see
/// base/tolerance.h); the others are a choice between that and what no one sees: Weber's fraction for
/// brightness is about 0.08 (R. Teghtsoonian, Am. J. Psychol. 84 (1971) 71-80, from memory).
enum class Likeness { same, barely, slightly, visibly, much };

struct NeighbourLight {
    int led = 0;
    int neighbour = -1;  ///< nearest by distance; -1 when the LED is alone
    double ratio = 1.0;  ///< intensity of the dimmer one against the brighter, 0..1
    bool dimmer = false; ///< this LED is the dimmer one
    Likeness likeness = Likeness::same;
};

/// Luminous intensities per LED, in mcd; colours are compared by what the eye takes of each.
[[nodiscard]] std::vector<NeighbourLight> evenness_of(const Card& card, std::span<const double> mcd);
/// The least ratio; 1 for fewer than two lights.
[[nodiscard]] double worst_ratio(std::span<const NeighbourLight> neighbours);
[[nodiscard]] Likeness likeness_of(double ratio);
[[nodiscard]] const char* name_of(Likeness likeness);

} // namespace lanternleaf
