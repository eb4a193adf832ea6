// Telling again: the sentences in the state that were made in other words than the person now reads.
#include "model/update.h"
#include "model/update_batch.h"
#include "model/update_draw.h"
#include "model/update_log.h"
#include "model/update_mend.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void retell_build(AppState& state, const Surroundings& around) {
    OpenBuild& build = *state.build;
    if (build.looking_only == build.words("model.looking_only")) {
        build.looking_only = around.words("model.looking_only");
    }
    build.words = around.words;
    const int move = build.move; // as it is shown: a step back is kept, too
    derive(build);
    build.move = move;
    build.lessons = learn_from_library(state, around, build);
    if (build.verdict) {
        const StepId step = build.verdict->step;
        build.verdict =
            judge_step(build.record.as_built, build.parts, step, build.record.at(step).readings, build.words);
    }
    if (!state.differs.offers.empty()) { // what was chosen of them, and its figures, stay
        state.differs.offers =
            offers_for(build.record.as_built, build.parts, open_step(build), build.move, build.words);
    }
}

void retell_mend(AppState& state, const Surroundings& around) {
    const int chosen = state.mend->chosen;
    const std::string figure = state.mend->figure;
    start_mend_search(state, around); // the same answers: the same causes in the same order
    state.mend->chosen = chosen;
    state.mend->figure = figure;
}

void retell_log(AppState& state, const Surroundings& around) {
    LogState& page = state.log_page;
    page.story = tell_log(*state.log, page.events, around);
    page.photos = photos_of(*state.log, page.story, state.log_shelf);
    page.figures = {}; // counted anew: its columns are words
    if (page.compare) {
        const SheetKind sheet = state.sheet;
        const std::string other = page.compare->journal;
        compare_builds(state, around, other);
        state.sheet = sheet;
    }
}

} // namespace

Story tell_log(const Record& record, const std::vector<Event>& events, const Surroundings& around) {
    Story story = tell(record, events, around.shipped, around.words);
    if (told_as_in_files(around.words)) {
        return story;
    }
    for (std::string& note : story.notes) {
        for (const char* key : {"model.without_cell", "model.none_fits"}) {
            note = note == english()(key) ? around.words(key) : note;
        }
    }
    for (StoryStep& told : story.steps) {
        const std::string& why = record.at(static_cast<StepId>(told.number)).regardless_why;
        for (const char* key : {"model.why_own_way", "model.why_later", "model.why_practice"}) {
            if (told.state == StepState::regardless && why == english()(key)) {
                told.state_text = around.words("history.regardless_why", {{"why", around.words(key)}});
            }
        }
    }
    // A verdict is told anew where judging again says what the journal says; else it stays as it was said.
    const Parts parts = merged(around.shipped, record.card.own_parts);
    for (StoryStep& told : story.steps) {
        const auto step = static_cast<StepId>(told.number);
        const std::vector<Reading>& readings = record.at(step).readings;
        if (!told.verdict.empty() &&
            judge_step(record.as_built, parts, step, readings).sentence == told.verdict) {
            told.verdict = judge_step(record.as_built, parts, step, readings, around.words).sentence;
        }
    }
    return story;
}

void retell(AppState& state, const Surroundings& around) {
    read_regions(state, around);
    if (state.place == Place::shelf) { // the other places list it afresh when it is entered
        refresh_shelf(state, around);
    }
    if (state.build) {
        retell_build(state, around);
    }
    if (state.build && state.mend) {
        retell_mend(state, around);
    }
    if (state.draw) { // undo keeps the names it gave
        const int finding = state.draw->shown_finding;
        state.draw->words = around.words;
        settle(*state.draw);
        state.draw->shown_finding = finding;
    }
    if (state.light && !state.light->helps.empty()) {
        LightSheet& light = *state.light;
        light.helps = what_helps(light.card, light.parts, light.conductors, {}, around.words);
    }
    if (state.log) {
        retell_log(state, around);
    }
    refresh_batch(state, around);
    if (state.audience_answered && !state.starting.empty()) {
        answer_audience(state, state.asked, around);
    }
}

} // namespace lanternleaf
