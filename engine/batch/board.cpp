#include "batch/board.h"

#include "history/timeline.h"

#include <algorithm>

namespace lanternleaf {

namespace {

std::int64_t median_of(std::vector<std::int64_t> spans) {
    if (spans.empty()) {
        return 0;
    }
    const auto middle = spans.begin() + static_cast<std::ptrdiff_t>((spans.size() - 1) / 2);
    std::nth_element(spans.begin(), middle, spans.end());
    return *middle;
}

void count_steps(BatchBoard& board, const std::vector<BuildProgress>& builds) {
    for (std::size_t i = 0; i < board.steps.size(); ++i) {
        std::vector<std::int64_t> spans;
        for (const BuildProgress& build : builds) {
            if (build.steps[i].closed) {
                spans.push_back(build.steps[i].worked_s);
                board.steps[i].first_pass += build.steps[i].first_pass ? 1 : 0;
            }
        }
        board.steps[i].closed = static_cast<int>(spans.size());
        board.steps[i].median_s = median_of(std::move(spans));
    }
}

// Against the others' medians, step by step. The open step counts only once it takes longer than theirs: who
// has just begun it is not ahead.
std::int64_t behind_s(const BuildProgress& build, const BatchBoard& board, std::int64_t silent_s) {
    std::int64_t behind = 0;
    for (std::size_t i = 0; i < build.steps.size(); ++i) {
        const BatchStep& others = board.steps[i];
        if (build.steps[i].closed) {
            behind += build.steps[i].worked_s - others.median_s;
        } else if (static_cast<int>(i) + 1 == build.step && others.closed > 0) {
            behind += std::max<std::int64_t>(0, build.steps[i].worked_s + silent_s - others.median_s);
        }
    }
    return behind;
}

BuilderRow row_of(const BuildProgress& build, const Batch& batch, const BatchBoard& board,
                  std::int64_t now_s) {
    BuilderRow row;
    row.maker = build.maker;
    row.shown = shown_maker(batch, build.maker);
    row.build = build.id;
    row.step = build.step;
    row.stopped_s = build.stopped_s;
    row.last_s = build.last_s;
    row.worked_s = worked_in_all_s(build);
    row.cell_in = build.cell_in;
    for (std::size_t i = 0; i < build.steps.size(); ++i) {
        row.closed[i] = build.steps[i].closed;
        row.regardless[i] = build.steps[i].regardless;
        row.first_pass = row.first_pass && (build.steps[i].first_pass || !build.steps[i].closed);
    }
    row.first_pass = row.first_pass && build.stopped_s == 0;
    const std::int64_t silent_s = std::max<std::int64_t>(0, now_s - build.last_s);
    row.state = build.finished         ? BuilderState::done
                : build.stopped_s != 0 ? BuilderState::stopped
                : silent_s <= kPause_s ? BuilderState::at_work
                                       : BuilderState::resting;
    row.behind_s = behind_s(build, board, silent_s <= kPause_s ? silent_s : 0);
    return row;
}

bool stands_before(const BuilderRow& a, const BuilderRow& b) {
    if (a.state != b.state) {
        return a.state < b.state;
    }
    switch (a.state) {
    case BuilderState::stopped:
        return a.stopped_s < b.stopped_s;
    case BuilderState::at_work:
        return a.behind_s > b.behind_s;
    case BuilderState::resting:
        return a.last_s < b.last_s;
    case BuilderState::not_begun:
        break; // as joined
    case BuilderState::done:
        return a.last_s > b.last_s;
    }
    return false;
}

void count_states(BatchBoard& board, const Batch& batch) {
    for (const BuilderRow& row : board.rows) {
        board.stopped += row.state == BuilderState::stopped ? 1 : 0;
        board.at_work += row.state == BuilderState::at_work ? 1 : 0;
        board.resting += row.state == BuilderState::resting ? 1 : 0;
        board.done += row.state == BuilderState::done ? 1 : 0;
    }
    board.begun = board.stopped + board.at_work + board.resting + board.done;
    board.not_begun = std::max(0, batch.count - board.begun);
}

} // namespace

BatchBoard board_of(const Batch& batch, std::vector<BuildProgress> builds, std::int64_t now_s) {
    builds.erase(std::remove_if(builds.begin(), builds.end(),
                                [](const BuildProgress& build) { return build.abandoned; }),
                 builds.end());
    std::sort(builds.begin(), builds.end(), [](const BuildProgress& a, const BuildProgress& b) {
        return a.started_s != b.started_s ? a.started_s < b.started_s : a.id < b.id;
    });
    BatchBoard board;
    count_steps(board, builds);
    std::vector<std::int64_t> whole;
    for (const BuildProgress& build : builds) {
        board.rows.push_back(row_of(build, batch, board, now_s));
        board.rows.back().card = static_cast<int>(board.rows.size());
        board.first_pass += passed_first_time(build) ? 1 : 0;
        if (build.finished) {
            whole.push_back(worked_in_all_s(build));
        }
    }
    board.median_build_s = median_of(std::move(whole));
    for (const std::string& maker : batch.makers) {
        const auto has = [&maker](const BuildProgress& build) { return build.maker == maker; };
        if (std::none_of(builds.begin(), builds.end(), has)) {
            BuilderRow row;
            row.maker = maker;
            row.shown = shown_maker(batch, maker);
            row.card = 0;
            board.rows.push_back(std::move(row));
        }
    }
    count_states(board, batch);
    std::stable_sort(board.rows.begin(), board.rows.end(), stands_before);
    board.cells = cell_balance(batch, builds);
    return board;
}

} // namespace lanternleaf
