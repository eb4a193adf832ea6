// Step 6: resistors, LEDs, and then, with an adult, the cell and the first light.
#include "circuit/lights.h"
#include "findings/colour_words.h"
#include "guide/moves.h"
#include "guide/phrases.h"

namespace lanternleaf {

namespace {

Move part_move(const std::string& part, const char* name, MoveKind kind) {
    return make_move(StepId::place_leds, part, name, kind);
}

Move resistor_move(const ResistorPart& resistor, const Words& words) {
    Move move = part_move(resistor.id, "place", MoveKind::place_resistor);
    move.title = words("guide.resistor", {{"part", resistor.id}, {"ohm", words.ohm(resistor.ohm)}});
    move.sentence = words("guide.resistor_how");
    move.why = words("guide.resistor_why");
    move.path_mm = {resistor.at_mm};
    return move;
}

Move led_move(const Led& led, const Parts& parts, const Words& words) {
    const Vec2 way = direction(led.turn_deg);
    const auto type = parts.leds.find(led.type);
    Move move = part_move(led.id, "place", MoveKind::place_led);
    move.title = words("guide.led", {{"led", led.id}, {"towards", towards(way, words)}});
    const std::string colour =
        type == parts.leds.end() ? std::string() : colour_words(type->second.colour, words);
    if (type != parts.leds.end() && type->second.mark) {
        const LedMark& mark = *type->second.mark;
        move.sentence = words(mark.negative ? "guide.led_minus_mark" : "guide.led_plus_mark",
                              {{"colour", colour},
                               {"mark", mark.looks},
                               {"way", which_way(mark.negative ? -way : way, words)}});
    } else {
        // Bags differ in what a mark means, so none is taken for granted (touch test: learn/).
        move.sentence = words(colour.empty() ? "guide.led_touch_test_plain" : "guide.led_touch_test",
                              {{"colour", colour}, {"way", which_way(way, words)}});
    }
    move.why = words("guide.led_why");
    move.path_mm = {led.at_mm};
    return move;
}

Move notice_move(const GuideFacts& facts) {
    Move move = part_move("cell", "notice", MoveKind::adult_notice);
    move.title = facts.words("guide.notice");
    move.sentence = facts.words("guide.notice_how");
    move.why = facts.words("guide.notice_why");
    move.adult_only = true;
    move.path_mm = {facts.card.holder.at_mm};
    return move;
}

Move cell_move(const GuideFacts& facts, const CellChoice& cell) {
    // The face that belongs on the bed follows from the traces, however the cell may lie now.
    const bool minus_down = facts.terminal[0] == 0;
    const std::string face = minus_down ? "−" : "+";
    const bool flap = has_flap(facts);
    const Words& words = facts.words;
    Move move = part_move("cell", "in", MoveKind::cell_in);
    move.title = words("guide.cell_in", {{"face", face}});
    const char* message = cell.count > 1 ? (flap ? "guide.cells_bed" : "guide.cells_holder")
                                         : (flap ? "guide.cell_bed" : "guide.cell_holder");
    move.sentence = words(message, {{"n", cell.count}, {"cell", cell.type}, {"face", face}});
    move.why = words("guide.cell_why");
    move.adult_only = true;
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    move.path_mm = {shape.flap ? shape.disc_at_mm[0] : facts.card.holder.at_mm};
    return move;
}

Move test_move(const GuideFacts& facts, const Card& as_built) {
    const Lighting lighting = light_up(as_built, facts.parts, find_conductors(as_built, facts.parts),
                                       fresh_cell(as_built, facts.parts));
    Move move = part_move("cell", "test", MoveKind::light_test);
    const Words& words = facts.words;
    move.title = words(has_flap(facts) ? "guide.test_press" : "guide.test_switch");
    move.sentence = words("guide.test_how");
    move.why = lighting.cell_mA > 0.0 ? words("guide.test_why", {{"current", words.mA(lighting.cell_mA)}})
                                      : words("guide.test_no_current_why");
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
        out.push_back(resistor_move(resistor, facts.words));
    }
    for (const Led& led : facts.card.leds) {
        out.push_back(led_move(led, facts.parts, facts.words));
    }
    out.push_back(notice_move(facts));
    out.push_back(cell_move(facts, as_built.cell));
    out.push_back(test_move(facts, as_built));
    return out;
}

} // namespace lanternleaf
