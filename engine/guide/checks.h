// Checks: the readings that prove a step, with their figures and words. Internal to guide/.
// One place makes a check, so that the move after which it can first be taken and the step's proof hold the
// same one.
#pragma once

#include "guide/facts.h"
#include "guide/predict.h"

namespace lanternleaf {

/// A pad that a trace step must reach, and whether it does on the stage it was asked for.
struct PadState {
    const PadRef* pad = nullptr;
    bool reached = false;
};

/// The pads a trace step has to reach: step 3 the negative ones, step 4 positive and link ones, step 5 all of
/// these that were still waiting for a crossing and every positive one. A pad whose tape is still to come is
/// left out; one whose tape lies there but leads nowhere is in the list, not reached.
[[nodiscard]] std::vector<PadState> pads_of_step(const GuideFacts& facts, const Stage& stage, StepId step);

/// The reading from a trace's feed to a pad. Where nothing joins them as built, the figure to expect is OL.
[[nodiscard]] Check pad_check(const GuideFacts& facts, const Stage& stage, const Predictor& predictor,
                              const PadRef& pad, bool needed);
/// Flap to bed: no path.
[[nodiscard]] Check apart_check(const GuideFacts& facts);
[[nodiscard]] Check lights_check(const GuideFacts& facts, const Card& as_built);
[[nodiscard]] Check volts_check(const GuideFacts& facts, const Card& as_built);
/// Something to see or feel.
[[nodiscard]] Check look_check(std::string id, std::string title, std::string expect, std::string look);

/// The checks that prove `step`, in the order to take them. `as_built` is the card with its LEDs as they
/// really lie.
[[nodiscard]] std::vector<Check> proof_of(const GuideFacts& facts, const Card& as_built, StepId step);

/// How high the foam may stand over holder and cell, mm; empty without foam or without a flap.
struct FoamWindow {
    double foam_mm = 0.0;
    double low_mm = 0.0;
    double high_mm = 0.0;
};

[[nodiscard]] std::optional<FoamWindow> foam_window(const Card& card, const Parts& parts);

} // namespace lanternleaf
