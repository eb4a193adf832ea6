// Moves: one function per part of the guide that turns a card into things for the hands to do. Internal to
// guide/.
#pragma once

#include "guide/checks.h"

namespace lanternleaf {

/// "3/N1/fold-2": a move's id from its step, its part and its name there.
[[nodiscard]] Move make_move(StepId step, const std::string& part, const std::string& name, MoveKind kind);

/// The part of a strip that is laid in one go.
struct StripPortion {
    int laid_index = 0;
    double from_mm = 0.0; ///< 0, or where its tail was left loose
    double to_mm = 0.0;   ///< its length, or where its tail is left loose
    StepId step = StepId::lay_negative;
    std::string waits_for;  ///< the patch its tail waits for ("P1"); empty when the crossing has none
    double before_mm = 0.0; ///< how far before it the strip stops sticking; 0 when not known
};

/// Start, runs, folds, joints, and either the cut or the loose tail. `predictor` is for the table as it will
/// be once the step is done (`stage`): a reading is offered after the first run that makes it possible.
void lay_strip(const GuideFacts& facts, const Stage& stage, const Predictor& predictor,
               const StripPortion& portion, std::vector<Move>& out);

/// Step 1. Step 2. Steps 3 and 4. Step 5. Step 6. Step 7.
[[nodiscard]] std::vector<Move> holder_moves(const GuideFacts& facts);
[[nodiscard]] std::vector<Move> marking_moves(const GuideFacts& facts);
[[nodiscard]] std::vector<Move> trace_moves(const GuideFacts& facts, StepId step);
[[nodiscard]] std::vector<Move> crossing_moves(const GuideFacts& facts);
[[nodiscard]] std::vector<Move> part_moves(const GuideFacts& facts, const Card& as_built);
[[nodiscard]] std::vector<Move> edge_moves(const GuideFacts& facts, const Card& as_built);

} // namespace lanternleaf
