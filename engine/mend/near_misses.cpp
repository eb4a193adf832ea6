#include "geometry/ribbon.h"
#include "mend/model.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// A hair of foil or a burr is a few millimetres long at most (common practice).
constexpr double kReach_mm = 8.0;
// A crossing has its own candidate; this far round it nothing is added.
constexpr double kRoundCrossing_mm = 14.0;

} // namespace

std::vector<NearMiss> near_misses(const Conductors& conductors, std::size_t most) {
    std::vector<NearMiss> found;
    const int count = static_cast<int>(conductors.strips.size());
    for (int a = 0; a < count; ++a) {
        const Ribbon& first = conductors.strips[static_cast<std::size_t>(a)].ribbon;
        for (int b = a + 1; b < count; ++b) {
            const Ribbon& second = conductors.strips[static_cast<std::size_t>(b)].ribbon;
            if (conductors.net_of_strip[static_cast<std::size_t>(a)] ==
                    conductors.net_of_strip[static_cast<std::size_t>(b)] ||
                !first.box.grown(kReach_mm).touches(second.box)) {
                continue;
            }
            NearMiss best{a, b, kReach_mm, {}};
            bool any = false;
            for (const Run& one : first.runs) {
                for (const Run& other : second.runs) {
                    const Nearest here = nearest(one.outline, other.outline);
                    if (here.mm >= best.mm || here.mm <= 0.0) {
                        continue;
                    }
                    const Vec2 at_mm = (here.on_a + here.on_b) * 0.5;
                    const bool at_crossing = std::any_of(
                        conductors.overlaps.begin(), conductors.overlaps.end(), [&](const Overlap& overlap) {
                            const bool ours = (overlap.lower == a && overlap.upper == b) ||
                                              (overlap.lower == b && overlap.upper == a);
                            return ours && distance(overlap.at_mm, at_mm) < kRoundCrossing_mm;
                        });
                    if (!at_crossing) {
                        best.mm = here.mm;
                        best.at_mm = at_mm;
                        any = true;
                    }
                }
            }
            if (any) {
                found.push_back(best);
            }
        }
    }
    std::sort(found.begin(), found.end(), [](const NearMiss& x, const NearMiss& y) { return x.mm < y.mm; });
    if (found.size() > most) {
        found.resize(most);
    }
    return found;
}

} // namespace lanternleaf
