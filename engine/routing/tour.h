// Tour: the shortest open path through places, beginning at the first. Exists for the order in which a ribbon
// starts its search, and for the bound that its length is told against.
#pragma once

#include "geometry/vec2.h"

#include <span>
#include <vector>

namespace lanternleaf::routing_stages {

struct Tour {
    std::vector<int> order; ///< of `places`, the first being 0
    double length_mm = 0.0;
    bool exact = false;
};

/// Held and Karp's dynamic programme (1962) up to `kExactPlaces` places; above that nearest neighbour, then
/// 2-opt and moves of up to three places (or-opt) until neither helps.
inline constexpr std::size_t kExactPlaces = 13;
[[nodiscard]] Tour short_tour(std::span<const Vec2> places);
/// The heuristic alone.
[[nodiscard]] Tour quick_tour(std::span<const Vec2> places);

} // namespace lanternleaf::routing_stages
