// route: lays traces for the card's lights and holder, writes the new card, and says what it costs. A card
// that could not be laid clean is written all the same, for the maker to go on from; the exit status tells.
#include "base/readout.h"
#include "cardfile/cardfile.h"
#include "desk/desk.h"
#include "files/files.h"
#include "routing/route.h"
#include "verbs/plain_text.h"
#include "verbs/route_report.h"
#include "verbs/verb.h"

#include <ostream>

namespace lanternleaf {

namespace {

void print_route(std::ostream& out, const RouteResult& result, const std::string& file) {
    if (!result.suggestions.empty()) {
        const RouteReport& report = result.suggestions.front().report;
        out << "Tape: " << readout_mm(report.length_mm) << " in " << counted(report.cuts, "strip") << ", "
            << counted(report.folds, "fold") << ", " << counted(report.joints, "joint") << ", "
            << counted(report.crossings, "crossing") << "\n"
            << "The shortest pair of tapes side by side through all lights: " << readout_mm(report.bound_mm)
            << " (this is " << readout_number(report.ratio, 2) << " times that)\n";
        if (!report.turned.empty()) {
            out << "Turned: " << printable(joined(report.turned)) << "\n";
        }
        for (const Finding& finding : result.suggestions.front().findings) {
            out << "  " << name_of(finding.level) << ": " << printable(finding.text) << "\n";
        }
        out << "Written: " << printable(file) << "\n";
    }
    if (!result.why_not.empty()) {
        out << printable(result.why_not) << "\n";
    }
}

} // namespace

Outcome<ExitStatus> route_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    RouteRequest request;
    request.card = open.value().card;
    request.parts = open.value().parts;
    const RouteResult result = route(request);
    const std::string& file = args.at("--out");
    if (!result.suggestions.empty()) {
        const Outcome<Done> written = write_file(file, write_card(result.suggestions.front().card));
        if (!written) {
            return written.problem();
        }
    }
    if (args.has("--json")) {
        out << route_report(result, file);
    } else {
        print_route(out, result, file);
    }
    return result.clean() ? ExitStatus::well : ExitStatus::card_problem;
}

} // namespace lanternleaf
