#include "life/fading.h"

namespace lanternleaf {

Fading::Fading(const LoadLine& line, const CellModel& cell, Use use, const Discharge& discharge)
    : line_(line), cell_(cell), discharge_(discharge), use_(use) {
    constexpr int kBetween = 4;
    const auto& steps = discharge.steps;
    samples_.reserve(kBetween * steps.size());
    for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
        for (int k = 0; k < kBetween; ++k) {
            const double hours = steps[i].hours + (steps[i + 1].hours - steps[i].hours) * k / kBetween;
            samples_.push_back({hours, cell_V(hours)});
        }
    }
    samples_.push_back({steps.back().hours, cell_V(steps.back().hours)});
}

double Fading::cell_V(double hours) const {
    return line_.meet(cell_.at(discharge_.drawn_mAh(hours), settled_after(use_, hours))).cell_V;
}

double Fading::last_above_h(int led, double mA) const {
    std::size_t i = samples_.size();
    while (i > 0 && line_.led_mA(led, samples_[i - 1].cell_V) < mA) {
        --i;
    }
    if (i == 0) {
        return 0.0;
    }
    if (i == samples_.size()) {
        return kNever_h;
    }
    double from = samples_[i - 1].hours;
    double to = samples_[i].hours;
    for (int k = 0; k < 12 && to - from > 1e-3 * to; ++k) {
        const double middle = 0.5 * (from + to);
        (line_.led_mA(led, cell_V(middle)) >= mA ? from : to) = middle;
    }
    return 0.5 * (from + to);
}

} // namespace lanternleaf
