// Areas made of disjoint convex pieces: adding without counting twice, taking patches away.
#include "conductors/stages.h"

namespace lanternleaf::conductors_stages {

namespace {

/// Takes `hole` away from all of `pieces`.
void take_away(const Convex& hole, std::vector<Convex>& pieces, std::vector<Convex>& next) {
    next.clear();
    for (const Convex& piece : pieces) {
        subtract(piece, hole, next);
    }
    pieces.swap(next);
}

} // namespace

void add_uncovered(const Convex& piece, std::vector<Convex>& pieces, std::vector<Convex>& next) {
    const Box box = bounds(piece);
    bool covered = false;
    for (const Convex& other : pieces) {
        covered = covered || (box.touches(bounds(other)) && !clip(piece, other).empty());
    }
    if (!covered) { // nearly always: runs meet on their mitre lines and tile the outline
        pieces.push_back(piece);
        return;
    }
    std::vector<Convex> rest{piece};
    for (const Convex& other : pieces) {
        take_away(other, rest, next);
    }
    pieces.insert(pieces.end(), rest.begin(), rest.end());
}

void take_patches(const std::vector<PatchShape>& patches, int lower_laid, int upper_laid,
                  std::vector<Convex>& pieces, std::vector<Convex>& next) {
    if (patches.empty() || pieces.empty()) {
        return;
    }
    Box box;
    for (const Convex& piece : pieces) {
        box.add(bounds(piece));
    }
    for (const PatchShape& patch : patches) {
        if (patch.laid_index > lower_laid && patch.laid_index < upper_laid && patch.box.touches(box)) {
            take_away(patch.outline, pieces, next);
        }
    }
}

Share share_of(const std::vector<Convex>& pieces) {
    Share share;
    Vec2 weighted;
    for (const Convex& piece : pieces) {
        const double piece_mm2 = area(piece);
        share.area_mm2 += piece_mm2;
        weighted = weighted + centroid(piece) * piece_mm2;
    }
    if (share.area_mm2 > 0.0) {
        share.at_mm = weighted * (1.0 / share.area_mm2);
    }
    return share;
}

} // namespace lanternleaf::conductors_stages
