#include "numeric/conductance_network.h"

#include "base/at.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace lanternleaf {

ConductanceNetwork::ConductanceNetwork(int node_count, std::span<const NodeLink> links, int first_moving)
    : node_count_(node_count), first_moving_(first_moving),
      order_(find_elimination_order(node_count, links, first_moving)),
      slot_count_(static_cast<int>(order_.rows.size())) {
    find_updates();
    ends_.reserve(links.size());
    for (const NodeLink& link : links) {
        ends_.push_back(ends_of(link));
    }
    numbers_.resize(3 * at(slot_count_) + 6 * at(node_count) + 5);
}

void ConductanceNetwork::find_updates() {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    std::size_t pairs = 0;
    for (int k = 0; k < node_count_; ++k) {
        const auto length = at(start[k + 1] - start[k]);
        if (k == order_.still_count) {
            first_moving_update_ = static_cast<int>(pairs);
        }
        pairs += length * (length - (length > 0 ? 1 : 0)) / 2;
    }
    assert(pairs < at(std::numeric_limits<int>::max()));
    updates_.resize(pairs);
    int* next = updates_.data();
    for (int k = 0; k < node_count_; ++k) {
        for (int i = start[k]; i < start[k + 1]; ++i) {
            int slot = start[rows[i]];
            for (int j = i + 1; j < start[k + 1]; ++j) {
                while (rows[slot] != rows[j]) { // always there: eliminating k has made it
                    ++slot;
                }
                *next++ = slot;
            }
        }
    }
}

ConductanceNetwork::Ends ConductanceNetwork::ends_of(const NodeLink& link) const {
    const int ground = node_count_;
    const int a = link.a == kGround ? ground : order_.position_of[at(link.a)];
    const int b = link.b == kGround ? ground : order_.position_of[at(link.b)];
    if (a == b) {
        return {slot_count_ + ground, ground, ground}; // both ends in one place: carries nothing
    }
    const int first = std::min(a, b);
    const int second = std::max(a, b);
    if (second == ground) {
        return {slot_count_ + first, a, b};
    }
    const auto begin = order_.rows.begin() + order_.column_start[at(first)];
    const auto end = order_.rows.begin() + order_.column_start[at(first) + 1];
    const auto found =
        end - begin > 16 ? std::lower_bound(begin, end, second) : std::find(begin, end, second);
    assert(found != end && *found == second);
    return {static_cast<int>(found - order_.rows.begin()), a, b};
}

void ConductanceNetwork::set_fixed(std::span<const double> siemens, std::span<const double> injected_A) {
    assert(siemens.size() == at(first_moving_) && injected_A.size() == at(node_count_));
    double* const value = values();
    double* const current = currents();
    std::fill(value, current, 0.0);
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        value[ends_[i].slot] += siemens[i];
    }
    for (const int position : order_.ungrounded) {
        value[slot_count_ + position] += 1.0; // one siemens that no current can reach
    }
    for (int node = 0; node < node_count_; ++node) {
        current[order_.position_of[at(node)]] = injected_A[at(node)];
    }
    current[node_count_] = 0.0;
    eliminate(0, order_.still_count);
    std::copy(value, base_values(), base_values()); // values and currents both
}

void ConductanceNetwork::eliminate(int from, int to) {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    const int* update = updates_.data() + (from == 0 ? 0 : first_moving_update_);
    double* const value = values();
    double* const ground = value + slot_count_;
    double* const factor = factors();
    double* const current = currents();
    double* const per_pivot = per_pivots();
    for (int k = from; k < to; ++k) {
        const int begin = start[k];
        const int end = start[k + 1];
        const double to_ground = ground[k];
        double sum = to_ground;
        for (int p = begin; p < end; ++p) {
            sum += value[p];
        }
        const double inverse = 1.0 / sum;
        per_pivot[k] = inverse;
        const double injected = current[k];
        for (int p = begin; p < end; ++p) {
            const double share = value[p] * inverse;
            factor[p] = share;
            ground[rows[p]] += share * to_ground;
            current[rows[p]] += share * injected;
            for (int q = p + 1; q < end; ++q) {
                value[*update++] += share * value[q];
            }
        }
    }
}

void ConductanceNetwork::substitute_back(int from, int to) {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    const double* const current = currents();
    const double* const per_pivot = per_pivots();
    const double* const factor = factors();
    double* const voltage = voltages();
    for (int k = to - 1; k >= from; --k) {
        double volts = current[k] * per_pivot[k];
        for (int p = start[k]; p < start[k + 1]; ++p) {
            volts += factor[p] * voltage[rows[p]];
        }
        voltage[k] = volts;
    }
}

bool ConductanceNetwork::solve(std::span<const double> siemens, std::span<const double> drawn_A,
                               std::span<double> across_V) {
    assert(siemens.size() == at(moving_count()) && drawn_A.size() == siemens.size() &&
           across_V.size() == siemens.size());
    const int still = order_.still_count;
    double* const value = values();
    double* const current = currents();
    const int first_slot = order_.column_start[at(still)];
    std::copy(base_values() + first_slot, base_values() + slot_count_, value + first_slot);
    std::copy(base_values() + slot_count_ + still, base_currents(), value + slot_count_ + still);
    std::copy(base_currents() + still, factors(), current + still);
    const Ends* const moving_ends = ends_.data() + first_moving_;
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        const Ends& ends = moving_ends[i];
        value[ends.slot] += siemens[i];
        current[ends.a] -= drawn_A[i];
        current[ends.b] += drawn_A[i];
    }
    eliminate(still, node_count_);
    // Every pivot is a sum of conductances: the network is sound when all are above zero and numbers.
    double least = std::numeric_limits<double>::max();
    double total = 0.0;
    for (const double* per_pivot = per_pivots(); per_pivot != voltages(); ++per_pivot) {
        least = std::min(least, *per_pivot);
        total += *per_pivot;
    }
    if (!(least > 0.0) || !(total < std::numeric_limits<double>::infinity())) {
        return false;
    }
    substitute_back(still, node_count_);
    double all_V = 0.0;
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        across_V[i] = voltages()[moving_ends[i].a] - voltages()[moving_ends[i].b];
        all_V += across_V[i];
    }
    return std::isfinite(all_V);
}

void ConductanceNetwork::node_voltages(std::span<double> node_V) {
    assert(node_V.size() == at(node_count_));
    substitute_back(0, order_.still_count);
    for (int node = 0; node < node_count_; ++node) {
        node_V[at(node)] = voltages()[order_.position_of[at(node)]];
    }
}

} // namespace lanternleaf
