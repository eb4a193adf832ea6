#include "life/help_words.h"

#include "base/readout.h"

#include <cmath>

namespace lanternleaf {

namespace {

std::string names_of(const Card& card, const std::vector<int>& leds) {
    if (leds.size() == card.leds.size() && leds.size() > 1) {
        return "all lights";
    }
    std::string names;
    for (std::size_t i = 0; i < leds.size(); ++i) {
        names += i == 0 ? "" : i + 1 == leds.size() ? " and " : ", ";
        names += card.leds[static_cast<std::size_t>(leds[i])].id;
    }
    return names;
}

std::string deed_of(const Card& card, const Parts& parts, const Help& help) {
    switch (help.kind) {
    case HelpKind::fewer_lights:
        return "Without " + names_of(card, help.leds);
    case HelpKind::other_colour:
        return "With " + parts.leds.at(help.type).colour + " for " + names_of(card, help.leds);
    case HelpKind::resistor:
        return "With " + readout_ohm(help.ohm) + " in series with " +
               (help.leds.size() == 1                  ? names_of(card, help.leds)
                : help.leds.size() == card.leds.size() ? std::string("each light")
                                                       : "each of " + names_of(card, help.leds));
    case HelpKind::other_cell:
        break;
    }
    return "With a " + help.type + (help.other_holder ? ", which needs another holder" : "");
}

} // namespace

const char* name_of(HelpKind kind) {
    switch (kind) {
    case HelpKind::fewer_lights:
        return "fewer-lights";
    case HelpKind::other_colour:
        return "other-colour";
    case HelpKind::resistor:
        return "resistor";
    case HelpKind::other_cell:
        break;
    }
    return "other-cell";
}

std::string help_sentence(const Card& card, const Parts& parts, const Help& help, Use use, double press_s) {
    const auto span = [&](double hours) {
        if (use == Use::left_on || press_s <= 0.0) {
            return hours > 0.0 ? readout_hours(hours) : std::string("0 h");
        }
        const double presses = hours * 3600.0 / press_s;
        // Two figures: more would be false.
        const double unit = presses > 0.0 ? std::pow(10.0, std::floor(std::log10(presses)) - 1.0) : 1.0;
        return readout_number(std::round(presses / unit) * unit, 0) + " presses";
    };
    std::string text = deed_of(card, parts, help) + ": " + span(help.after_h) +
                       " until the first light is plainly dim instead of " + span(help.before_h);
    if (std::fabs(help.after_ratio - help.before_ratio) >= 0.05) {
        text += "; the most uneven neighbours stand at " + readout_percent(help.after_ratio) +
                " instead of " + readout_percent(help.before_ratio);
    }
    if (help.fresh_seen < 0.97) {
        text += "; fresh, the light that loses most looks " + readout_percent(help.fresh_seen) + " as bright";
    }
    return text + (help.estimate ? " (estimate: this cell is scaled from the CR2032)." : ".");
}

} // namespace lanternleaf
