#include "numeric/conductance_network.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace lanternleaf {

namespace {

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

} // namespace

ConductanceNetwork::ConductanceNetwork(int node_count, std::span<const Link> links, int first_moving)
    : node_count_(node_count), order_(find_elimination_order(node_count, links, first_moving)),
      ground_slot_(static_cast<int>(order_.rows.size())) {
    find_updates();
    fixed_ends_.reserve(at(first_moving));
    moving_ends_.reserve(links.size() - at(first_moving));
    for (std::size_t i = 0; i < links.size(); ++i) {
        (static_cast<int>(i) < first_moving ? fixed_ends_ : moving_ends_).push_back(ends_of(links[i]));
    }
    const std::size_t value_count = order_.rows.size() + at(node_count) + 1;
    values_.resize(value_count);
    base_values_.resize(value_count);
    factor_.resize(order_.rows.size());
    current_.resize(at(node_count) + 1);
    base_current_.resize(at(node_count) + 1);
    per_pivot_.resize(at(node_count));
    voltage_.resize(at(node_count) + 1);
}

void ConductanceNetwork::find_updates() {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    update_start_.resize(at(node_count_) + 1);
    std::size_t pairs = 0;
    for (int k = 0; k < node_count_; ++k) {
        const auto length = at(start[k + 1] - start[k]);
        update_start_[at(k)] = static_cast<int>(pairs);
        pairs += length * (length - (length > 0 ? 1 : 0)) / 2;
    }
    update_start_[at(node_count_)] = static_cast<int>(pairs);
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

ConductanceNetwork::Ends ConductanceNetwork::ends_of(const Link& link) const {
    const int ground = node_count_;
    const int a = link.a == kGround ? ground : order_.position_of[at(link.a)];
    const int b = link.b == kGround ? ground : order_.position_of[at(link.b)];
    if (a == b) {
        return {ground_slot_ + ground, ground, ground}; // both ends in one place: carries nothing
    }
    const int first = std::min(a, b);
    const int second = std::max(a, b);
    if (second == ground) {
        return {ground_slot_ + first, a, b};
    }
    const auto begin = order_.rows.begin() + order_.column_start[at(first)];
    const auto end = order_.rows.begin() + order_.column_start[at(first) + 1];
    const auto found =
        end - begin > 16 ? std::lower_bound(begin, end, second) : std::find(begin, end, second);
    assert(found != end && *found == second);
    return {static_cast<int>(found - order_.rows.begin()), a, b};
}

void ConductanceNetwork::set_fixed(std::span<const double> siemens, std::span<const double> injected_A) {
    assert(siemens.size() == fixed_ends_.size() && injected_A.size() == at(node_count_));
    std::fill(values_.begin(), values_.end(), 0.0);
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        values_[at(fixed_ends_[i].slot)] += siemens[i];
    }
    for (const int position : order_.ungrounded) {
        values_[at(ground_slot_ + position)] += 1.0; // one siemens that no current can reach
    }
    for (int node = 0; node < node_count_; ++node) {
        current_[at(order_.position_of[at(node)])] = injected_A[at(node)];
    }
    current_.back() = 0.0;
    eliminate(0, order_.still_count);
    base_values_ = values_;
    base_current_ = current_;
}

void ConductanceNetwork::eliminate(int from, int to) {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    const int* update = updates_.data() + update_start_[at(from)];
    double* const values = values_.data();
    double* const ground = values + ground_slot_;
    double* const factor = factor_.data();
    double* const current = current_.data();
    double* const per_pivot = per_pivot_.data();
    for (int k = from; k < to; ++k) {
        const int begin = start[k];
        const int end = start[k + 1];
        const double to_ground = ground[k];
        double sum = to_ground;
        for (int p = begin; p < end; ++p) {
            sum += values[p];
        }
        const double inverse = 1.0 / sum;
        per_pivot[k] = inverse;
        const double injected = current[k];
        for (int p = begin; p < end; ++p) {
            const double share = values[p] * inverse;
            factor[p] = share;
            ground[rows[p]] += share * to_ground;
            current[rows[p]] += share * injected;
            for (int q = p + 1; q < end; ++q) {
                values[*update++] += share * values[q];
            }
        }
    }
}

void ConductanceNetwork::substitute_back(int from, int to) {
    const int* const start = order_.column_start.data();
    const int* const rows = order_.rows.data();
    for (int k = to - 1; k >= from; --k) {
        double volts = current_[at(k)] * per_pivot_[at(k)];
        for (int p = start[k]; p < start[k + 1]; ++p) {
            volts += factor_[at(p)] * voltage_[at(rows[p])];
        }
        voltage_[at(k)] = volts;
    }
}

bool ConductanceNetwork::solve(std::span<const double> siemens, std::span<const double> drawn_A,
                               std::span<double> across_V) {
    assert(siemens.size() == moving_ends_.size() && drawn_A.size() == siemens.size() &&
           across_V.size() == siemens.size());
    const int still = order_.still_count;
    const int first_slot = order_.column_start[at(still)];
    std::copy(base_values_.begin() + first_slot, base_values_.begin() + ground_slot_,
              values_.begin() + first_slot);
    std::copy(base_values_.begin() + ground_slot_ + still, base_values_.end(),
              values_.begin() + ground_slot_ + still);
    std::copy(base_current_.begin() + still, base_current_.end(), current_.begin() + still);
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        const Ends& ends = moving_ends_[i];
        values_[at(ends.slot)] += siemens[i];
        current_[at(ends.a)] -= drawn_A[i];
        current_[at(ends.b)] += drawn_A[i];
    }
    eliminate(still, node_count_);
    // Every pivot is a sum of conductances: the network is sound when all are above zero and numbers.
    double least = std::numeric_limits<double>::max();
    double total = 0.0;
    for (const double per_pivot : per_pivot_) {
        least = std::min(least, per_pivot);
        total += per_pivot;
    }
    if (!(least > 0.0) || !(total < std::numeric_limits<double>::infinity())) {
        return false;
    }
    substitute_back(still, node_count_);
    double all_V = 0.0;
    for (std::size_t i = 0; i < siemens.size(); ++i) {
        across_V[i] = voltage_[at(moving_ends_[i].a)] - voltage_[at(moving_ends_[i].b)];
        all_V += across_V[i];
    }
    return std::isfinite(all_V);
}

void ConductanceNetwork::node_voltages(std::span<double> node_V) {
    assert(node_V.size() == at(node_count_));
    substitute_back(0, order_.still_count);
    for (int node = 0; node < node_count_; ++node) {
        node_V[at(node)] = voltage_[at(order_.position_of[at(node)])];
    }
}

} // namespace lanternleaf
