#include "view/board_pills.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kPillGap_mm = 0.7;
constexpr double kBadgeRadius_px = 17.0;
constexpr double kFoldRing_mm = 6.4;
// What each kind of clash costs, in millimetres of distance a pill would rather move away.
constexpr double kOnCentreLine = 400.0;
constexpr double kOverTape_per_mm2 = 2.5;
constexpr double kOverPart = 300.0;
constexpr double kOverPill = 900.0;
constexpr double kOffSheet = 900.0;
constexpr double kOverPatch = 25.0;
constexpr double kOverFlapLabel = 60.0;
constexpr double kNearerToAnother = 12.0;

struct Scene {
    const BoardView& view;
    const Conductors& conductors;
    std::vector<Convex> pills;
};

Convex pill_shape(Vec2 centre, Vec2 size) {
    return rectangle(centre, size, 0.0);
}

bool crosses(const Box& box, Vec2 a, Vec2 b) {
    const Convex window = {box.min, {box.max.x, box.min.y}, box.max, {box.min.x, box.max.y}};
    const Vec2 across = quarter_turn(unit(b - a)) * 0.01;
    return !clip(Convex{a + across, a - across, b - across, b + across}, window).empty();
}

double cost_on_tape(const Scene& scene, const Convex& pill, const Box& box) {
    double cost = 0.0;
    for (const StripShape& strip : scene.conductors.strips) {
        if (!strip.ribbon.box.touches(box)) {
            continue;
        }
        for (const Run& run : strip.ribbon.runs) {
            if (!run.box.touches(box)) {
                continue;
            }
            cost += kOverTape_per_mm2 * area(clip(pill, run.outline));
            cost += crosses(box, run.from_mm, run.to_mm) ? kOnCentreLine : 0.0;
        }
    }
    return cost;
}

double cost_of(const Scene& scene, Vec2 centre, Vec2 size, const PartView* own) {
    const Convex pill = pill_shape(centre, size);
    const Box box = bounds(pill).grown(kPillGap_mm);
    const Convex wide = pill_shape(centre, size + Vec2{2 * kPillGap_mm, 2 * kPillGap_mm});
    double cost = cost_on_tape(scene, pill, box);
    const Vec2 sheet = scene.view.sheet_mm;
    if (box.min.x < 0.0 || box.min.y < 0.0 || box.max.x > sheet.x || box.max.y > sheet.y) {
        cost += kOffSheet;
    }
    for (const PartView& part : scene.view.parts) {
        const Convex body = rectangle(part.at_mm, {part.length_mm, part.width_mm}, part.turn_deg);
        cost += clip(body, wide).empty() ? 0.0 : kOverPart;
        if (own != nullptr && &part != own &&
            distance(part.at_mm, centre) < distance(own->at_mm, centre) + 1.0) {
            cost += kNearerToAnother;
        }
    }
    for (const PatchView& patch : scene.view.patches) {
        const Convex shape = rectangle(patch.at_mm, patch.size_mm, patch.turn_deg);
        cost += clip(shape, pill).empty() ? 0.0 : kOverPatch;
    }
    const HolderView& holder = scene.view.holder;
    const Vec2 disc{2 * holder.cell_radius_mm, 2 * holder.cell_radius_mm};
    cost += clip(rectangle(holder.bed_mm, disc, 0.0), pill).empty() ? 0.0 : kOverPatch;
    if (holder.flap) {
        cost += clip(rectangle(holder.label_mm, {26.0, 4.5}, 0.0), pill).empty() ? 0.0 : kOverFlapLabel;
    }
    for (const Convex& other : scene.pills) {
        cost += clip(other, wide).empty() ? 0.0 : kOverPill;
    }
    return cost;
}

/// The cheapest place round `from`; ways are tried in the order of the sixteen compass points from straight
/// up.
Vec2 best_place(const Scene& scene, Vec2 from, Vec2 size, const PartView* own, double nearest_mm) {
    constexpr int kWays = 16;
    constexpr double kStep_mm = 0.75;
    constexpr double kFarthest_mm = 24.0;
    Vec2 best = from;
    double least = 1e300;
    for (int way = 0; way < kWays; ++way) {
        const int turn = (way % 2 == 0 ? way / 2 : -(way + 1) / 2); // up, then alternately right and left
        const Vec2 heading = direction(-90.0 + turn * 360.0 / kWays);
        // Slanting places read worse than straight ones.
        const double slant = turn % 4 == 0 ? 0.0 : turn % 2 == 0 ? 2.5 : 3.5;
        for (double far = nearest_mm; far <= kFarthest_mm; far += kStep_mm) {
            if (far + slant >= least) {
                break;
            }
            const Vec2 place = from + heading * far;
            const double cost = cost_of(scene, place, size, own) + far + slant + 0.01 * std::abs(turn);
            if (cost < least) {
                least = cost;
                best = place;
            }
        }
    }
    return best;
}

/// Round the fold to make, where it hides least; outside the turn when all is equal.
Vec2 badge_place(const Scene& scene, const FoldToMake& fold, double ppm) {
    const double radius = kBadgeRadius_px / ppm;
    const Vec2 size{2 * radius, 2 * radius};
    Vec2 best;
    double least = 1e300;
    for (int way = 0; way < 8; ++way) {
        const int turn = way % 2 == 0 ? way / 2 : -(way + 1) / 2;
        const Vec2 place = fold.at_mm + turned(fold.outside, 45.0 * turn) * (kFoldRing_mm + radius);
        const double cost = cost_of(scene, place, size, nullptr) + std::abs(turn);
        if (cost < least) {
            least = cost;
            best = place;
        }
    }
    return best;
}

} // namespace

Vec2 pill_size_mm(std::size_t characters, double em, double ppm) {
    const double extra = characters > 2 ? 0.6 * static_cast<double>(characters - 2) : 0.0;
    return Vec2{(1.75 + extra) * em, 1.38 * em} * (1.0 / std::max(0.1, ppm));
}

void place_pills(BoardView& view, const Conductors& conductors, const BoardOptions& options) {
    Scene scene{view, conductors, {}};
    for (PartView& part : view.parts) {
        part.pill_size_mm = pill_size_mm(part.id.size(), options.label_em, options.ppm);
        part.pill_mm = best_place(scene, part.at_mm, part.pill_size_mm, &part, 4.0);
        scene.pills.push_back(pill_shape(part.pill_mm, part.pill_size_mm));
    }
    if (view.start) {
        // "Start" with its padding is 3.6 em wide.
        const double ems = 1.1 + 0.5 * static_cast<double>(view.start->label.size());
        const double k = options.note_em / std::max(0.1, options.ppm);
        view.start->pill_size_mm = {ems * k, 1.6 * k};
        view.start->pill_mm = best_place(scene, view.start->at_mm, view.start->pill_size_mm, nullptr, 4.0);
        scene.pills.push_back(pill_shape(view.start->pill_mm, view.start->pill_size_mm));
    }
    if (view.fold) {
        view.fold->badge_mm = badge_place(scene, *view.fold, std::max(0.1, options.ppm));
    }
}

} // namespace lanternleaf
