// Which side of a light is minus: one of the bag, across a coin cell.
#include "base/readout.h"
#include "learn/learnt.h"
#include "learn/limits.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// kT/q at 25 C, as LedType's law has it (CODATA 2018: k and q exact).
constexpr double kThermal_V = 1.380649e-23 * 298.15 / 1.602176634e-19;

double forward_V(const LedType& led, double mA) {
    const double amps = mA * 1e-3;
    return led.ideality * kThermal_V * std::log1p(amps / led.saturation_A) + amps * led.series_ohm;
}

// The saturation current with which the law passes through one point.
double saturation_through(const LedType& led, double volts, double mA) {
    const double amps = mA * 1e-3;
    const double junction_V = volts - amps * led.series_ohm;
    return amps / std::expm1(junction_V / (led.ideality * kThermal_V));
}

// Words for a mark stand in the middle of a sentence.
bool fit_to_say(const std::string& looks) {
    return !looks.empty() && looks.size() <= 40 && looks.find_first_not_of(' ') != std::string::npos &&
           std::none_of(looks.begin(), looks.end(), [](char c) {
               const auto code = static_cast<unsigned char>(c);
               return code < 0x20 || code == 0x7F;
           });
}

// The id of the same package in another colour; empty when nobody describes it.
std::string in_colour(const Parts& known, const LedType& type, const std::string& colour) {
    for (const auto& [id, led] : known.leds) {
        if (led.package == type.package && led.colour == colour) {
            return id;
        }
    }
    return "";
}

} // namespace

Outcome<Learnt> learn_led(const TouchTest& test, const Parts& known, const std::string& at,
                          const Words& words) {
    const auto taken_for = known.leds.find(test.type);
    if (taken_for == known.leds.end()) {
        return Problem{"", test.type, "expected a light that is among the parts"};
    }
    std::string id = test.type;
    if (!test.colour.empty() && test.colour != taken_for->second.colour) {
        id = in_colour(known, taken_for->second, test.colour);
        if (id.empty()) {
            return Problem{"", test.type,
                           "expected a colour that this kind of light comes in, found " + test.colour};
        }
    }
    if (!fit_to_say(test.looks)) {
        return Problem{"", test.type, "expected the mark in a few words, such as \"green line\""};
    }
    LedType led = known.leds.at(id);
    led.mark = LedMark{!test.marked_on_plus, test.looks, {}};
    led.measured_at = at;
    led.source = learn::measured_on(at) + "it lit with the " + test.looks + " on the cell's " +
                 (test.marked_on_plus ? "+" : "-") + " face";
    if (test.forward_V) {
        const bool at_all = learn::usable(*test.forward_V) && learn::usable(test.forward_mA) &&
                            test.forward_mA > 0.0 && test.forward_mA <= led.max_mA;
        const double typical_V = at_all ? forward_V(led, test.forward_mA) : 0.0;
        if (!at_all || std::abs(*test.forward_V - typical_V) > kMostShift_V ||
            *test.forward_V <= test.forward_mA * 1e-3 * led.series_ohm) {
            return Problem{
                "", id,
                words("learn.no_forward", {{"colour", led.colour}, {"volts", words.volts(typical_V)}})};
        }
        led.saturation_A = saturation_through(led, *test.forward_V, test.forward_mA);
        led.forward.reset(); // that was the spread of others
        led.source += ", " + readout_volts(*test.forward_V) + " at " + readout_mA(test.forward_mA);
    }
    led.source += "; all else as " + id + " was known";
    Learnt out;
    out.sort = PartSort::led;
    out.id = id;
    out.parts.leds[id] = std::move(led);
    return out;
}

} // namespace lanternleaf
