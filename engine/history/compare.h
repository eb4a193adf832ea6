// Compare: two builds of one card side by side, step by step, and what differs between them.
// Exists so that a maker sees what the better build did otherwise. Pure: two stories in, rows out.
#pragma once

#include "history/story.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// What of a step counts as different. Every bit is a judgement of ours: a maker's hand and a hand meter
/// scatter, and what lies within that scatter is not worth a mark.
struct StepDiffers {
    bool time = false;    ///< by more than a minute and more than a quarter of the longer
    bool reading = false; ///< one fits and the other does not; or by more than 0.1 ohm and a quarter
    bool stops = false;   ///< not the same number of stops
    bool changes = false; ///< not the same changes and mendings
    bool outcome = false; ///< proved in one and not in the other

    [[nodiscard]] bool any() const { return time || reading || stops || changes || outcome; }
};

/// One step of one build, in few words for a narrow column.
struct StepSide {
    std::string outcome; ///< "proved"
    std::string time;    ///< "4 min"; empty when not done
    std::string reading; ///< "0.3 Ω"
    std::string stops;   ///< "1 stop"; empty for none
    std::vector<std::string> changes;
    std::int64_t worked_s = 0;
};

struct StepCompared {
    int number = 1;
    std::string title;
    std::string check; ///< title of the reading shown, the same check on both sides where both took it
    StepSide left;
    StepSide right;
    StepDiffers differs;
};

struct Comparison {
    std::vector<StepCompared> steps; ///< seven
    std::string left_outcome;        ///< "7 of 7 lit, in 1 h 04"
    std::string right_outcome;
    std::string summary; ///< "Build 2 took 20 min longer. Differences in steps 3 and 6."
};

/// `left_name` and `right_name` are what the summary calls them: "Build 1".
[[nodiscard]] Comparison compare(const Story& left, const Story& right, const std::string& left_name,
                                 const std::string& right_name, const Words& words = english());

} // namespace lanternleaf
