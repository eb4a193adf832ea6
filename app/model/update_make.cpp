#include "batch/confirm_list.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Event event_of(const OpenBuild& build, EventKind kind) {
    Event event;
    event.kind = kind;
    event.step = std::min(build.record.step, kStepCount);
    return event;
}

bool confirmed(AppState& state, const Surroundings& around, const Event& event) {
    const Outcome<Done> done = confirm(around, *state.build, event);
    if (!done) {
        say(state, around, done.problem().sentence());
    }
    return done.ok();
}

const std::vector<std::string>& moves_done_now(const OpenBuild& build) {
    return build.record.steps[std::min(build.record.step, kStepCount) - 1].moves_done;
}

// The moves that were confirmed in one go with this one: a line's, where lists are used.
std::vector<std::string> confirmed_with(const OpenBuild& build, const std::string& move) {
    if (build.by_list) {
        for (const ConfirmLine& line : confirm_list(open_step(build))) {
            if (std::find(line.moves.begin(), line.moves.end(), move) != line.moves.end()) {
                return line.moves;
            }
        }
    }
    return {move};
}

// After a step closed: the next one opens at its first move, or the build is finished.
void open_next(AppState& state, const Surroundings& around) {
    OpenBuild& build = *state.build;
    build.verdict.reset();
    state.seen.clear();
    if (build.record.step > kStepCount) {
        Event event = event_of(build, EventKind::finished);
        const std::size_t lights = build.record.as_built.leds.size();
        std::size_t lit = 0;
        for (const Light& light : build.now.lighting.lights) {
            lit += light.state == LightState::lit ? 1U : 0U;
        }
        event.text = english()("history.outcome", {{"lit", lit}, {"lights", lights}}); // in files: English
        if (confirmed(state, around, event)) {
            refresh_shelf(state, around);
            open_log(state, around, build.shelf.path);
        }
        return;
    }
    confirmed(state, around, event_of(build, EventKind::step_opened));
    build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
}

void mark_done(AppState& state, const Surroundings& around) {
    OpenBuild& build = *state.build;
    const Move* move = open_move(build);
    if (move == nullptr) {
        build.face = MakeFace::proof;
        return;
    }
    Event event = event_of(build, EventKind::move_done);
    event.text = move->id;
    if (!confirmed(state, around, event)) {
        return;
    }
    build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
}

// Journals are in English, whatever language the maker reads; Log tells the sentence anew.
std::string sentence_for_journal(const OpenBuild& build, const StepVerdict& verdict) {
    if (told_as_in_files(build.words)) {
        return verdict.sentence;
    }
    const std::vector<Reading>& readings = build.record.at(verdict.step).readings;
    return judge_step(build.record.as_built, build.parts, verdict.step, readings).sentence;
}

} // namespace

void move_done(AppState& state, const Surroundings& around) {
    if (!state.build || state.build->record.finished) {
        return;
    }
    const Move* move = open_move(*state.build);
    if (move != nullptr && move->kind == MoveKind::adult_notice && !state.build->record.adult_confirmed) {
        state.notice = Notice::asking;
        return;
    }
    if (move != nullptr && move->kind == MoveKind::cell_in &&
        !confirmed(state, around, event_of(*state.build, EventKind::cell_in))) {
        return;
    }
    mark_done(state, around);
}

void confirm_line(AppState& state, const Surroundings& around, int line) {
    if (!state.build || state.build->record.finished || state.build->face != MakeFace::move) {
        return;
    }
    OpenBuild& build = *state.build;
    const std::vector<ConfirmLine> lines = confirm_list(open_step(build), around.words);
    if (line < 0 || line >= static_cast<int>(lines.size())) {
        return;
    }
    for (const std::string& move : lines[static_cast<std::size_t>(line)].moves) {
        const std::vector<std::string>& done = moves_done_now(build);
        Event event = event_of(build, EventKind::move_done);
        event.text = move;
        if (std::find(done.begin(), done.end(), move) == done.end() && !confirmed(state, around, event)) {
            return;
        }
    }
    build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
}

