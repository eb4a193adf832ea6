#include "sheets/labels.h"

namespace lanternleaf {

namespace {

constexpr double kOutside = 30.0;    // weight of leaving the sheet
constexpr double kPlaced = 40.0;     // of covering another label
constexpr double kLater = 0.02;      // what each later candidate costs, so that ties are settled
constexpr double kLabelGap_mm = 0.8; // between a part and its label

} // namespace

void LabelPlacer::avoid(const Convex& shape, double weight) {
    if (!shape.empty()) {
        obstacles_.push_back({shape, bounds(shape), weight});
    }
}

double LabelPlacer::cost(Vec2 at_mm, Vec2 size_mm) const {
    const Convex label = rectangle(at_mm, size_mm, 0.0);
    const Box box = bounds(label);
    double sum = 0.0;
    for (const Obstacle& one : obstacles_) {
        if (one.box.touches(box)) {
            sum += one.weight * area(clip(label, one.shape));
        }
    }
    const Vec2 size = within_.max - within_.min;
    const Convex inside = rectangle(within_.min + size * 0.5, size, 0.0);
    return sum + kOutside * (area(label) - area(clip(label, inside)));
}

Vec2 LabelPlacer::put(Vec2 size_mm, const std::vector<Vec2>& candidates) {
    Vec2 best = candidates.empty() ? within_.min : candidates.front();
    double least = 1e300;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        const double here = cost(candidates[i], size_mm) + kLater * static_cast<double>(i);
        if (here < least) {
            least = here;
            best = candidates[i];
        }
    }
    avoid(rectangle(best, size_mm, 0.0), kPlaced);
    return best;
}

bool LabelPlacer::is_near(Vec2 p, double by_mm, double least_weight) const {
    const Convex spot = rectangle(p, {2.0 * by_mm, 2.0 * by_mm}, 0.0);
    const Box box = bounds(spot);
    for (const Obstacle& one : obstacles_) {
        if (one.weight >= least_weight && one.box.touches(box) && area(clip(spot, one.shape)) > 0.0) {
            return true;
        }
    }
    return false;
}

std::vector<Vec2> round_about(Vec2 at_mm, Vec2 half_mm, Vec2 label_mm) {
    std::vector<Vec2> found;
    for (const double farther : {0.0, 2.5, 6.0, 10.0}) {
        const double dx = half_mm.x + label_mm.x / 2.0 + kLabelGap_mm + farther;
        const double dy = half_mm.y + label_mm.y / 2.0 + kLabelGap_mm + farther;
        for (const Vec2 step : {Vec2{0, -dy}, Vec2{dx, 0}, Vec2{-dx, 0}, Vec2{0, dy}, Vec2{dx, -dy},
                                Vec2{-dx, -dy}, Vec2{dx, dy}, Vec2{-dx, dy}}) {
            found.push_back(at_mm + step);
        }
    }
    return found;
}

} // namespace lanternleaf
