// Step 6: resistors, LEDs, and then, with an adult, the cell and the first light.
#include "base/readout.h"
#include "circuit/lights.h"
#include "guide/moves.h"
#include "guide/phrases.h"

namespace lanternleaf {

namespace {

Move part_move(const std::string& part, const char* name, MoveKind kind) {
    return make_move(StepId::place_leds, part, name, kind);
}

Move resistor_move(const ResistorPart& resistor) {
    Move move = part_move(resistor.id, "place", MoveKind::place_resistor);
    move.title = "Place " + resistor.id + ", " + readout_ohm(resistor.ohm);
    move.sentence = "Set it on its two marks and press both ends.";
    move.why = "It holds the current back; either way round will do.";
    move.path_mm = {resistor.at_mm};
    return move;
}

Move led_move(const Led& led, const Parts& parts) {
    const Vec2 way = direction(led.turn_deg);
    const auto type = parts.leds.find(led.type);
    Move move = part_move(led.id, "place", MoveKind::place_led);
    move.title = "Place " + led.id + " with + " + towards(way);
    const std::string light =
        "the " + (type == parts.leds.end() ? std::string() : type->second.colour + " ") + "light";
    if (type != parts.leds.end() && type->second.mark) {
        const LedMark& mark = *type->second.mark;
        move.sentence = "Set " + light + " on its marks with the " + mark.looks + ", its " +
                        (mark.negative ? "− side, " : "+ side, ") + which_way(mark.negative ? -way : way) +
                        ", and press both pads.";
    } else {
        // Bags differ in what a mark means, so none is taken for granted (touch test: learn/).
        move.sentence = "Let an adult touch-test one of these; then set " + light + " on its marks, + " +
                        which_way(way) + ", and press both pads.";
    }
    move.why = "The wrong way round it stays dark.";
    move.path_mm = {led.at_mm};
    return move;
}

Move notice_move(const GuideFacts& facts) {
    Move move = part_move("cell", "notice", MoveKind::adult_notice);
    move.title = "An adult reads this first";
    move.sentence = "A swallowed coin cell burns inside within hours: keep cells from children.";
    move.why = "Swallowed, or in nose or ear: act at once, without waiting for signs.";
    move.adult_only = true;
    move.path_mm = {facts.card.holder.at_mm};
    return move;
}

Move cell_move(const GuideFacts& facts, const CellChoice& cell) {
    // The face that belongs on the bed follows from the traces, however the cell may lie now.
    const bool minus_down = facts.terminal[0] == 0;
    const std::string face = minus_down ? "−" : "+";
    const std::string bed = has_flap(facts) ? "on the bed" : "in the holder";
    Move move = part_move("cell", "in", MoveKind::cell_in);
    move.title = "Put the cell in, " + face + " face down";
    move.sentence = cell.count > 1 ? "Stack " + std::to_string(cell.count) + " " + cell.type + " " + bed +
                                         ", each " + face + " down."
                                   : "Lay the " + cell.type + " " + bed + " with its " + face + " face down.";
    move.why = "The wide face with the printing is +.";
    move.adult_only = true;
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    move.path_mm = {shape.flap ? shape.disc_at_mm[0] : facts.card.holder.at_mm};
    return move;
}

Move test_move(const GuideFacts& facts, const Card& as_built) {
    const Lighting lighting = light_up(as_built, facts.parts, find_conductors(as_built, facts.parts),
                                       fresh_cell(as_built, facts.parts));
    Move move = part_move("cell", "test", MoveKind::light_test);
    move.title =
        has_flap(facts) ? "Press the flap: which lights come on?" : "Switch on: which lights come on?";
    move.sentence = "Look for two seconds, let go, and tap what you saw.";
    move.why = lighting.cell_mA > 0.0
                   ? "Lit, the card draws " + readout_mA(lighting.cell_mA) + " from the cell."
                   : "As built, no current flows yet.";
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    move.path_mm = {shape.at_mm[0]};
    move.adult_only = true;
    move.check = lights_check(facts, as_built);
    return move;
}

} // namespace

std::vector<Move> part_moves(const GuideFacts& facts, const Card& as_built) {
    std::vector<Move> out;
    for (const ResistorPart& resistor : facts.card.resistors) {
        out.push_back(resistor_move(resistor));
    }
    for (const Led& led : facts.card.leds) {
        out.push_back(led_move(led, facts.parts));
    }
    out.push_back(notice_move(facts));
    out.push_back(cell_move(facts, as_built.cell));
    out.push_back(test_move(facts, as_built));
    return out;
}

} // namespace lanternleaf
