#include "desk/desk.h"
#include "files/files.h"
#include "learn/own_parts.h"
#include "record/journal.h"
#include "record/utc.h"
#include "record/walk.h"
#include "report/copy.h"
#include "verbs/plain_text.h"
#include "verbs/report_json.h"
#include "verbs/verb.h"
#include "verbs/words_option.h"

#include <algorithm>
#include <ostream>

namespace lanternleaf {

namespace {

const char* const kJournalEnding = ".build.jsonl";
const char* const kRecordEnding = ".record.json";

Outcome<BuildScript> script_for(const Arguments& args) {
    if (!args.has("--script")) {
        return BuildScript{};
    }
    const std::string& path = args.at("--script");
    const Outcome<std::string> text = read_file(path);
    if (!text) {
        return text.problem();
    }
    return read_script(text.value(), path);
}

bool holds(const std::vector<std::string>& names, const std::string& name) {
    return std::binary_search(names.begin(), names.end(), name);
}

// A journal of a name not used yet in the folder: NAME, else NAME-2, NAME-3...: a build is never written
// over.
Outcome<JournalFile> new_journal(const std::string& folder, const std::string& name, MadeFiles& files) {
    std::string free = name;
    for (int number = 2;; ++number) {
        if (!holds(files_in(folder, kJournalEnding), free + kJournalEnding) &&
            !holds(files_in(folder, kRecordEnding), free + kRecordEnding)) {
            files = {folder + "/" + free + kJournalEnding, folder + "/" + free + kRecordEnding, ""};
            Outcome<JournalFile> journal = JournalFile::create(files.journal);
            // Another build may have taken the name in between; then it is listed next time round.
            if (journal || !holds(files_in(folder, kJournalEnding), free + kJournalEnding)) {
                return journal;
            }
        }
        free = name + "-" + std::to_string(number);
    }
}

Outcome<MadeFiles> write_build(const std::string& folder, const std::string& name, const Walk& walk,
                               const Parts& parts) {
    if (const Outcome<Done> made = make_folder(folder); !made) {
        return made.problem();
    }
    MadeFiles files;
    Outcome<JournalFile> journal = new_journal(folder, name, files);
    if (!journal) {
        return journal.problem();
    }
    for (const Event& event : walk.events) {
        if (const Outcome<Done> added = journal.value().add(event); !added) {
            return added.problem();
        }
    }
    if (const Outcome<Done> written = write_file(files.record, write_record(walk.record, parts)); !written) {
        return written.problem();
    }
    return files;
}

// Beside the record: "NAME.copy" for the record "NAME.record.json". Its name is free when that one's was.
Outcome<std::string> write_copy_beside(const MadeFiles& files, const std::string& card_name, const Walk& walk,
                                       const Parts& parts, const Words& words) {
    CopyWish wish;
    if (const Outcome<std::string> journal = read_file(files.journal)) {
        wish.journal = journal.value();
    }
    const Outcome<std::vector<CopiedFile>> copied =
        copy_of(walk.record, walk.events, parts, card_name, wish, words);
    if (!copied) {
        return copied.problem();
    }
    const std::string folder =
        files.record.substr(0, files.record.size() - std::char_traits<char>::length(kRecordEnding)) + ".copy";
    if (const Outcome<Done> written = write_copy(folder, copied.value()); !written) {
        return written.problem();
    }
    return folder;
}

std::string heading_of(const StepWalk& step, const Words& words) {
    const bool proved = step.state == VerdictState::proved;
    return words(
        proved && step.stops > 0 ? "verbs.step_proved_fixed"
        : proved                 ? "verbs.step_proved"
        : step.regardless        ? "verbs.step_regardless"
                                 : "verbs.step_stopped",
        {{"number", static_cast<int>(step.step)}, {"title", title_of(step.step, words)}, {"n", step.moves}});
}

void print_step(std::ostream& out, const StepWalk& step, const Words& words) {
    out << heading_of(step, words) << "\n   " << printable(step.sentence) << "\n";
    for (std::size_t i = 0; i < step.readings.size(); ++i) {
        const ReadingFit fit = step.fits[i].fit;
        if (fit == ReadingFit::as_expected && step.readings[i].simulated) {
            continue;
        }
        const std::string line = words(step.readings[i].simulated ? "verbs.simulated" : "verbs.given",
                                       {{"check", step.readings[i].check}, {"reading", step.fits[i].text}});
        out << "   "
            << printable(fit == ReadingFit::off          ? words("verbs.fit_off", {{"line", line}})
                         : fit == ReadingFit::unreadable ? words("verbs.fit_unreadable", {{"line", line}})
                                                         : line)
            << "\n";
    }
    if (step.state == VerdictState::stopped) {
        for (const std::string& action : step.to_do) {
            out << "   " << printable(words("verbs.to_do", {{"what", action}})) << "\n";
        }
    }
}

void print_walk(std::ostream& out, const Walk& walk, const MadeFiles& files, const Words& words) {
    out << printable(words("verbs.walk", {{"card", walk.record.title}})) << "\n\n";
    for (const StepWalk& step : walk.steps) {
        print_step(out, step, words);
    }
    out << "\n"
        << (walk.all_proved() ? words("verbs.all_proved")
                              : words("verbs.some_proved", {{"n", proved_count(walk.record)}}))
        << "\n"
        << printable(words("verbs.journal", {{"file", files.journal}})) << "\n"
        << printable(words("verbs.record", {{"file", files.record}})) << "\n";
    if (!files.copy.empty()) {
        out << printable(words("verbs.copy", {{"file", files.copy}})) << "\n";
    }
}

} // namespace

Outcome<ExitStatus> make_verb(const Arguments& args, std::ostream& out, const VerbSurroundings& around) {
    const Outcome<Parts> shipped = load_parts(around.assets);
    if (!shipped) {
        return shipped.problem();
    }
    const Parts known = parts_beside(args.at("CARD"), shipped.value());
    Outcome<OpenCard> open = open_card(args.at("CARD"), known);
    if (!open) {
        return open.problem();
    }
    open.value().card.own_parts = carried_by(open.value().card, known); // the record must stand alone
    const Outcome<Words> words = asked_words(args, around);
    if (!words) {
        return words.problem();
    }
    Outcome<BuildScript> script = script_for(args);
    if (!script) {
        return script.problem();
    }
    const std::string name = name_of_card_file(open.value().path);
    const Outcome<Walk> walk =
        walk_build(open.value().card, open.value().parts, script.value(),
                   name + "-" + utc_stamp(around.now_s()), around.now_s, words.value());
    if (!walk) {
        Problem problem = walk.problem();
        problem.file = problem.file.empty() ? open.value().path : problem.file;
        return problem;
    }
    Outcome<MadeFiles> files = write_build(args.at("--out"), name, walk.value(), open.value().parts);
    if (!files) {
        return files.problem();
    }
    if (args.has("--copy")) {
        const Outcome<std::string> copy =
            write_copy_beside(files.value(), name, walk.value(), shipped.value(), words.value());
        if (!copy) {
            return copy.problem();
        }
        files.value().copy = copy.value();
    }
    if (args.has("--json")) {
        out << make_report(walk.value(), files.value());
    } else {
        print_walk(out, walk.value(), files.value(), words.value());
    }
    return walk.value().all_proved() ? ExitStatus::well : ExitStatus::card_problem;
}

} // namespace lanternleaf
