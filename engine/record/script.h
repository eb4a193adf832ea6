// Script: what a maker does differently, measures and sees, written down beforehand, so that a build can be
// walked through without hands or window (see walk.h). A step the script does not name is done as the card
// says.
#pragma once

#include "base/outcome.h"
#include "card/card.h"
#include "guide/change.h"
#include "guide/step.h"
#include "guide/verdict.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

/// What was measured and seen at one judging of a step. What is left out is simulated.
struct Observed {
    std::vector<Reading> readings;
    std::vector<LightExpectation> seen; ///< led and state, for the step's look at the lights
};

struct ScriptStep {
    bool given = false; ///< the script names this step
    std::string note;
    std::vector<Change> changes; ///< made while doing the step
    Observed observed;
    // When the verdict is 'stopped':
    std::vector<Change> fixes;             ///< made then, and the step is judged again
    Observed observed_after;               ///< measured after the fixes
    std::optional<std::string> regardless; ///< if it is still stopped: why the maker goes on
};

struct BuildScript {
    std::string file;                 ///< for naming in a Problem; empty when there is none
    std::optional<Audience> audience; ///< the answer to "who will have this card?"
    ScriptStep steps[kStepCount];
};

/// A script as assets/schema/script.schema.json describes it. A key it does not know is a Problem: in
/// something typed by hand it is a slip, and passing it over would change what is being tried.
[[nodiscard]] Outcome<BuildScript> read_script(const std::string& text, const std::string& file);

} // namespace lanternleaf
