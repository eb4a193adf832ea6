#include "base/readout.h"
#include "guide/phrases.h"
#include "guide/verdict.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// A hand meter's last digit may be one off; half of it is inside the figure as read.
constexpr double kOhmHalfDigit = 0.05;
constexpr double kVoltHalfDigit = 0.005;
constexpr double kRulerHalf_mm = 0.25;
// From here on two traces count as apart (common practice: OL or more than 1 Mohm; below that glue is damp or
// tape touches).
constexpr double kApart_ohm = 1e6;

std::string measured(CheckKind kind, double value) {
    switch (kind) {
    case CheckKind::volts:
        return readout_volts(value);
    case CheckKind::height:
        return readout_mm(value);
    default:
        return readout_ohm(value);
    }
}

double half_digit(CheckKind kind) {
    switch (kind) {
    case CheckKind::volts:
        return kVoltHalfDigit;
    case CheckKind::height:
        return kRulerHalf_mm;
    default:
        return kOhmHalfDigit;
    }
}

ReadingVerdict verdict(const Check& check, ReadingFit fit, const std::string& seen) {
    return {check.id, fit, seen + ", expected " + check.expect_text};
}

ReadingVerdict unreadable(const Check& check, const std::string& what) {
    return {check.id, ReadingFit::unreadable, what};
}

// Answered without a meter: what was looked for was there, or not.
ReadingVerdict looked(const Check& check, bool yes) {
    return verdict(check, yes ? ReadingFit::as_expected : ReadingFit::off,
                   yes ? "Seen as it should be" : "Not as it should be");
}

ReadingVerdict judge_range(const Check& check, const Reading& reading) {
    if (reading.open) {
        return verdict(check, ReadingFit::off, "OL");
    }
    if (!reading.value) {
        return reading.yes ? looked(check, *reading.yes) : unreadable(check, "No figure was given.");
    }
    const double value = *reading.value;
    if (!std::isfinite(value) || value < 0.0) {
        return unreadable(check, "A figure of 0 or more was expected.");
    }
    const double slack = half_digit(check.kind) + 1e-9;
    const bool fits = value >= check.low - slack && value <= check.high + slack;
    return verdict(check, fits ? ReadingFit::as_expected : ReadingFit::off, measured(check.kind, value));
}

ReadingVerdict judge_open(const Check& check, const Reading& reading) {
    if (reading.open) {
        return verdict(check, ReadingFit::as_expected, "OL");
    }
    if (!reading.value) {
        return reading.yes ? looked(check, *reading.yes) : unreadable(check, "No figure was given.");
    }
    if (!std::isfinite(*reading.value) || *reading.value < 0.0) {
        return unreadable(check, "A figure of 0 or more was expected.");
    }
    return verdict(check, *reading.value >= kApart_ohm ? ReadingFit::as_expected : ReadingFit::off,
                   readout_ohm(*reading.value));
}

// A light seen dark that should show, or the other way about; and one seen dim that should be lit. One that
// is brighter than expected is no fault.
bool as_predicted(const std::string& expected, const std::string& seen) {
    if (expected == seen) {
        return true;
    }
    return expected == "dim" && seen == "lit";
}

ReadingVerdict judge_lights(const Check& check, const Reading& reading) {
    if (reading.seen.empty()) {
        return reading.yes ? looked(check, *reading.yes) : unreadable(check, "No light was named.");
    }
    std::vector<std::string> differ;
    std::vector<std::string> unnamed;
    for (const LightExpectation& expected : check.lights) {
        const auto seen = std::find_if(reading.seen.begin(), reading.seen.end(),
                                       [&](const LightExpectation& one) { return one.led == expected.led; });
        if (seen == reading.seen.end()) {
            unnamed.push_back(expected.led);
        } else if (!as_predicted(expected.state, seen->state)) {
            differ.push_back(expected.led + " is " + seen->state + ", expected " + expected.state);
        }
    }
    if (!differ.empty()) {
        std::string text;
        for (const std::string& one : differ) {
            text += (text.empty() ? "" : "; ") + one;
        }
        return {check.id, ReadingFit::off, text};
    }
    if (!unnamed.empty()) {
        return unreadable(check, "Nothing was said of " + listed(unnamed) + ".");
    }
    return {check.id, ReadingFit::as_expected, check.expect_text + ", as expected"};
}

} // namespace

ReadingVerdict judge_reading(const Check& check, const Reading& reading) {
    switch (check.kind) {
    case CheckKind::resistance:
    case CheckKind::volts:
    case CheckKind::height:
        return judge_range(check, reading);
    case CheckKind::open:
        return judge_open(check, reading);
    case CheckKind::lights:
        return judge_lights(check, reading);
    case CheckKind::look:
        break;
    }
    return reading.yes ? looked(check, *reading.yes) : unreadable(check, "Yes or no was expected.");
}

} // namespace lanternleaf
