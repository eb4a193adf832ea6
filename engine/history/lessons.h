// Lessons: what went otherwise in earlier builds of a card, told at the move where it matters this time.
// Exists so that a card built again is built better: nobody reads an old record with tape on their fingers.
#pragma once

#include "guide/step.h"
#include "record/record.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// One thing an earlier build has to say. It is kept by what a move is about, never by where the move stood:
/// a fold more in the plan moves every number after it.
struct Lesson {
    int step = 0;
    MoveKind kind = MoveKind::press; ///< the kind of move it stands at
    std::string part;                ///< and the part that move is about
    std::string check;               ///< a reading: the move that takes it is meant
    bool has_place = false;          ///< at_mm says which of several such moves (folds, joints, runs)
    Vec2 at_mm;
    std::string topic; ///< two builds that say the same have the same topic: "led-turned L6"
    std::string words; ///< "L6 was turned here."; goes into "Last time {lesson}"
};

/// What one build has to say, in the order it happened. A walk without hands has nothing to say: nobody
/// measured. `events` are those the record is the fold of, `parts` the shipped ones.
[[nodiscard]] std::vector<Lesson> lessons_of(const Record& record, const std::vector<Event>& events,
                                             const Parts& parts, const Words& words = english());

/// An earlier build, as the maker counts them.
struct PastBuild {
    int number = 1; ///< which making of the card
    std::vector<Lesson> lessons;
};

/// A lesson at a move of the build at hand.
struct MoveLesson {
    std::string move; ///< Move::id
    std::string
        sentence;   ///< "Last time L6 was turned here." / "In 2 of 3 builds before, L6 was turned here."
    int builds = 1; ///< how many earlier builds say so
};

/// `past` newest first; `steps` those of the build at hand. A lesson whose part is not in this card any more
/// is left out. At most kMostLessons at one move: those that most builds share, then the newest.
inline constexpr int kMostLessons = 2;
[[nodiscard]] std::vector<MoveLesson> place_lessons(const std::vector<PastBuild>& past,
                                                    const std::vector<Step>& steps,
                                                    const Words& words = english());

} // namespace lanternleaf
