#include "guide/sequence.h"

#include "guide/moves.h"

namespace lanternleaf {

namespace {

const char* goal_of(StepId step) {
    switch (step) {
    case StepId::mount_holder:
        return "Fix where the cell will sit.";
    case StepId::mark_pads:
        return "Mark where every part goes, and which way round.";
    case StepId::lay_negative:
        return "Bring − from the cell to every pad that needs it.";
    case StepId::lay_positive:
        return "Bring + from the cell as far as the crossings.";
    case StepId::insulate:
        return "Keep + and − apart where they cross.";
    case StepId::place_leds:
        return "Set the lights, then try them with an adult.";
    case StepId::pad_edges:
        return "Let a press light the card, and nothing else.";
    }
    return "";
}

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

std::vector<Step> make_steps(const Card& card, const Parts& parts) {
    const GuideFacts facts = make_facts(card, parts);
    std::vector<Step> steps;
    for (int number = 1; number <= kStepCount; ++number) {
        Step step;
        step.id = static_cast<StepId>(number);
        step.title = title_of(step.id);
        step.goal = goal_of(step.id);
        step.moves = moves_of(facts, card, step.id);
        step.proof = proof_of(facts, card, step.id);
        steps.push_back(std::move(step));
    }
    return steps;
}

} // namespace lanternleaf
