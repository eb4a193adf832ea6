// What one build hands on to the next: its lessons, and the card as built as a plan of its own.
#include "model/update_log.h"

#include "cardfile/cardfile.h"
#include "files/files.h"
#include "model/bring_in.h"
#include "model/update.h"
#include "model/update_parts.h"
#include "record/journal.h"

#include <algorithm>
#include <filesystem>

namespace lanternleaf {

namespace {

// The picture under the new card, beside it. An art file of that name that is there already is the same one
// or someone's own: it is left alone.
void copy_if_missing(const std::string& from, const std::string& to) {
    std::error_code ignored;
    if (std::filesystem::exists(to, ignored)) {
        return;
    }
    if (const Outcome<std::string> bytes = read_file(from)) {
        static_cast<void>(write_file(to, bytes.value()).ok()); // a picture is a comfort, no promise
    }
}

} // namespace

std::vector<MoveLesson> learn_from_library(const AppState& state, const Surroundings& around,
                                           const OpenBuild& build) {
    std::vector<PastBuild> past;
    for (const ShelfBuild& shelf : state.builds) { // newest first
        const bool earlier = shelf.number < build.shelf.number && shelf.card_name == build.shelf.card_name;
        if (!earlier || !shelf.trouble.empty() || past.size() >= kBuildsToLearnFrom) {
            continue;
        }
        const Outcome<std::string> text = read_file(shelf.path);
        if (!text) {
            continue;
        }
        const Outcome<std::vector<Event>> events = read_journal(text.value(), shelf.path);
        const Outcome<Record> record =
            events ? fold(events.value(), around.shipped) : Outcome<Record>(events.problem());
        if (record && !record.value().walked) {
            past.push_back(
                {shelf.number, lessons_of(record.value(), events.value(), around.shipped, around.words)});
        }
    }
    return place_lessons(past, build.steps, around.words);
}

void use_as_plan(AppState& state, const Surroundings& around) {
    Card card = state.log->as_built;
    if (state.log->changes.empty()) {
        say(state, around, around.words("model.as_planned"));
        return;
    }
    card.title = around.words("model.as_built_title", {{"card", card.title}});
    const Outcome<std::string> name =
        bring_in_card(around, state.log_shelf.card_name + "-as-built.card.json", write_card(card));
    if (!name) {
        say(state, around, name.problem().sentence());
        return;
    }
    const std::string from = state.log_shelf.card_folder;
    const std::string to = around.library + "/cards";
    if (card.sheet.art && from != to) {
        copy_if_missing(from + "/" + card.sheet.art->file, to + "/" + card.sheet.art->file);
    }
    if (!state.log_shelf.picture.empty()) {
        copy_if_missing(state.log_shelf.picture, to + "/" + name.value() + "-front.png");
    }
    go_to(state, around, Place::shelf);
    say(state, around, around.words("model.on_shelf", {{"card", card.title}}));
}

} // namespace lanternleaf
