// The end of a search: what was found and mended goes into the record, and the step is proved again.
#include "mend/cause_words.h"
#include "model/update_mend.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// What the mending of a found fault does to the card when the engine names no addition of its own: a light or
// a cell that lay the wrong way round, or of another type, is again as planned.
std::optional<Change> back_to_plan(const OpenBuild& build, const Change& found) {
    Change back = found;
    if (found.kind == ChangeKind::led_turned || found.kind == ChangeKind::cell_upside_down) {
        return back;
    }
    if (found.kind == ChangeKind::led_swapped) {
        for (const Led& led : build.record.as_built.leds) {
            if (led.id == found.part) {
                back.type = led.type;
                return back;
            }
        }
    }
    return std::nullopt;
}

std::vector<Change> changes_of(const OpenBuild& build, const Cause& cause) {
    if (!cause.found) {
        return cause.mend ? std::vector<Change>{*cause.mend} : std::vector<Change>{};
    }
    // A fault with no known way back would leave the record believing that it is still there.
    const std::optional<Change> back = cause.mend ? cause.mend : back_to_plan(build, *cause.found);
    return back ? std::vector<Change>{*cause.found, *back} : std::vector<Change>{};
}

bool write(AppState& state, const Surroundings& around, Event event) {
    event.step = std::min(state.build->record.step, kStepCount);
    const Outcome<Done> done = confirm(around, *state.build, std::move(event));
    if (!done) {
        say(state, around, done.problem().sentence());
    }
    return done.ok();
}

} // namespace

void mend_found(AppState& state, const Surroundings& around, int index) {
    if (index < 0 || index >= static_cast<int>(state.mend->causes.size())) {
        return;
    }
    OpenBuild& build = *state.build;
    const MendState& mend = *state.mend;
    const CauseChance chance = mend.chances[static_cast<std::size_t>(index)];
    Event mended;
    mended.kind = EventKind::mended;
    // In the maker's words, as a note would be; what a program reads of it is `fault`.
    mended.text = mend.causes[static_cast<std::size_t>(index)].title;
    std::vector<Change> changes;
    for (const int fault : {chance.fault, chance.fault_b}) {
        if (fault < 0) {
            continue;
        }
        const Cause cause = describe_fault(*mend.session.model, fault);
        mended.fault += std::string(mended.fault.empty() ? "" : " ") + name_of(cause.kind);
        for (Change& change : changes_of(build, cause)) {
            changes.push_back(std::move(change));
        }
    }
    for (const Change& change : changes) {
        Event event;
        event.kind = EventKind::change;
        event.change = change;
        if (!write(state, around, event)) {
            return;
        }
    }
    if (!write(state, around, mended)) {
        return;
    }
    state.mend.reset();
    state.seen.clear();
    if (build.record.finished) {
        open_log(state, around, build.shelf.path);
        go_to(state, around, Place::log);
        say(state, around, around.words("model.in_record_look"));
        return;
    }
    build.verdict.reset();
    build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
    go_to(state, around, Place::make);
    say(state, around,
        around.words(build.face == MakeFace::proof ? "model.in_record_prove" : "model.in_record_go_on"));
}

} // namespace lanternleaf
