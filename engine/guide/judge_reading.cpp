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

std::string measured(CheckKind kind, double value, const Words& words) {
    switch (kind) {
    case CheckKind::volts:
        return words.volts(value);
    case CheckKind::height:
        return words.mm(value);
    default:
        return words.ohm(value);
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

ReadingVerdict verdict(const Check& check, ReadingFit fit, const std::string& seen, const Words& words) {
    return {check.id, fit, words("check.expected", {{"seen", seen}, {"expected", check.expect_text}})};
}

ReadingVerdict unreadable(const Check& check, const std::string& what) {
    return {check.id, ReadingFit::unreadable, what};
}

// Answered without a meter: what was looked for was there, or not.
ReadingVerdict looked(const Check& check, bool yes, const Words& words) {
    return verdict(check, yes ? ReadingFit::as_expected : ReadingFit::off,
                   words(yes ? "check.as_it_should" : "check.not_as_it_should"), words);
}

ReadingVerdict judge_range(const Check& check, const Reading& reading, const Words& words) {
    if (reading.open) {
        return verdict(check, ReadingFit::off, "OL", words);
    }
    if (!reading.value) {
        return reading.yes ? looked(check, *reading.yes, words) : unreadable(check, words("check.no_figure"));
    }
    const double value = *reading.value;
    if (!std::isfinite(value) || value < 0.0) {
        return unreadable(check, words("check.figure_from_zero"));
    }
    const double slack = half_digit(check.kind) + 1e-9;
    const bool fits = value >= check.low - slack && value <= check.high + slack;
    return verdict(check, fits ? ReadingFit::as_expected : ReadingFit::off,
                   measured(check.kind, value, words), words);
}

ReadingVerdict judge_open(const Check& check, const Reading& reading, const Words& words) {
    if (reading.open) {
        return verdict(check, ReadingFit::as_expected, "OL", words);
    }
    if (!reading.value) {
        return reading.yes ? looked(check, *reading.yes, words) : unreadable(check, words("check.no_figure"));
    }
    if (!std::isfinite(*reading.value) || *reading.value < 0.0) {
        return unreadable(check, words("check.figure_from_zero"));
    }
    return verdict(check, *reading.value >= kApart_ohm ? ReadingFit::as_expected : ReadingFit::off,
                   words.ohm(*reading.value), words);
}

// A light seen dark that should show, or the other way about; and one seen dim that should be lit. One that
// is brighter than expected is no fault.
bool as_predicted(const std::string& expected, const std::string& seen) {
    if (expected == seen) {
        return true;
    }
    return expected == "dim" && seen == "lit";
}

std::string state_word(const std::string& state, const Words& words) {
    return words("check.light_" + state);
}

ReadingVerdict judge_lights(const Check& check, const Reading& reading, const Words& words) {
    if (reading.seen.empty()) {
        return reading.yes ? looked(check, *reading.yes, words)
                           : unreadable(check, words("check.no_light_named"));
    }
    std::vector<std::string> differ;
    std::vector<std::string> unnamed;
    for (const LightExpectation& expected : check.lights) {
        const auto seen = std::find_if(reading.seen.begin(), reading.seen.end(),
                                       [&](const LightExpectation& one) { return one.led == expected.led; });
        if (seen == reading.seen.end()) {
            unnamed.push_back(expected.led);
        } else if (!as_predicted(expected.state, seen->state)) {
            differ.push_back(words("check.light_differs", {{"led", expected.led},
                                                           {"seen", state_word(seen->state, words)},
                                                           {"expected", state_word(expected.state, words)}}));
        }
    }
    if (!differ.empty()) {
        std::string text;
        for (const std::string& one : differ) {
            text = text.empty() ? one : words("check.light_also", {{"before", text}, {"light", one}});
        }
        return {check.id, ReadingFit::off, text};
    }
    if (!unnamed.empty()) {
        return unreadable(check, words("check.nothing_said_of", {{"lights", words.list(unnamed)}}));
    }
    return {check.id, ReadingFit::as_expected, words("check.as_expected", {{"seen", check.expect_text}})};
}

} // namespace

ReadingVerdict judge_reading(const Check& check, const Reading& reading, const Words& words) {
    switch (check.kind) {
    case CheckKind::resistance:
    case CheckKind::volts:
    case CheckKind::height:
        return judge_range(check, reading, words);
    case CheckKind::open:
        return judge_open(check, reading, words);
    case CheckKind::lights:
        return judge_lights(check, reading, words);
    case CheckKind::look:
        break;
    }
    return reading.yes ? looked(check, *reading.yes, words) : unreadable(check, words("check.yes_or_no"));
}

} // namespace lanternleaf
