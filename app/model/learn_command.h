// Learn commands: what a person can mean while a part is put to the test.
#pragma once

#include "model/learn_state.h"

#include <string>
#include <variant>

namespace lanternleaf {

namespace learning {

struct OpenList {}; ///< the tests, and what was learnt

/// A test of one sort. `type`: the light or tape at hand; empty: to be chosen.
struct Begin {
    PartSort sort = PartSort::led;
    std::string type;
};

/// An answer, and where it leads. A stage that handles a cell waits for an adult.
struct Tell {
    LearnAnswers answers;
    LearnStage next = LearnStage::list;
};

struct Type {
    std::string text;
}; ///< what the keypad shows

struct NeverLit {}; ///< the light stayed dark both ways round

/// The last answer: what was learnt is worked out, kept and used from now on.
struct Finish {
    LearnAnswers answers;
};

struct Forget {
    PartSort sort = PartSort::led;
    std::string id;
};

struct UseFoam {
    std::string id;
}; ///< in the plan on the drawing table

} // namespace learning

using LearnCommand = std::variant<learning::OpenList, learning::Begin, learning::Tell, learning::Type,
                                  learning::NeverLit, learning::Finish, learning::Forget, learning::UseFoam>;

} // namespace lanternleaf
