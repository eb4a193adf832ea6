// Labels: finds a place for each name on the plan where it hides least.
// Exists so that L1 stands beside its light, not on a trace, whatever card is printed. Internal to sheets/.
#pragma once

#include "geometry/convex.h"

#include <vector>

namespace lanternleaf {

/// What a label should keep off, and how much it matters per mm2.
struct Obstacle {
    Convex shape;
    Box box;
    double weight = 1.0;
};

class LabelPlacer {
public:
    explicit LabelPlacer(Box within) : within_(within) {}

    void avoid(const Convex& shape, double weight);
    /// The centre for a label of `size_mm`: of `candidates` the one that covers least (earlier ones win
    /// ties). What is placed is avoided by later labels.
    Vec2 put(Vec2 size_mm, const std::vector<Vec2>& candidates);
    /// Whether something placed or avoided lies within `by_mm` of p.
    [[nodiscard]] bool is_near(Vec2 p, double by_mm, double least_weight) const;

private:
    [[nodiscard]] double cost(Vec2 at_mm, Vec2 size_mm) const;

    Box within_;
    std::vector<Obstacle> obstacles_;
};

/// Centres round a part of `half_mm` (half its width and height as it lies): sides first, then corners, then
/// the same farther out.
[[nodiscard]] std::vector<Vec2> round_about(Vec2 at_mm, Vec2 half_mm, Vec2 label_mm);

} // namespace lanternleaf
