#include "desk/desk.h"
#include "verbs/life_report.h"
#include "verbs/verb.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ostream>

namespace lanternleaf {

namespace {

struct Option {
    const char* name;
    double low;
    double high;
    const char* unit;
    double* value;
};

Outcome<Done> read_options(const Arguments& args, const std::vector<Option>& options) {
    for (const Option& option : options) {
        if (!args.has(option.name)) {
            continue;
        }
        const std::string& text = args.at(option.name);
        char* end = nullptr;
        const double value = std::strtod(text.c_str(), &end);
        if (text.empty() || end != text.c_str() + text.size() || !(value >= option.low) ||
            !(value <= option.high)) {
            char range[80];
            std::snprintf(range, sizeof range, "%g to %g %s", option.low, option.high, option.unit);
            return Problem{"lanternleaf life", option.name,
                           std::string("expected a number from ") + range + ", found \"" + text + "\""};
        }
        *option.value = value;
    }
    return Done{};
}

/// Until the last light is dark, or the last is plainly dim where none gets dark; in whole hours.
double shown_hours(const Life& life, Use use) {
    double most_h = 1.0;
    for (const LifeRun& run : life.runs) {
        if (run.line != 0 || run.use != use) {
            continue;
        }
        for (const MarkHours& marks : run.marks) {
            for (const double hours : marks) {
                most_h = std::isinf(hours) ? most_h : std::fmax(most_h, hours);
            }
        }
    }
    return std::ceil(most_h);
}

} // namespace

Outcome<ExitStatus> life_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    LifeOptions options;
    ClosingOptions closing;
    double shown_h = 0.0;
    const Outcome<Done> read = read_options(args, {{"--hours", 0.01, 100'000, "h", &shown_h},
                                                   {"--temperature", -40, 85, "C", &options.celsius},
                                                   {"--press", 0.1, 3600, "s", &options.press_s},
                                                   {"--years", 0, 30, "years", &options.stored_years},
                                                   {"--stock", 0.05, 5, "mm", &closing.stock_mm}});
    if (!read) {
        return read.problem();
    }
    if (args.has("--json") && args.has("--csv")) {
        return Problem{"lanternleaf life", "", "expected --json or --csv, not both"};
    }
    options.most_h = std::fmax(options.most_h, shown_h);
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Card& card = open.value().card;
    const Parts& parts = open.value().parts;
    const Conductors conductors = find_conductors(card, parts);
    LifeFacts facts{card, parts, live(card, parts, conductors, options), Use::press, shown_h, {}, {}, {}};
    facts.use = parts.holders.at(card.holder.type).kind == HolderKind::flap ? Use::press : Use::left_on;
    facts.shown_h = shown_h > 0.0 ? shown_h : shown_hours(facts.life, facts.use);
    facts.closing = close_up(card, parts, closing);
    if (!args.has("--csv")) {
        facts.resistors = suggest_resistors(card, parts, conductors);
        HelpOptions help;
        help.celsius = options.celsius;
        help.press_s = options.press_s;
        facts.helps = what_helps(card, parts, conductors, help);
    }
    out << (args.has("--json") ? life_json(facts) : args.has("--csv") ? life_csv(facts) : life_text(facts));
    // No light at all, or one that may be damaged, is a problem of the card.
    const bool damaged = std::any_of(facts.life.reversed.begin(), facts.life.reversed.end(),
                                     [](const ReversedLight& light) { return light.beyond(); });
    const bool none = dark_from_start(facts.life).size() == card.leds.size();
    return facts.life.shorted || !facts.life.solved || damaged || none ? ExitStatus::card_problem
                                                                       : ExitStatus::well;
}

} // namespace lanternleaf
