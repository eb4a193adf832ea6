// Lessons to moves: which move of the build at hand each one stands at, and in which words.
#include "history/lessons.h"

#include <algorithm>
#include <limits>

namespace lanternleaf {

namespace {

bool is_about(const Move& move, const std::string& part) {
    return std::find(move.parts.begin(), move.parts.end(), part) != move.parts.end();
}

double off_mm(const Move& move, Vec2 at_mm) {
    double nearest = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < move.path_mm.size(); ++i) {
        const Vec2 from = move.path_mm[i];
        const Vec2 to = move.path_mm[std::min(i + 1, move.path_mm.size() - 1)];
        const Vec2 along = to - from;
        const double length2 = along.x * along.x + along.y * along.y;
        const Vec2 out = at_mm - from;
        const double t =
            length2 <= 0 ? 0.0 : std::clamp((out.x * along.x + out.y * along.y) / length2, 0.0, 1.0);
        nearest = std::min(nearest, distance(from + along * t, at_mm));
    }
    return nearest;
}

// The move that takes the reading; else the first of that step that reaches the part.
const Move* move_of_check(const Lesson& lesson, const std::vector<Step>& steps) {
    for (const Step& step : steps) {
        for (const Move& move : step.moves) {
            if (move.check && move.check->id == lesson.check && static_cast<int>(step.id) == lesson.step) {
                return &move;
            }
        }
    }
    for (const Step& step : steps) {
        for (const Move& move : step.moves) {
            if (static_cast<int>(step.id) == lesson.step && is_about(move, lesson.part)) {
                return &move;
            }
        }
    }
    return nullptr;
}

// Kinds that stand in for one another when the plan has changed: a joint where a fold was.
bool same_kind(MoveKind wanted, MoveKind kind) {
    if (wanted == MoveKind::fold) {
        return kind == MoveKind::fold || kind == MoveKind::joint;
    }
    if (wanted == MoveKind::run) {
        return kind == MoveKind::run || kind == MoveKind::carry_across;
    }
    if (wanted == MoveKind::place_led) {
        return kind == MoveKind::place_led || kind == MoveKind::place_resistor;
    }
    return wanted == kind;
}

const Move* move_for(const Lesson& lesson, const std::vector<Step>& steps) {
    if (!lesson.check.empty()) {
        return move_of_check(lesson, steps);
    }
    const Move* best = nullptr;
    double nearest = std::numeric_limits<double>::max();
    for (const Step& step : steps) {
        for (const Move& move : step.moves) {
            if (!same_kind(lesson.kind, move.kind) || !is_about(move, lesson.part)) {
                continue;
            }
            const double off = lesson.has_place ? off_mm(move, lesson.at_mm) : 0.0;
            if (best == nullptr || off < nearest) {
                best = &move;
                nearest = off;
            }
        }
    }
    return best;
}

struct Counted {
    const Lesson* newest = nullptr;
    const Move* move = nullptr;
    int builds = 0;
    int number = 0;    ///< of the newest build that says so
    bool last = false; ///< that is the build before this one
};

std::string sentence_of(const Counted& counted, std::size_t past, const Words& words) {
    const std::string& lesson = counted.newest->words;
    if (counted.builds > 1) {
        return words("history.in_builds", {{"some", counted.builds}, {"all", past}, {"lesson", lesson}});
    }
    return counted.last ? words("history.last_time", {{"lesson", lesson}})
                        : words("history.in_build", {{"number", counted.number}, {"lesson", lesson}});
}

} // namespace

std::vector<MoveLesson> place_lessons(const std::vector<PastBuild>& past, const std::vector<Step>& steps,
                                      const Words& words) {
    std::vector<Counted> all;
    for (std::size_t i = 0; i < past.size(); ++i) {
        for (const Lesson& lesson : past[i].lessons) {
            const auto same = std::find_if(all.begin(), all.end(), [&](const Counted& one) {
                return one.newest->topic == lesson.topic;
            });
            if (same != all.end()) {
                ++same->builds;
            } else if (const Move* move = move_for(lesson, steps)) {
                all.push_back({&lesson, move, 1, past[i].number, i == 0});
            }
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Counted& a, const Counted& b) { return a.builds > b.builds; });
    std::vector<MoveLesson> placed;
    for (const Counted& one : all) {
        const auto at_move = std::count_if(placed.begin(), placed.end(), [&](const MoveLesson& other) {
            return other.move == one.move->id;
        });
        if (at_move < kMostLessons) {
            placed.push_back({one.move->id, sentence_of(one, past.size(), words), one.builds});
        }
    }
    return placed;
}

} // namespace lanternleaf
