// Verdict: what the engine says of one step of a card as built so far.
#pragma once

#include "card/parts.h"
#include "findings/finding.h"
#include "guide/step.h"
#include "words/words.h"

#include <optional>

namespace lanternleaf {

/// What the maker measured or saw for a check.
struct Reading {
    std::string check;                  ///< Check::id
    std::optional<double> value;        ///< in the check's unit; empty for OL or for a thing seen
    bool open = false;                  ///< the meter showed OL
    std::optional<bool> yes;            ///< for CheckKind::look
    std::vector<LightExpectation> seen; ///< for CheckKind::lights: led and state
    bool meter = true;                  ///< false: answered by looking
    /// Predicted by the engine on a walk without hands: nobody measured or saw it, and a record must say so.
    bool simulated = false;
};

enum class ReadingFit { as_expected, off, unreadable };

struct ReadingVerdict {
    std::string check;
    ReadingFit fit = ReadingFit::as_expected;
    std::string text; ///< "0.3 Ω, expected 0.1–0.6 Ω"
};

enum class VerdictState {
    proved,  ///< the next step may open
    stopped, ///< something must be put right first (or the maker goes on regardless, on record)
};

struct StepVerdict {
    StepId step = StepId::mount_holder;
    VerdictState state = VerdictState::proved;
    std::string sentence; ///< "Proved: 7 of 7 negative pads reached." / "One pad is not reached: L6-."
    std::vector<Finding> findings; ///< those that belong to this step, worst first
    std::vector<ReadingVerdict> readings;

    /// For the trace steps: every pad and whether it is reached.
    struct PadReach {
        std::string pad; ///< "L6-"
        bool reached = false;
    };

    std::vector<PadReach> pads;
    std::vector<std::string> to_do; ///< what to do when stopped, in order
};

/// Judges `step` on the card as built so far (changes already applied), with the readings taken in it. Later
/// steps' items are left out of account.
[[nodiscard]] StepVerdict judge_step(const Card& as_built, const Parts& parts, StepId step,
                                     const std::vector<Reading>& readings, const Words& words = english());

/// One reading against its check.
[[nodiscard]] ReadingVerdict judge_reading(const Check& check, const Reading& reading,
                                           const Words& words = english());

} // namespace lanternleaf
