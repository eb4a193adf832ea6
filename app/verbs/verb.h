// Verb: one row of the command line's table: a name, its options, and the function that answers.
// Exists so that adding a verb is one file and one row, and so that only verbs.cpp knows the argument parser.
#pragma once

#include "base/outcome.h"
#include "desk/desk.h"
#include "verbs/verbs.h"

#include <iosfwd>
#include <map>
#include <string>
#include <vector>

namespace lanternleaf {

/// One thing a verb is given. `name` is "CARD" (by its place), "--json" (a flag) or "--out".
struct Argument {
    const char* name;
    const char* value; ///< what stands for its value in the help, "DIR"; null for flags and places
    const char* help;
    bool required = false;
};

/// The arguments as given, by Argument::name; flags that are set hold "".
class Arguments {
public:
    void set(const std::string& name, std::string value) { values_[name] = std::move(value); }

    [[nodiscard]] bool has(const std::string& name) const { return values_.count(name) != 0; }

    [[nodiscard]] const std::string& at(const std::string& name) const { return values_.at(name); }

private:
    std::map<std::string, std::string> values_;
};

enum class ExitStatus { well = 0, card_problem = 1, unreadable = 2 };

/// A Problem is printed as one line, and the exit status is then `unreadable`.
using VerbFunction = Outcome<ExitStatus> (*)(const Arguments& args, std::ostream& out,
                                             const VerbSurroundings& around);

/// The card that CARD names, with the shipped parts under its own.
[[nodiscard]] Outcome<OpenCard> asked_card(const Arguments& args, const VerbSurroundings& around);

struct Verb {
    const char* name;
    const char* summary;
    std::vector<Argument> arguments;
    VerbFunction run;
};

[[nodiscard]] Outcome<ExitStatus> check_verb(const Arguments& args, std::ostream& out,
                                             const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> steps_verb(const Arguments& args, std::ostream& out,
                                             const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> make_verb(const Arguments& args, std::ostream& out,
                                            const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> print_verb(const Arguments& args, std::ostream& out,
                                             const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> life_verb(const Arguments& args, std::ostream& out,
                                            const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> shot_verb(const Arguments& args, std::ostream& out,
                                            const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> mend_verb(const Arguments& args, std::ostream& out,
                                            const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> import_verb(const Arguments& args, std::ostream& out,
                                              const VerbSurroundings& around);
[[nodiscard]] Outcome<ExitStatus> route_verb(const Arguments& args, std::ostream& out,
                                             const VerbSurroundings& around);

} // namespace lanternleaf
