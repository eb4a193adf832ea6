#include "verbs/verbs.h"

#include "verbs/verb.h"
#include "verbs/words_option.h"

#include <algorithm>
#include <CLI/CLI.hpp>
#include <ostream>

namespace lanternleaf {

namespace {

const Argument kCard = {"CARD", nullptr, "the card file, NAME.card.json", true};
const Argument kJson = {"--json", nullptr, "print one JSON object"};

const std::vector<Verb>& table() {
    static const std::vector<Verb> verbs = {
        {"check", "finds the conductors, solves the circuit, lists findings", {kCard, kJson}, check_verb},
        {"steps",
         "the seven steps and their moves, with the reading to expect at each",
         {kCard, kLanguageOption, kInchesOption, kJson},
         steps_verb},
        {"make",
         "walks every step without a window, with a verdict on each, and writes the build record",
         {kCard,
          {"--out", "DIR", "the folder for the journal and the record", true},
          {"--script", "FILE", "what is done differently, measured and seen"},
          {"--copy", nullptr, "also a folder with the record as page, sheet and table"},
          kLanguageOption,
          kInchesOption,
          kJson},
         make_verb},
        {"life",
         "brightness of each LED and cell voltage against hours of light",
         {kCard,
          kJson,
          {"--csv", nullptr, "print a table of comma-separated values"},
          {"--hours", "H", "how far the curves go; until dark unless said"},
          {"--temperature", "C", "of cell and LEDs in degrees Celsius, 23 unless said"},
          {"--press", "S", "how many seconds one press is taken to last, 5 unless said"},
          {"--years", "Y", "how long the cell has lain on the shelf, 0 unless said"},
          {"--stock", "MM", "thickness of one layer of card, 0.25 unless said"}},
         life_verb},
        {"route",
         "lays traces for the card's lights and holder (what was laid is replaced)",
         {kCard, {"--out", "NEW", "the card file to write, NAME.card.json", true}, kJson},
         route_verb},
        {"mend",
         "ranks faults that explain what is seen, and names the next best test",
         {kCard,
          {"--seen", "L1=dark,L2=lit", "how each light looks: lit, dim, dark or flickers"},
          {"--pressed", "yes|no", "whether pressing here and there changes anything"},
          {"--reading", "PLACE:PLACE=VALUE",
           "meter readings: flap:L3+=8ohm,L3+:L3-=2.6V,cell=2.9V,flap:bed=OL"},
          {"--answer", "TEST=N", "answers to tests that were named before, such as warm=1"},
          {"--proved", "N", "how many of the seven steps are proved, 0 unless said"},
          {"--meter", nullptr, "a meter is at hand"},
          kJson},
         mend_verb},
        {"print",
         "template at true size, step sheet, cutting list, safety label, as one PDF",
         {kCard,
          {"--out", "FILE.pdf", "the printout", true},
          {"--paper", "a4|letter", "a4 unless said"},
          {"--mirror", nullptr, "the template as seen through the sheet from behind"},
          {"--batch", "N", "how many cards the list and the labels are for"},
          {"--prices", "FILE", "what packs cost, for the cost of a card"},
          {"--parts", "NAMES", "which sheets: template,steps,list,label"},
          kLanguageOption,
          kInchesOption},
         print_verb},
        {"import",
         "checks a card that someone sent, with its pictures, and puts it into a library",
         {{"FOLDER", nullptr, "the folder it came in", true},
          {"--into", "DIR", "the library's folder", true}},
         import_verb},
        {"shot",
         "draws one screen of the app to a picture",
         {kCard,
          {"--screen", "NAME", "which screen", true},
          {"--size", "WxH", "in pixels, such as 1280x800", true},
          {"--out", "FILE.png", "the picture", true},
          {"--language", "NAME", "en, de or es"}},
         shot_verb},
    };
    return verbs;
}

bool offered(const Verb& verb, const VerbSurroundings& around) {
    return verb.run != shot_verb || around.shot;
}

const Verb* find_verb(const std::string& name) {
    for (const Verb& verb : table()) {
        if (name == verb.name) {
            return &verb;
        }
    }
    return nullptr;
}

bool is_option(const Argument& argument) {
    return argument.name[0] == '-';
}

std::string usage(const Verb& verb) {
    std::string line = std::string("lanternleaf ") + verb.name;
    for (const Argument& argument : verb.arguments) {
        std::string word = argument.name;
        if (argument.value != nullptr) {
            word += std::string(" ") + argument.value;
        }
        line += argument.required ? " " + word : " [" + word + "]";
    }
    return line;
}

void print_help(std::ostream& out, const VerbSurroundings& around) {
    out << "Lanternleaf takes a maker through building a light-up paper card.\n\n"
           "  lanternleaf [CARD]\n      opens the app (on the given card, if one is named)\n";
    for (const Verb& verb : table()) {
        if (offered(verb, around)) {
            out << "  " << usage(verb) << "\n      " << verb.summary << "\n";
        }
    }
    out << "\nExit status: 0 all well, 1 the card has a problem, 2 the input cannot be read.\n";
}

int refuse(std::ostream& err, const Problem& problem) {
    err << problem.sentence() << "\n";
    return static_cast<int>(ExitStatus::unreadable);
}

// The parser's own words can run over several lines; the promise is one.
Problem misused(const Verb& verb, const std::string& what) {
    return {std::string("lanternleaf ") + verb.name, "", what + "; usage: " + usage(verb)};
}

int parse_and_run(const Verb& verb, std::span<const std::string> args, std::ostream& out, std::ostream& err,
                  const VerbSurroundings& around) {
    CLI::App parser(verb.summary, std::string("lanternleaf ") + verb.name);
    std::vector<std::string> texts(verb.arguments.size());
    std::vector<CLI::Option*> options;
    for (std::size_t i = 0; i < verb.arguments.size(); ++i) {
        const Argument& argument = verb.arguments[i];
        const bool flag = is_option(argument) && argument.value == nullptr;
        CLI::Option* option = flag ? parser.add_flag(argument.name, argument.help)
                                   : parser.add_option(argument.name, texts[i], argument.help);
        option->required(argument.required);
        if (argument.value != nullptr) {
            option->option_text(argument.value);
        }
        options.push_back(option);
    }
    Arguments given;
    try {
        std::vector<std::string> reversed(args.rbegin(), args.rend()); // the order the parser wants
        parser.parse(reversed);
    } catch (const CLI::CallForHelp&) {
        out << "Usage: " << usage(verb) << "\n" << parser.help();
        return static_cast<int>(ExitStatus::well);
    } catch (const CLI::Error& error) {
        return refuse(err, misused(verb, error.what()));
    }
    for (std::size_t i = 0; i < options.size(); ++i) {
        if (options[i]->count() > 0) {
            given.set(verb.arguments[i].name, texts[i]);
        }
    }
    const Outcome<ExitStatus> status = verb.run(given, out, around);
    return status ? static_cast<int>(status.value()) : refuse(err, status.problem());
}

} // namespace

bool is_for_verbs(std::span<const std::string> args) {
    return !args.empty() &&
           !(args.size() == 1 && (args[0].ends_with(".json") || args[0].ends_with(".jsonl")));
}

int run_verb(std::span<const std::string> args, std::ostream& out, std::ostream& err,
             const VerbSurroundings& around) {
    if (args.empty() || args[0] == "--help" || args[0] == "-h") {
        print_help(out, around);
        return static_cast<int>(ExitStatus::well);
    }
    if (args[0] == "--version") {
        out << "lanternleaf " << LANTERNLEAF_VERSION << "\n";
        return static_cast<int>(ExitStatus::well);
    }
    const Verb* verb = find_verb(args[0]);
    if (verb == nullptr || !offered(*verb, around)) {
        std::string known;
        for (const Verb& one : table()) {
            known += offered(one, around) ? std::string(known.empty() ? "" : ", ") + one.name : "";
        }
        return refuse(err, {args[0], "", "expected a card file or one of the verbs " + known});
    }
    return parse_and_run(*verb, args.subspan(1), out, err, around);
}

Outcome<OpenCard> asked_card(const Arguments& args, const VerbSurroundings& around) {
    const Outcome<Parts> shipped = load_parts(around.assets);
    if (!shipped) {
        return shipped.problem();
    }
    return open_card(args.at("CARD"), parts_beside(args.at("CARD"), shipped.value()));
}

} // namespace lanternleaf
