#include "view/batch_view.h"

#include "history/timeline.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr std::int64_t kWorthSaying_s = 90; ///< a lag below it is chance, not a need for help

std::string who_of(const BuilderRow& row, const BatchBoard& board, const Words& words) {
    const std::string number = std::to_string(row.card);
    if (row.shown.empty()) {
        return words("batch.card_number", {{"number", number}});
    }
    const auto same = [&row](const BuilderRow& other) { return other.maker == row.maker; };
    const bool several = std::count_if(board.rows.begin(), board.rows.end(), same) > 1;
    return several ? words("batch.who_card", {{"who", row.shown}, {"number", number}}) : row.shown;
}

std::string line_of(const BuilderRow& row, std::int64_t now_s, const Words& words) {
    const auto span = [&](const char* key, std::int64_t seconds) {
        return words(key, {{"span", spoken_span(std::max<std::int64_t>(0, seconds))}});
    };
    if (row.state == BuilderState::not_begun) {
        return words("batch.line_waiting");
    }
    if (row.state == BuilderState::done) {
        const std::string done = span("batch.line_done", row.worked_s);
        return row.first_pass ? done + ", " + words("batch.line_first") : done;
    }
    const int step = std::min(row.step, kStepCount);
    const std::string at = words("batch.line_step", {{"step", std::to_string(step)},
                                                     {"title", title_of(static_cast<StepId>(step), words)}});
    if (row.state == BuilderState::stopped) {
        return at + ", " + span("batch.line_stopped", now_s - row.stopped_s);
    }
    if (row.state == BuilderState::resting) {
        return at + ", " + span("batch.line_resting", now_s - row.last_s);
    }
    return row.behind_s > kWorthSaying_s ? at + ", " + span("batch.line_behind", row.behind_s) : at;
}

BatchRowView row_view(const AppState& state, const BuilderRow& row, std::int64_t now_s) {
    const Words& words = state.batch->words;
    BatchRowView view;
    view.who = who_of(row, state.batch->board, words);
    view.line = line_of(row, now_s, words);
    view.maker = row.maker;
    view.build = row.build;
    view.state = row.state;
    view.step = row.step;
    view.closed = row.closed;
    view.action = words(row.state == BuilderState::not_begun ? "batch.begin"
                        : row.state == BuilderState::done    ? "batch.record"
                                                             : "batch.carry_on");
    for (const ShelfBuild& build : state.builds) {
        if (!row.build.empty() && build.id == row.build) {
            view.journal = build.path;
        }
    }
    return view;
}

std::string figures_of(const BatchBoard& board, const Words& words) {
    if (board.done == 0) {
        return board.steps[0].closed == 0 ? words("batch.no_figures") : "";
    }
    return words("batch.yield",
                 {{"first", std::to_string(board.first_pass)}, {"done", std::to_string(board.done)}}) +
           " " + words("batch.median", {{"span", spoken_span(board.median_build_s)}});
}

} // namespace

std::string cells_in_words(const CellBalance& cells, const Words& words) {
    if (cells.out == 0 && cells.back == 0) {
        return words("batch.cells_none");
    }
    if (cells.missing == 0) {
        return words("batch.cells_match");
    }
    return cells.missing > 0 ? words("batch.cells_on", {{"n", cells.missing}})
                             : words("batch.cells_over", {{"n", -cells.missing}});
}

BatchView make_batch_view(const AppState& state) {
    const Words& words = state.batch->words;
    const Batch& batch = state.batch->batch;
    const BatchBoard& board = state.batch->board;
    BatchView view;
    view.title = words("batch.heading", {{"title", batch.title}, {"count", std::to_string(batch.count)}});
    view.subtitle = words(batch.purpose == BatchFor::group ? "batch.sub_group" : "batch.sub_self") + ".";
    view.closed = batch.closed.has_value();
    if (view.closed) {
        view.subtitle.append(" ").append(batch.closed->missing > 0
                                             ? words("batch.closed_missing", {{"n", batch.closed->missing}})
                                             : words("batch.is_closed"));
    }
    for (const BuilderRow& row : board.rows) {
        view.rows.push_back(row_view(state, row, state.batch->seen_s));
    }
    const auto count = [&](BuilderState kind, int number, const char* key) {
        if (number > 0 || kind == BuilderState::done) {
            view.counts.push_back({kind, number, words(key)});
        }
    };
    count(BuilderState::stopped, board.stopped, "batch.stopped");
    count(BuilderState::at_work, board.at_work, "batch.at_work");
    count(BuilderState::resting, board.resting, "batch.resting");
    count(BuilderState::done, board.done, "batch.done");
    count(BuilderState::not_begun, board.not_begun, "batch.not_begun");
    view.cells = board.cells;
    view.cells_words = cells_in_words(board.cells, words);
    view.figures = figures_of(board, words);
    for (int i = 0; i < kStepCount; ++i) {
        const BatchStep& step = board.steps[static_cast<std::size_t>(i)];
        if (step.closed > 0) {
            std::string title = std::to_string(i + 1);
            title.append(" ").append(title_of(static_cast<StepId>(i + 1), words));
            view.steps.push_back({std::move(title), spoken_span(step.median_s),
                                  words("batch.step_line", {{"first", std::to_string(step.first_pass)},
                                                            {"n", std::to_string(step.closed)}})});
        }
    }
    if (!view.closed && board.not_begun > 0) {
        view.primary = batch.purpose == BatchFor::group
                           ? words("batch.new_maker")
                           : words("batch.begin_card", {{"number", std::to_string(board.begun + 1)}});
    }
    if (state.batch->unreadable > 0) {
        view.unreadable = words("batch.unreadable", {{"n", state.batch->unreadable}});
    }
    return view;
}

} // namespace lanternleaf
