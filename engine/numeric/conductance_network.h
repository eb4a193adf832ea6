// Conductance network: solves for the voltages of a network of conductances and current sources, many times
// with the same links and other values. Exists so that a solve inside a loop neither searches nor allocates.
//
// It is the LDL^T factorisation of the nodal matrix, with one difference: a pivot is never formed by
// subtraction. Each node keeps its conductance to ground and to its later neighbours, all positive, and its
// pivot is their sum (star-mesh elimination; the same idea as W. K. Grassmann, M. I. Taksar and D. P. Heyman,
// "Regenerative analysis and steady state distributions for Markov chains", Oper. Res. 33 (1985) 1107-1116).
// So a joint of a million siemens beside a dark LED of 1e-20 siemens loses no digit of either, which plain
// elimination would.
#pragma once

#include "numeric/elimination_order.h"

#include <span>
#include <vector>

namespace lanternleaf {

class ConductanceNetwork {
public:
    ConductanceNetwork() = default;
    /// links[first_moving..] are the ones whose values change from solve to solve. A part of the network that
    /// no link ties to ground gets one node held at 0 V; no current can flow there, so nothing else changes.
    ConductanceNetwork(int node_count, std::span<const NodeLink> links, int first_moving);

    [[nodiscard]] int node_count() const { return node_count_; }

    [[nodiscard]] int moving_count() const { return static_cast<int>(ends_.size()) - first_moving_; }

    /// Sets the fixed links' conductances (siemens, >= 0, one per fixed link) and the currents injected into
    /// the nodes (amperes, one per node), and eliminates all that depends on nothing else.
    void set_fixed(std::span<const double> siemens, std::span<const double> injected_A);

    /// Solves with these moving links: conductance, and a source of `drawn_A` beside it that pushes current
    /// from the link's a to its b. Writes the voltage across each moving link, a against b. False when the
    /// network is singular or a value is not a number; `across_V` is then without meaning. No allocation.
    [[nodiscard]] bool solve(std::span<const double> siemens, std::span<const double> drawn_A,
                             std::span<double> across_V);

    /// After solve: the voltage of every node against ground. No allocation.
    void node_voltages(std::span<double> node_V);

private:
    struct Ends {
        int slot; ///< where the link's conductance is added: an off-diagonal, a node's ground, or the dump
        int a;    ///< positions; the one past the last is ground
        int b;
    };

    [[nodiscard]] Ends ends_of(const NodeLink& link) const;
    void find_updates();
    /// Eliminates positions from .. to-1 in values and currents.
    void eliminate(int from, int to);
    void substitute_back(int from, int to);

    // Where each kind of number starts in numbers_; all are by position but the off-diagonals, by slot.
    [[nodiscard]] double* values() { return numbers_.data(); } ///< off-diagonals, then conductances to ground

    [[nodiscard]] double* currents() { return values() + slot_count_ + node_count_ + 1; }

    [[nodiscard]] double* base_values() { return currents() + node_count_ + 1; } ///< after the still part

    [[nodiscard]] double* base_currents() { return base_values() + slot_count_ + node_count_ + 1; }

    [[nodiscard]] double* factors() { return base_currents() + node_count_ + 1; } ///< off-diagonal over pivot

    [[nodiscard]] double* per_pivots() { return factors() + slot_count_; } ///< 1 over the pivot

    [[nodiscard]] double* voltages() { return per_pivots() + node_count_; } ///< ground's stays 0

    int node_count_ = 0;
    int first_moving_ = 0;
    int first_moving_update_ = 0; ///< where the still positions' share of updates_ ends
    EliminationOrder order_;
    int slot_count_ = 0;       ///< off-diagonals; the conductances to ground follow, ground's own as a dump
    std::vector<int> updates_; ///< for each pair of rows of a column, in order: the slot of the pair's link
    std::vector<Ends> ends_;   ///< per link
    std::vector<double> numbers_;
};

} // namespace lanternleaf
