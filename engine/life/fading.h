// Fading: when, in the course of a discharge, a light falls below a current for good. Exists so that the
// marks of a card's life and the trials of what would help ask the same question the same way.
#pragma once

#include "life/discharge.h"

#include <limits>
#include <vector>

namespace lanternleaf {

inline constexpr double kNever_h = std::numeric_limits<double>::infinity();

/// Holds references: keep line, cell and discharge alive.
class Fading {
public:
    Fading(const LoadLine& line, const CellModel& cell, Use use, const Discharge& discharge);

    /// The last time the LED carried at least `mA`, to 0.1 %: 0 when it never did, kNever_h when it still did
    /// at the end of the discharge. The last and not the first: a cell's voltage may dip and come back.
    [[nodiscard]] double last_above_h(int led, double mA) const;

private:
    [[nodiscard]] double cell_V(double hours) const;

    /// Every step, and three places between, where a crossing could hide.
    struct Sample {
        double hours = 0.0;
        double cell_V = 0.0;
    };

    const LoadLine& line_;
    const CellModel& cell_;
    const Discharge& discharge_;
    Use use_;
    std::vector<Sample> samples_;
};

} // namespace lanternleaf
