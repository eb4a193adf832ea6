#include "base/readout.h"
#include "desk/desk.h"
#include "findings/review.h"
#include "verbs/plain_text.h"
#include "verbs/report_json.h"
#include "verbs/verb.h"

#include <ostream>

namespace lanternleaf {

namespace {

std::string lights_table(const Card& card, const Lighting& lighting) {
    std::vector<std::vector<std::string>> rows;
    for (const Light& light : lighting.lights) {
        const Led& led = card.leds[static_cast<std::size_t>(light.led)];
        rows.push_back({printable(led.id), name_of(light.state), readout_mA(light.current_mA),
                        readout_volts(light.volts),
                        readout_percent(light.brightness) + " of its brightness at 5 mA"});
    }
    return columns(rows, "  ");
}

void print_findings(std::ostream& out, const Review& review) {
    out << counted(review.count(Level::problem), "problem") << ", "
        << counted(review.count(Level::caution), "caution") << ", "
        << counted(review.count(Level::note), "note") << "\n";
    for (const Finding& finding : review.findings) {
        out << "\n  " << name_of(finding.level) << ": " << printable(finding.text) << "\n    " << finding.rule
            << " at " << readout_number(finding.at_mm.x, 1) << ", " << readout_number(finding.at_mm.y, 1)
            << " mm";
        if (!finding.parts.empty()) {
            out << " (" << printable(joined(finding.parts)) << ")";
        }
        out << "\n";
        if (!finding.fix.empty()) {
            out << "    To do: " << printable(finding.fix) << "\n";
        }
    }
}

void print_check(std::ostream& out, const Card& card, const Review& review) {
    out << printable(card.title) << "\n\n";
    if (review.lighting.exit != SolveExit::converged) {
        out << "The circuit could not be solved; the figures below are not to be relied on.\n\n";
    }
    if (!card.leds.empty()) {
        out << "Lights, with a fresh cell and the switch pressed\n" << lights_table(card, review.lighting);
    }
    out << "Cell: " << readout_mA(review.lighting.cell_mA) << " at " << readout_volts(review.lighting.cell_V)
        << "\n\n";
    print_findings(out, review);
}

} // namespace

Outcome<ExitStatus> check_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Card& card = open.value().card;
    const Review found = review(card, open.value().parts);
    if (args.has("--json")) {
        out << check_report(card, found);
    } else {
        print_check(out, card, found);
    }
    return found.count(Level::problem) > 0 ? ExitStatus::card_problem : ExitStatus::well;
}

} // namespace lanternleaf
