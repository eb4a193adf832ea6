// Where two strips lie over each other, and whether metal meets metal there.
#include "base/tolerance.h"
#include "conductors/stages.h"

#include <algorithm>
#include <compare>

namespace lanternleaf::conductors_stages {

namespace {

/// Two runs of different strips whose boxes touch, by their places in RunIndex::refs.
struct Pair {
    int lower_strip = 0;
    int upper_strip = 0;
    int lower = 0;
    int upper = 0;
    friend auto operator<=>(const Pair&, const Pair&) = default;
};

/// All such pairs, ordered by lower strip, then upper strip, then place.
std::vector<Pair> near_pairs(const RunIndex& index, const Conductors& made, Scratch& scratch) {
    std::vector<Pair> pairs;
    pairs.reserve(index.refs.size());
    for (std::size_t i = 0; i < index.refs.size(); ++i) {
        const RunIndex::Ref lower = index.refs[i];
        index.grid.find(run_of(made, lower).box, scratch.found);
        for (const int other : scratch.found) {
            const RunIndex::Ref upper = index.refs[static_cast<std::size_t>(other)];
            if (upper.strip > lower.strip) { // each pair once, from the lower strip
                pairs.push_back({lower.strip, upper.strip, static_cast<int>(i), other});
            }
        }
    }
    std::sort(pairs.begin(), pairs.end());
    return pairs;
}

bool touching(const Convex& a, const Convex& b) {
    return bounds(a).grown(tolerance::kSamePlace_mm).touches(bounds(b)) &&
           nearest(a, b).mm <= tolerance::kSamePlace_mm;
}

/// Gives each piece the number of its region: pieces that touch are one region. Numbers rise from 0.
int number_regions(const std::vector<Convex>& pieces, std::vector<int>& region) {
    region.assign(pieces.size(), -1);
    int count = 0;
    std::vector<std::size_t> open;
    for (std::size_t first = 0; first < pieces.size(); ++first) {
        if (region[first] >= 0) {
            continue;
        }
        region[first] = count;
        open.assign(1, first);
        while (!open.empty()) {
            const std::size_t at = open.back();
            open.pop_back();
            for (std::size_t other = 0; other < pieces.size(); ++other) {
                if (region[other] < 0 && touching(pieces[at], pieces[other])) {
                    region[other] = count;
                    open.push_back(other);
                }
            }
        }
        ++count;
    }
    return count;
}

/// Whether segment a-b has a point in `shape`, edges included.
bool meets(const Convex& shape, Vec2 a, Vec2 b) {
    double from = 0.0;
    double to = 1.0;
    Vec2 last = shape.corners().back();
    for (const Vec2 corner : shape.corners()) {
        const double side_a = cross(corner - last, a - last);
        const double side_b = cross(corner - last, b - last);
        last = corner;
        if (side_a < 0.0 && side_b < 0.0) {
            return false;
        }
        if (side_a < 0.0) {
            from = std::max(from, side_a / (side_a - side_b));
        } else if (side_b < 0.0) {
            to = std::min(to, side_a / (side_a - side_b));
        }
    }
    return from <= to;
}

/// Whether the centre line between two arc lengths runs through any of the pieces.
bool passes(const Ribbon& ribbon, double from_mm, double to_mm, const std::vector<Convex>& pieces) {
    for (const Run& run : ribbon.runs) {
        const double run_from = std::max(from_mm, run.starts_at_mm);
        const double run_to = std::min(to_mm, run.starts_at_mm + run.length_mm);
        if (run_from >= run_to) {
            continue;
        }
        const Vec2 step = (run.to_mm - run.from_mm) * (1.0 / run.length_mm);
        const Vec2 a = run.from_mm + step * (run_from - run.starts_at_mm);
        const Vec2 b = run.from_mm + step * (run_to - run.starts_at_mm);
        for (const Convex& piece : pieces) {
            if (meets(piece, a, b)) {
                return true;
            }
        }
    }
    return false;
}

/// A folded end reaches one width back from the strip's end: that much is turned under at least.
bool folded_end_in(const Strip& strip, const Ribbon& ribbon, const std::vector<Convex>& pieces) {
    return (strip.ends[0] == EndStyle::folded && passes(ribbon, 0.0, ribbon.width_mm, pieces)) ||
           (strip.ends[1] == EndStyle::folded &&
            passes(ribbon, ribbon.length_mm - ribbon.width_mm, ribbon.length_mm, pieces));
}

/// Fills in all of an overlap that follows from its strips and its pieces.
void complete(const Card& card, const Parts& parts, const Conductors& made, Scratch& scratch,
              Overlap& overlap) {
    const StripShape& lower = made.strips[static_cast<std::size_t>(overlap.lower)];
    const StripShape& upper = made.strips[static_cast<std::size_t>(overlap.upper)];
    const Share whole = share_of(overlap.pieces);
    overlap.area_mm2 = whole.area_mm2;
    overlap.at_mm = whole.at_mm;
    overlap.bare = overlap.pieces;
    take_patches(made.patches, lower.laid_index, upper.laid_index, overlap.bare, scratch.next);
    overlap.bare_mm2 = share_of(overlap.bare).area_mm2;
    // A patch that covers only what another covers already still lies between, so each is asked by itself.
    for (std::size_t i = 0; i < made.patches.size(); ++i) {
        const PatchShape& patch = made.patches[i];
        if (patch.laid_index > lower.laid_index && patch.laid_index < upper.laid_index &&
            std::any_of(overlap.pieces.begin(), overlap.pieces.end(), [&](const Convex& piece) {
                return patch.box.touches(bounds(piece)) && !clip(piece, patch.outline).empty();
            })) {
            overlap.patches.push_back(static_cast<int>(i));
        }
    }
    const Strip& strip = strip_of(card, made, overlap.upper);
    const TapeType& tape = type_of(parts.tapes, strip.tape);
    overlap.folded_end = folded_end_in(strip, upper.ribbon, overlap.pieces);
    overlap.conducts = overlap.bare_mm2 > tolerance::kTouch_mm2 &&
                       (tape.adhesive == Adhesive::conductive || overlap.folded_end);
    overlap.along_lower_mm = along(lower.ribbon, overlap.at_mm);
    overlap.along_upper_mm = along(upper.ribbon, overlap.at_mm);
}

} // namespace

void find_overlaps(const Card& card, const Parts& parts, const RunIndex& index, Scratch& scratch,
                   Conductors& made) {
    const std::vector<Pair> pairs = near_pairs(index, made, scratch);
    const auto run_at = [&](int place) -> const Run& {
        return run_of(made, index.refs[static_cast<std::size_t>(place)]);
    };
    std::vector<int> region;
    for (std::size_t next = 0; next < pairs.size();) {
        const Pair first = pairs[next];
        scratch.pieces.clear();
        for (; next < pairs.size() && pairs[next].lower_strip == first.lower_strip &&
               pairs[next].upper_strip == first.upper_strip;
             ++next) {
            const Convex piece = clip(run_at(pairs[next].lower).outline, run_at(pairs[next].upper).outline);
            if (!piece.empty()) {
                add_uncovered(piece, scratch.pieces, scratch.next);
            }
        }
        const int regions = number_regions(scratch.pieces, region);
        for (int number = 0; number < regions; ++number) {
            Overlap overlap;
            overlap.lower = first.lower_strip;
            overlap.upper = first.upper_strip;
            for (std::size_t i = 0; i < scratch.pieces.size(); ++i) {
                if (region[i] == number) {
                    overlap.pieces.push_back(scratch.pieces[i]);
                }
            }
            if (share_of(overlap.pieces).area_mm2 > tolerance::kTouch_mm2) {
                complete(card, parts, made, scratch, overlap);
                made.overlaps.push_back(std::move(overlap));
            }
        }
    }
}

} // namespace lanternleaf::conductors_stages
