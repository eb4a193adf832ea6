#include "desk/desk.h"
#include "guide/sequence.h"
#include "verbs/plain_text.h"
#include "verbs/report_json.h"
#include "verbs/verb.h"
#include "verbs/words_option.h"

#include <ostream>

namespace lanternleaf {

namespace {

void print_reading(std::ostream& out, const Check& check, const std::string& indent, const Words& words) {
    out << indent << printable(words("verbs.check", {{"what", check.title}, {"reading", check.expect_text}}))
        << "\n";
    if (!check.without_meter.empty()) {
        out << indent << "  " << printable(words("verbs.without_meter", {{"look", check.without_meter}}))
            << "\n";
    }
}

void print_steps(std::ostream& out, const Card& card, const std::vector<Step>& steps, const Words& words) {
    out << printable(card.title) << "\n";
    for (const Step& step : steps) {
        out << "\n" << static_cast<int>(step.id) << "  " << printable(step.title) << "\n";
        if (!step.goal.empty()) {
            out << "   " << printable(step.goal) << "\n";
        }
        int number = 0;
        for (const Move& move : step.moves) {
            out << "   " << static_cast<int>(step.id) << "." << ++number << "  "
                << printable(move.adult_only ? words("verbs.adult", {{"title", move.title}}) : move.title)
                << "\n        " << printable(move.sentence) << "\n";
            if (move.check) {
                print_reading(out, *move.check, "        ", words);
            }
        }
        for (const Check& check : step.proof) {
            print_reading(out, check, check.needed ? "   " : "   " + words("verbs.help") + " ", words);
        }
    }
}

} // namespace

Outcome<ExitStatus> steps_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<OpenCard> open = asked_card(args, around);
    if (!open) {
        return open.problem();
    }
    const Outcome<Words> words = asked_words(args, around);
    if (!words) {
        return words.problem();
    }
    const std::vector<Step> steps = make_steps(open.value().card, open.value().parts, words.value());
    if (args.has("--json")) {
        out << steps_report(open.value().card, steps);
    } else {
        print_steps(out, open.value().card, steps, words.value());
    }
    return ExitStatus::well;
}

} // namespace lanternleaf
