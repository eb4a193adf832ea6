// Mend state: one search for a fault on the build at hand: what was tapped and answered, and what follows.
// What was told stands in the build's journal (Record::mend_told) and is read from there again; the session
// is the engine's value, and causes and the next test are kept beside it because a frame must not work them
// out again.
#pragma once

#include "mend/session.h"

#include <optional>
#include <string>
#include <vector>

namespace lanternleaf {

struct MendState {
    std::string journal;         ///< of the build it is about
    std::size_t known = 0;       ///< how many readings, changes and verdicts the build had when it began
    bool warm_asked = false;     ///< the cell was out and felt
    bool warm = false;           ///< and it was warm
    bool lights_there = true;    ///< the step in which the lights are placed is open or over
    std::size_t from_record = 0; ///< observations that came from the build's readings
    int past_mends = 0;          ///< cards mended in this library: the priors follow them
    MendTools tools;
    MendSession session;
    std::vector<MendSession> before; ///< one for each line told, oldest first
    // What follows from the session.
    std::vector<Cause> causes;
    std::vector<CauseChance> chances; ///< of `causes`, in the same order
    std::optional<MendTest> test;
    int chosen = kNoCause; ///< the cause whose mending is shown
    std::string figure;    ///< on the keypad

    static constexpr int kNoCause = -1;
    static constexpr int kNoneFits = -2; ///< the maker said so: what to do then is shown
};

} // namespace lanternleaf
