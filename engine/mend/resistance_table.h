// Resistance table: what a meter reads between any two nodes of the tape network, with some elements changed.
// Exists because a search weighs hundreds of faults against dozens of readings: each is a rank-one change of
// one inverse (J. Sherman and W. J. Morrison, Ann. Math. Stat. 21 (1950) 124-127), not another solve.
#pragma once

#include "circuit/circuit.h"

#include <span>
#include <vector>

namespace lanternleaf {

/// More than this is no path: above it a hand meter shows OL or wanders (common practice).
inline constexpr double kNoPath_ohm = 1e5;

struct ChangedOhm {
    int element = 0; ///< index into Circuit::resistors
    double ohm = 0.0;
};

class ResistanceTable {
public:
    ResistanceTable() = default;
    /// Only elements with `used[i]` are in the network; the others are links that may be closed (see below).
    ResistanceTable(const Circuit& circuit, const std::vector<bool>& used);

    /// Ohm between two nodes with these elements changed. A change of an element that is not used closes a
    /// link, of which at most one counts. Infinity when there is no path, or one beyond kNoPath_ohm.
    [[nodiscard]] double between(int a, int b, std::span<const ChangedOhm> changed = {}) const;

private:
    struct Element {
        int a = 0;
        int b = 0;
        double ohm = 0.0;
        bool used = false;
    };

    /// <a|inverse|b> of the grounded network; 0 across parts and at a part's ground.
    [[nodiscard]] double inverse(int a, int b) const;
    [[nodiscard]] double pair(int a, int b, int c, int d) const;
    [[nodiscard]] double within(int a, int b, std::span<const ChangedOhm> changed) const;

    std::vector<Element> elements_;
    std::vector<int> part_; ///< per node
    std::vector<int> row_;  ///< per node: row in its part's inverse; -1 at the part's ground
    std::vector<int> size_; ///< per part
    std::vector<std::vector<double>> inverses_; ///< per part, row by row
};

} // namespace lanternleaf
