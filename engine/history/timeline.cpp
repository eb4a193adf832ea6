#include "history/timeline.h"

#include <algorithm>
#include <cstdio>

namespace lanternleaf {

namespace {

MoveTime& time_of(StepTime& step, const std::string& move) {
    const auto same = std::find_if(step.moves.begin(), step.moves.end(),
                                   [&](const MoveTime& one) { return one.move == move; });
    if (same != step.moves.end()) {
        return *same;
    }
    step.moves.push_back({move, 0});
    return step.moves.back();
}

} // namespace

Timeline timeline_of(const std::vector<Event>& events) {
    Timeline timeline;
    std::array<std::int64_t, kStepCount> since_move{}; // worked in a step and not yet a move's
    int step = 1;
    bool away = false;
    for (std::size_t i = 1; i < events.size(); ++i) {
        const Event& event = events[i];
        if (event.step >= 1 && event.step <= kStepCount) {
            step = event.step;
        }
        StepTime& time = timeline[static_cast<std::size_t>(step - 1)];
        std::int64_t& loose_s = since_move[static_cast<std::size_t>(step - 1)];
        // A clock set back between two events gives no time below nothing.
        const std::int64_t passed_s = std::max<std::int64_t>(0, event.at_s - events[i - 1].at_s);
        if (away || passed_s > kPause_s) {
            time.paused_s += passed_s;
            ++time.pauses;
        } else {
            time.worked_s += passed_s;
            loose_s += passed_s;
        }
        away = event.kind == EventKind::abandoned;
        if (event.kind == EventKind::move_done) {
            time_of(time, event.text).worked_s += loose_s;
            loose_s = 0;
        } else if (event.kind == EventKind::verdict || event.kind == EventKind::regardless) {
            time.proving_s += loose_s;
            loose_s = 0;
        } else if (event.kind == EventKind::finished) {
            break;
        }
    }
    return timeline;
}

std::int64_t worked_s(const Timeline& timeline) {
    std::int64_t sum = 0;
    for (const StepTime& step : timeline) {
        sum += step.worked_s;
    }
    return sum;
}

std::int64_t paused_s(const Timeline& timeline) {
    std::int64_t sum = 0;
    for (const StepTime& step : timeline) {
        sum += step.paused_s;
    }
    return sum;
}

std::string spoken_span(std::int64_t seconds) {
    if (seconds < 60) {
        return std::to_string(std::max<std::int64_t>(seconds, 0)) + " s";
    }
    const std::int64_t minutes = (seconds + 30) / 60;
    if (minutes < 60) {
        return std::to_string(minutes) + " min";
    }
    char text[48];
    std::snprintf(text, sizeof text, "%lld h %02lld", static_cast<long long>(minutes / 60),
                  static_cast<long long>(minutes % 60));
    return text;
}

} // namespace lanternleaf
