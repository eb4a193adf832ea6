// Lay: from ribbons to strips and patches on the card: corners on the grid, pads on tape, a patch at every
// crossing, strips in the order in which hands lay them.
#pragma once

#include "routing/starts.h"

namespace lanternleaf::routing_stages {

struct Layer {
    const Card* card = nullptr; ///< as asked for
    const Parts* parts = nullptr;
    const Card* kept = nullptr; ///< the same card with only what stays laid
    const WeaveTask* task = nullptr;
};

struct LaidCard {
    Card card;
    std::vector<std::string> laid; ///< ids of the strips and patches that were added
    std::vector<std::string> turned;
};

/// Of task->stops each that a ribbon goes through is turned as the ribbon needs it.
[[nodiscard]] LaidCard lay(const Layer& layer, const std::vector<Woven>& ribbons);

} // namespace lanternleaf::routing_stages
