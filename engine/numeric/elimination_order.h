// Elimination order: in which order the nodes of a network are eliminated so that few new links appear, and
// which nodes each one is linked to at that moment (the pattern of its column of the factor). Exists so that
// the pattern is found once and the numbers can be worked through many times without a search.
#pragma once

#include <span>
#include <vector>

namespace lanternleaf {

/// The far end of a link that goes to the reference (ground) instead of to a node.
inline constexpr int kGround = -1;

/// An undirected link between two nodes, or between a node and kGround. Links may repeat; a link from a node
/// to itself is ignored.
struct NodeLink {
    int a = kGround;
    int b = kGround;
};

/// The order and the pattern. Positions are places in the order; everything below speaks of positions.
struct EliminationOrder {
    std::vector<int> position_of;  ///< node -> position
    std::vector<int> column_start; ///< per position, and one past the end: range in rows
    std::vector<int> rows;         ///< positions still linked when this one goes, rising; all are later
    std::vector<int> ungrounded;   ///< one position for each connected part that no link ties to kGround
    /// Positions 0 .. still_count-1 depend, directly or through what was eliminated into them, on no link of
    /// the moving kind.
    int still_count = 0;
};

/// Minimum degree (W. F. Tinney and J. W. Walker, "Direct solutions of sparse network equations by optimally
/// ordered triangular factorization", Proc. IEEE 55 (1967) 1801-1809, their scheme 2), ties broken in favour
/// of nodes that no moving link touches. links[first_moving..] are the moving ones: their values will change
/// from one factorisation to the next. Trees give no new links at all; the work is then linear in their
/// number.
[[nodiscard]] EliminationOrder find_elimination_order(int node_count, std::span<const NodeLink> links,
                                                      int first_moving);

} // namespace lanternleaf
