// What needs other builds than the one that is open: two side by side, and the figures over the library.
#include "files/files.h"
#include "model/update.h"
#include "model/update_log.h"
#include "record/journal.h"

#include <algorithm>

namespace lanternleaf {

namespace {

struct ReadBuild {
    Record record;
    std::vector<Event> events;
};

Outcome<ReadBuild> read_build(const Surroundings& around, const std::string& journal) {
    const Outcome<std::string> text = read_file(journal);
    if (!text) {
        return text.problem();
    }
    Outcome<std::vector<Event>> events = read_journal(text.value(), journal);
    if (!events) {
        return events.problem();
    }
    Outcome<Record> record = fold(events.value(), around.shipped);
    if (!record) {
        return record.problem();
    }
    return ReadBuild{std::move(record).value(), std::move(events).value()};
}

// "L6 turned round", "2 changes": few words for a column; empty when nothing was put right.
std::string put_right_words(const Story& story, const Words& words) {
    std::vector<std::string> lines = story.mends.empty() ? story.changes : story.mends;
    if (lines.empty()) {
        return "";
    }
    if (lines.size() > 1) {
        return words(story.mends.empty() ? "model.changes" : "model.mended", {{"n", lines.size()}});
    }
    std::string line = story.mends.empty() ? lines[0] : story.mended[0];
    if (!line.empty() && line.back() == '.') {
        line.pop_back();
    }
    return line;
}

const ShelfBuild* listed(const AppState& state, const std::string& journal) {
    const auto found = std::find_if(state.builds.begin(), state.builds.end(),
                                    [&](const ShelfBuild& build) { return build.path == journal; });
    return found == state.builds.end() ? nullptr : &*found;
}

std::string build_name(int number, const Words& words) {
    return words("model.build", {{"number", number}});
}

} // namespace

void compare_builds(AppState& state, const Surroundings& around, const std::string& journal) {
    state.sheet = SheetKind::none;
    if (journal.empty()) {
        state.log_page.compare.reset();
        return;
    }
    const ShelfBuild* other = listed(state, journal);
    if (other == nullptr || other->card_name != state.log_shelf.card_name) {
        say(state, around, around.words("model.same_card"));
        return;
    }
    const Outcome<ReadBuild> read = read_build(around, journal);
    if (!read) {
        say(state, around, read.problem().sentence());
        return;
    }
    LogCompare compared;
    compared.journal = journal;
    compared.title = state.log_page.story.title;
    compared.left = build_name(state.log_shelf.number, around.words);
    compared.right = build_name(other->number, around.words);
    compared.rows = compare(state.log_page.story,
                            tell(read.value().record, read.value().events, around.shipped, around.words),
                            compared.left, compared.right, around.words);
    state.log_page.compare = std::move(compared);
}

void count_on(AppState& state, const Surroundings& around) {
    FiguresRun& run = state.log_page.figures;
    if (!run.begun) {
        run.begun = true;
        for (const ShelfBuild& build : state.builds) {
            run.journals.push_back(build.path);
        }
    }
    for (std::size_t i = 0; i < kJournalsAFrame && run.taken < run.journals.size(); ++i) {
        const std::string& journal = run.journals[run.taken++];
        const Outcome<ReadBuild> read = read_build(around, journal);
        if (!read) {
            ++run.unreadable;
            continue;
        }
        run.count.take(read.value().record, read.value().events, around.shipped);
        const ShelfBuild* build = listed(state, journal);
        if (build != nullptr && build->card_name == state.log_shelf.card_name) {
            const Story story = tell(read.value().record, read.value().events, around.shipped, around.words);
            run.digests.push_back({journal, read.value().record.finished ? spoken_span(story.worked_s) : "",
                                   story.outcome, put_right_words(story, around.words)});
        }
    }
}

} // namespace lanternleaf