void move_back(AppState& state, const Surroundings& around) {
    if (!state.build) {
        return;
    }
    OpenBuild& build = *state.build;
    if (build.face == MakeFace::verdict) {
        build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
        return;
    }
    const std::vector<std::string> done = moves_done_now(build);
    if (done.empty()) {
        say(state, around, around.words("model.first_move"));
        return;
    }
    const std::vector<std::string> undone = confirmed_with(build, done.back());
    for (auto move = done.rbegin(); move != done.rend(); ++move) {
        Event event = event_of(build, EventKind::move_undone);
        event.text = *move;
        if (std::find(undone.begin(), undone.end(), *move) != undone.end() &&
            !confirmed(state, around, event)) {
            return;
        }
    }
    build.face = MakeFace::move;
}

void prove_step(AppState& state, const Surroundings& around) {
    if (!state.build || state.build->record.finished) {
        return;
    }
    OpenBuild& build = *state.build;
    const auto step = static_cast<StepId>(std::min(build.record.step, kStepCount));
    const StepVerdict verdict =
        judge_step(build.record.as_built, build.parts, step, build.record.at(step).readings, build.words);
    Event event = event_of(build, EventKind::verdict);
    event.state = verdict.state;
    event.text = sentence_for_journal(build, verdict);
    if (!confirmed(state, around, event)) {
        return;
    }
    if (verdict.state == VerdictState::proved) {
        say(state, around, verdict.sentence);
        open_next(state, around);
        return;
    }
    build.verdict = verdict;
    build.face = MakeFace::verdict;
}

void go_on_regardless(AppState& state, const Surroundings& around, const std::string& why) {
    if (!state.build || state.build->record.finished) {
        return;
    }
    state.sheet = SheetKind::none;
    Event event = event_of(*state.build, EventKind::regardless);
    event.text = why;
    if (confirmed(state, around, event)) {
        open_next(state, around);
    }
}

void adult_confirms(AppState& state, const Surroundings& around) {
    const bool asking = state.notice == Notice::asking;
    state.notice = Notice::none;
    if (!state.build || !asking || !confirmed(state, around, event_of(*state.build, EventKind::adult))) {
        return;
    }
    const Move* move = open_move(*state.build);
    if (move != nullptr && move->kind == MoveKind::adult_notice) {
        mark_done(state, around);
    }
}

void cell_out(AppState& state, const Surroundings& around) {
    if (state.build && confirmed(state, around, event_of(*state.build, EventKind::cell_out))) {
        say(state, around, around.words("model.cell_out"));
    }
}

void record_change(AppState& state, const Surroundings& around, const Change& change) {
    if (!state.build) {
        return;
    }
    OpenBuild& build = *state.build;
    Event event = event_of(build, EventKind::change);
    event.change = change;
    if (!confirmed(state, around, event)) {
        return;
    }
    state.sheet = SheetKind::none;
    state.differs = {};
    if (build.face == MakeFace::verdict) {
        // A reading that was off is taken again on the mended card; else the engine can judge at once.
        const auto off = [](const ReadingVerdict& reading) { return reading.fit != ReadingFit::as_expected; };
        if (build.verdict &&
            std::any_of(build.verdict->readings.begin(), build.verdict->readings.end(), off)) {
            build.face = open_move(build) == nullptr ? MakeFace::proof : MakeFace::move;
            say(state, around,
                around.words("model.change_measure_again", {{"change", describe(change, around.words)}}));
        } else {
            prove_step(state, around);
        }
    } else {
        if (open_move(build) == nullptr) {
            build.face = MakeFace::proof;
        }
        say(state, around,
            around.words("model.change_followed", {{"change", describe(change, around.words)}}));
    }
}

} // namespace lanternleaf
