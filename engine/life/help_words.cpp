#include "life/help_words.h"

#include <cmath>

namespace lanternleaf {

namespace {

std::string names_of(const Card& card, const std::vector<int>& leds, const Words& words) {
    if (leds.size() == card.leds.size() && leds.size() > 1) {
        return words("life.all_lights");
    }
    std::vector<std::string> names;
    for (const int led : leds) {
        names.push_back(card.leds[static_cast<std::size_t>(led)].id);
    }
    return words.list(names);
}

std::string colour_name(const std::string& colour, const Words& words) {
    const std::string key = "life.colour_" + colour;
    return words.has(key) ? words(key) : colour; // an own part may have any
}

std::string deed_of(const Card& card, const Parts& parts, const Help& help, const Words& words) {
    switch (help.kind) {
    case HelpKind::fewer_lights:
        return words("life.without", {{"lights", names_of(card, help.leds, words)}});
    case HelpKind::other_colour:
        return words("life.with_colour", {{"colour", colour_name(parts.leds.at(help.type).colour, words)},
                                          {"lights", names_of(card, help.leds, words)}});
    case HelpKind::resistor:
        return words(help.leds.size() == 1                  ? "life.with_resistor"
                     : help.leds.size() == card.leds.size() ? "life.with_resistor_all"
                                                            : "life.with_resistor_each",
                     {{"ohm", words.ohm(help.ohm)}, {"lights", names_of(card, help.leds, words)}});
    case HelpKind::other_cell:
        break;
    }
    return words(help.other_holder ? "life.with_cell_holder" : "life.with_cell", {{"cell", help.type}});
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

std::string help_sentence(const Card& card, const Parts& parts, const Help& help, Use use, double press_s,
                          const Words& words) {
    const auto span = [&](double hours) {
        if (use == Use::left_on || press_s <= 0.0) {
            return hours > 0.0 ? words.hours(hours) : words("life.no_hours");
        }
        const double presses = hours * 3600.0 / press_s;
        // Two figures: more would be false.
        const double unit = presses > 0.0 ? std::pow(10.0, std::floor(std::log10(presses)) - 1.0) : 1.0;
        return words("life.presses", {{"presses", words.number(std::round(presses / unit) * unit, 0)}});
    };
    std::string effects =
        words("life.gain", {{"after", span(help.after_h)}, {"before", span(help.before_h)}});
    if (std::fabs(help.after_ratio - help.before_ratio) >= 0.05) {
        effects += "; " + words("life.evenness", {{"after", words.percent(help.after_ratio)},
                                                  {"before", words.percent(help.before_ratio)}});
    }
    if (help.fresh_seen < 0.97) {
        effects += "; " + words("life.fresh", {{"percent", words.percent(help.fresh_seen)}});
    }
    return words(help.estimate ? "life.help_estimate" : "life.help",
                 {{"deed", deed_of(card, parts, help, words)}, {"effects", effects}});
}

} // namespace lanternleaf
