#include "model/update_log.h"

#include "base/overloaded.h"
#include "model/update.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// One line, without blanks at its ends.
std::string trimmed(const std::string& text) {
    const std::size_t begin = text.find_first_not_of(" \t\r\n");
    const std::size_t end = text.find_last_not_of(" \t\r\n");
    return begin == std::string::npos ? std::string() : text.substr(begin, end - begin + 1);
}

void keep_note(AppState& state, const Surroundings& around) {
    const std::string text = trimmed(state.log_page.note);
    if (text.empty()) {
        state.sheet = SheetKind::none;
        return;
    }
    if (add_to_log(state, around, event_at(around.now_s, EventKind::note, 0, text))) {
        state.log_page.note.clear(); // kept while the disk refuses, so that nothing typed is lost
        state.sheet = SheetKind::none;
        say(state, around, around.words("model.noted"));
    }
}

} // namespace

bool show_log(AppState& state, const Surroundings& around, const ShelfBuild& shelf) {
    Outcome<OpenBuild> build = open_build(around, shelf);
    if (!build) {
        say(state, around, build.problem().sentence());
        return false;
    }
    const bool same = state.log && state.log_shelf.path == shelf.path;
    LogState page;
    page.events = std::move(build.value().events);
    page.story = tell_log(build.value().record, page.events, around);
    page.photos = photos_of(build.value().record, page.story, shelf);
    if (same) {
        page.note = state.log_page.note;
        page.step = state.log_page.step;
    }
    state.log = std::move(build.value().record);
    state.log_shelf = shelf;
    state.log_page = std::move(page);
    // The list was read before the build went on.
    state.log_shelf.finished = state.log->finished;
    state.log_shelf.step = state.log->step;
    for (ShelfBuild& listed : state.builds) {
        if (listed.path == state.log_shelf.path) {
            listed = state.log_shelf;
        }
    }
    return true;
}

bool add_to_log(AppState& state, const Surroundings& around, Event event) {
    if (!state.log) {
        return false;
    }
    const bool on_table = state.build && state.build->shelf.path == state.log_shelf.path;
    Outcome<OpenBuild> build =
        on_table ? Outcome<OpenBuild>(*state.build) : open_build(around, state.log_shelf);
    if (!build) {
        say(state, around, build.problem().sentence());
        return false;
    }
    if (const Outcome<Done> done = confirm(around, build.value(), std::move(event)); !done) {
        say(state, around, done.problem().sentence());
        return false;
    }
    if (on_table) {
        // The move at hand stays the move at hand.
        build.value().move = state.build->move;
        *state.build = std::move(build).value();
    }
    const ShelfBuild shelf = state.log_shelf;
    LogState before = std::move(state.log_page);
    state.log_page.note = before.note;
    state.log_page.step = before.step;
    if (!show_log(state, around, shelf)) {
        state.log_page = std::move(before);
        return false;
    }
    state.log_page.figures = std::move(before.figures); // a note changes none of them
    state.log_page.new_photo = std::move(before.new_photo);
    return true;
}

void update_log(AppState& state, const Surroundings& around, const LogCommand& command) {
    if (!state.log) {
        return;
    }
    std::visit(Overloaded{
                   [&](const logbook::ShowStep& c) {
                       state.log_page.step = std::clamp(c.step, 1, kStepCount);
                       state.sheet = SheetKind::log_step;
                   },
                   [&](const logbook::BeginNote&) { state.sheet = SheetKind::log_note; },
                   [&](const logbook::TypeNote& c) { state.log_page.note = c.text; },
                   [&](const logbook::KeepNote&) { keep_note(state, around); },
                   [&](const logbook::UseAsPlan&) { use_as_plan(state, around); },
                   [&](const logbook::SaveCopy&) { save_copy(state, around); },
                   [&](const logbook::Compare& c) { compare_builds(state, around, c.journal); },
                   [&](const logbook::CountOn&) { count_on(state, around); },
                   [&](const logbook::TypeCaption& c) {
                       if (state.log_page.new_photo) {
                           state.log_page.new_photo->caption = c.text;
                       }
                   },
                   [&](const logbook::KeepPhoto&) { keep_photo(state, around); },
                   [&](const logbook::DropPhoto&) {
                       state.log_page.new_photo.reset();
                       state.sheet = SheetKind::none;
                   },
                   [&](const logbook::ShowPhoto& c) {
                       state.log_page.photo = c.index;
                       state.sheet = SheetKind::log_photo;
                   },
                   [&](const logbook::RemovePhoto& c) { remove_photo(state, around, c.index); },
               },
               command);
}

} // namespace lanternleaf
