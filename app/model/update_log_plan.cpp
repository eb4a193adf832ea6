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

// A picture is a comfort, no promise: empty when it cannot be read.
std::string bytes_of(const std::string& path) {
    const Outcome<std::string> bytes = read_file(path);
    return bytes ? bytes.value() : std::string();
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
    // As if it had been sent: its pictures come with it, under names that no other card has.
    CardBundle bundle;
    bundle.stem = state.log_shelf.card_name + "-as-built";
    bundle.card = card;
    bundle.text = write_card(card);
    if (card.sheet.art) {
        bundle.art = bytes_of(state.log_shelf.card_folder + "/" + card.sheet.art->file);
        bundle.art_missing = bundle.art.empty();
    }
    bundle.front = state.log_shelf.picture.empty() ? "" : bytes_of(state.log_shelf.picture);
    if (const Outcome<KeptCard> kept = keep_bundle(bundle, card_folders(around)); !kept) {
        say(state, around, kept.problem().sentence());
        return;
    }
    go_to(state, around, Place::shelf);
    say(state, around, around.words("model.on_shelf", {{"card", card.title}}));
}

} // namespace lanternleaf
