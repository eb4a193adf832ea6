// The stages of find_conductors, each in its own file, and what they share. Private to this module.
//
//   lay_out (shapes.cpp) -> RunIndex -> find_overlaps -> find_contacts -> find_nets
#pragma once

#include "conductors/conductors.h"
#include "geometry/bucket_grid.h"

#include <cassert>
#include <map>
#include <string>
#include <vector>

namespace lanternleaf::conductors_stages {

/// All runs of all strips, lowest strip first, and a grid to find those near a box.
struct RunIndex {
    struct Ref {
        int strip = 0;
        int run = 0;
    };

    std::vector<Ref> refs;
    BucketGrid grid;
};

/// Room that one call of find_conductors uses over and over, so that no pair of strips allocates.
struct Scratch {
    std::vector<int> found;
    std::vector<Convex> pieces;
    std::vector<Convex> next;
};

/// Fills strips, patches, led_pads and resistor_pads.
void lay_out(const Card& card, const Parts& parts, Conductors& made);
[[nodiscard]] RunIndex index_runs(const std::vector<StripShape>& strips);
/// Fills overlaps. `index` holds the runs of `made.strips`.
void find_overlaps(const Card& card, const Parts& parts, const RunIndex& index, Scratch& scratch,
                   Conductors& made);
/// Fills contacts, in this order: strip on strip, LED pads, resistor pads, holder.
void find_contacts(const Card& card, const Parts& parts, const RunIndex& index, Scratch& scratch,
                   Conductors& made);
/// Fills nets and the net_of_ tables.
void find_nets(const Card& card, Conductors& made);

[[nodiscard]] inline const Run& run_of(const Conductors& made, RunIndex::Ref ref) {
    return made.strips[static_cast<std::size_t>(ref.strip)].ribbon.runs[static_cast<std::size_t>(ref.run)];
}

/// Adds `piece` to `pieces`, less what they cover already: a strip folded sharply back covers some places
/// twice, and no area may count twice. `next` is room to work in.
void add_uncovered(const Convex& piece, std::vector<Convex>& pieces, std::vector<Convex>& next);
/// Takes away from `pieces` what the patches laid above `lower_laid` and below `upper_laid` cover.
void take_patches(const std::vector<PatchShape>& patches, int lower_laid, int upper_laid,
                  std::vector<Convex>& pieces, std::vector<Convex>& next);

/// Area and centroid of disjoint pieces together.
struct Share {
    double area_mm2 = 0.0;
    Vec2 at_mm;
};

[[nodiscard]] Share share_of(const std::vector<Convex>& pieces);

/// Pieces numbered in the order in which a net lists them: terminals, strips, LED pads, resistor pads.
[[nodiscard]] int node_count(const Conductors& made);
[[nodiscard]] int node_of(const Conductors& made, Piece piece);
[[nodiscard]] Piece piece_at(const Conductors& made, int node);

/// The type `id` stands for. The caller of this module makes sure that it is there.
template <class T>
[[nodiscard]] const T& type_of(const std::map<std::string, T>& types, const std::string& id) {
    static const T kUnknown{};
    const auto it = types.find(id);
    assert(it != types.end() && "a card's types are checked when it is read");
    return it != types.end() ? it->second : kUnknown;
}

} // namespace lanternleaf::conductors_stages
