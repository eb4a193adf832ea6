// Starts: where a ribbon can begin: inside the holder, or on a straight stretch of a ribbon already laid.
#pragma once

#include "routing/weave.h"

namespace lanternleaf::routing_stages {

/// Between the holder's two contacts, square to the line that joins them or up to 30 degrees off, both ways.
[[nodiscard]] std::vector<Start> holder_starts(const Card& card, const Parts& parts, const Gauge& gauge);
/// On the straight runs of `main` from stop `first_place` on, both sides; far enough from pads, folds, ends
/// and from all of `others` for two joints and a patch.
[[nodiscard]] std::vector<Start> branch_starts(const std::vector<Woven>& others, std::size_t on,
                                               const WeaveTask& task, int first_place);

/// Out of the holder the other way, beside a ribbon that has left it. Only where that one starts between
/// discs.
[[nodiscard]] std::vector<Start> back_starts(const std::vector<Woven>& others, const WeaveTask& task);

/// The first points of both tapes, before the ribbon's own: from where the metal begins to the start's pose.
struct Roots {
    std::vector<Vec2> right;
    std::vector<Vec2> left;
};

[[nodiscard]] Roots roots_of(const Card& card, const Parts& parts, const Gauge& gauge, const Start& start,
                             const std::vector<Woven>& others);

} // namespace lanternleaf::routing_stages
