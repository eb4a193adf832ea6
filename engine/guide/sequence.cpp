#include "guide/sequence.h"

#include "guide/moves.h"

namespace lanternleaf {

namespace {

std::vector<Move> moves_of(const GuideFacts& facts, const Card& as_built, StepId step) {
    switch (step) {
    case StepId::mount_holder:
        return holder_moves(facts);
    case StepId::mark_pads:
        return marking_moves(facts);
    case StepId::lay_negative:
    case StepId::lay_positive:
        return trace_moves(facts, step);
    case StepId::insulate:
        return crossing_moves(facts);
    case StepId::place_leds:
        return part_moves(facts, as_built);
    case StepId::pad_edges:
        return edge_moves(facts, as_built);
    }
    return {};
}

} // namespace

std::vector<Step> make_steps(const Card& card, const Parts& parts, const Words& words) {
    const GuideFacts facts = make_facts(card, parts, words);
    std::vector<Step> steps;
    for (int number = 1; number <= kStepCount; ++number) {
        Step step;
        step.id = static_cast<StepId>(number);
        step.title = title_of(step.id, words);
        step.goal = words(std::string("step.goal_") + name_of(step.id));
        step.moves = moves_of(facts, card, step.id);
        step.proof = proof_of(facts, card, step.id);
        steps.push_back(std::move(step));
    }
    return steps;
}

} // namespace lanternleaf
