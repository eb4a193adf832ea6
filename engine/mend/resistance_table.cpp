#include "mend/resistance_table.h"

#include "base/at.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace lanternleaf {

namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
// An opened element keeps this much: the inverse then loses no more than half its digits.
constexpr double kMost_ohm = 1e6;
constexpr std::size_t kMostChanges = 12;

int root_of(std::vector<int>& parent, int node) {
    while (parent[at(node)] != node) {
        parent[at(node)] = parent[at(parent[at(node)])];
        node = parent[at(node)];
    }
    return node;
}

// Gauss-Jordan in place; the grounded conductance matrix of a connected part is positive definite.
void invert(std::vector<double>& m, std::size_t n) {
    for (std::size_t k = 0; k < n; ++k) {
        const double pivot = 1.0 / m[k * n + k];
        m[k * n + k] = 1.0;
        for (std::size_t j = 0; j < n; ++j) {
            m[k * n + j] *= pivot;
        }
        for (std::size_t i = 0; i < n; ++i) {
            const double factor = m[i * n + k];
            if (i == k || factor == 0.0) {
                continue;
            }
            m[i * n + k] = 0.0;
            for (std::size_t j = 0; j < n; ++j) {
                m[i * n + j] -= factor * m[k * n + j];
            }
        }
    }
}

// Solves the small dense system in place; false when it is singular.
bool solve_small(std::vector<double>& m, std::vector<double>& x) {
    const std::size_t n = x.size();
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t best = k;
        for (std::size_t i = k + 1; i < n; ++i) {
            best = std::fabs(m[i * n + k]) > std::fabs(m[best * n + k]) ? i : best;
        }
        if (std::fabs(m[best * n + k]) < 1e-13) {
            return false;
        }
        for (std::size_t j = 0; j < n && best != k; ++j) {
            std::swap(m[best * n + j], m[k * n + j]);
        }
        std::swap(x[best], x[k]);
        for (std::size_t i = k + 1; i < n; ++i) {
            const double factor = m[i * n + k] / m[k * n + k];
            for (std::size_t j = k; j < n; ++j) {
                m[i * n + j] -= factor * m[k * n + j];
            }
            x[i] -= factor * x[k];
        }
    }
    for (std::size_t k = n; k-- > 0;) {
        for (std::size_t j = k + 1; j < n; ++j) {
            x[k] -= m[k * n + j] * x[j];
        }
        x[k] /= m[k * n + k];
    }
    return true;
}

} // namespace

ResistanceTable::ResistanceTable(const Circuit& circuit, const std::vector<bool>& used) {
    std::vector<int> parent(at(circuit.node_count));
    std::iota(parent.begin(), parent.end(), 0);
    for (std::size_t i = 0; i < circuit.resistors.size(); ++i) {
        const ResistorElement& r = circuit.resistors[i];
        elements_.push_back({r.a, r.b, r.ohm, used[i]});
        if (used[i]) {
            parent[at(root_of(parent, r.a))] = root_of(parent, r.b);
        }
    }
    part_.assign(at(circuit.node_count), -1);
    row_.assign(at(circuit.node_count), -1);
    std::vector<int> part_of_root(at(circuit.node_count), -1);
    for (int node = 0; node < circuit.node_count; ++node) {
        int& part = part_of_root[at(root_of(parent, node))];
        if (part < 0) { // its first node is its ground
            part = static_cast<int>(size_.size());
            size_.push_back(0);
        } else {
            row_[at(node)] = size_[at(part)]++;
        }
        part_[at(node)] = part;
    }
    inverses_.resize(size_.size());
    for (std::size_t p = 0; p < size_.size(); ++p) {
        inverses_[p].assign(at(size_[p]) * at(size_[p]), 0.0);
    }
    for (const Element& e : elements_) {
        if (!e.used) {
            continue;
        }
        const std::size_t p = at(part_[at(e.a)]);
        const std::size_t n = at(size_[p]);
        const int rows[2] = {row_[at(e.a)], row_[at(e.b)]};
        for (const int i : rows) {
            for (const int j : rows) {
                if (i >= 0 && j >= 0) {
                    inverses_[p][at(i) * n + at(j)] += (i == j ? 1.0 : -1.0) / e.ohm;
                }
            }
        }
    }
    for (std::size_t p = 0; p < size_.size(); ++p) {
        invert(inverses_[p], at(size_[p]));
    }
}

double ResistanceTable::inverse(int a, int b) const {
    const int part = part_[at(a)];
    const int i = row_[at(a)];
    const int j = row_[at(b)];
    if (part != part_[at(b)] || i < 0 || j < 0) {
        return 0.0;
    }
    return inverses_[at(part)][at(i) * at(size_[at(part)]) + at(j)];
}

double ResistanceTable::pair(int a, int b, int c, int d) const {
    return inverse(a, c) - inverse(a, d) - inverse(b, c) + inverse(b, d);
}

double ResistanceTable::within(int a, int b, std::span<const ChangedOhm> changed) const {
    if (part_[at(a)] != part_[at(b)]) {
        return kInfinite;
    }
    const double plain = pair(a, b, a, b);
    std::vector<double> share; // voltage across each changed element for one ampere from a to b
    std::vector<ChangedOhm> here;
    for (const ChangedOhm& change : changed) {
        const Element& e = elements_[at(change.element)];
        if (!e.used || part_[at(e.a)] != part_[at(a)]) {
            continue;
        }
        const double v = pair(a, b, e.a, e.b);
        if (std::fabs(v) > 1e-9 * plain && here.size() < kMostChanges) {
            here.push_back(change);
            share.push_back(v);
        }
    }
    if (here.empty()) {
        return plain;
    }
    // R' = R - v' (D^-1 + M)^-1 v with D the changes of conductance, written without dividing by them.
    const std::size_t n = here.size();
    std::vector<double> matrix(n * n);
    std::vector<double> x = share;
    std::vector<double> change_S(n);
    for (std::size_t i = 0; i < n; ++i) {
        change_S[i] = 1.0 / std::min(here[i].ohm, kMost_ohm) - 1.0 / elements_[at(here[i].element)].ohm;
    }
    for (std::size_t i = 0; i < n; ++i) {
        const Element& e = elements_[at(here[i].element)];
        for (std::size_t j = 0; j < n; ++j) {
            const Element& f = elements_[at(here[j].element)];
            matrix[i * n + j] = (i == j ? 1.0 : 0.0) + pair(e.a, e.b, f.a, f.b) * change_S[j];
        }
    }
    if (!solve_small(matrix, x)) {
        return kInfinite;
    }
    double ohm = plain;
    for (std::size_t i = 0; i < n; ++i) {
        ohm -= share[i] * change_S[i] * x[i];
    }
    return ohm < 0.0 || !(ohm < kNoPath_ohm) ? kInfinite : ohm;
}

double ResistanceTable::between(int a, int b, std::span<const ChangedOhm> changed) const {
    const double direct = a == b ? 0.0 : within(a, b, changed);
    for (const ChangedOhm& change : changed) {
        const Element& link = elements_[at(change.element)];
        if (link.used || change.ohm >= kNoPath_ohm) {
            continue;
        }
        const double one = within(a, link.a, changed) + change.ohm + within(link.b, b, changed);
        const double other = within(a, link.b, changed) + change.ohm + within(link.a, b, changed);
        const double through = std::min(one, other);
        if (direct == kInfinite && through < kNoPath_ohm) {
            return through;
        }
    }
    return direct;
}

} // namespace lanternleaf
