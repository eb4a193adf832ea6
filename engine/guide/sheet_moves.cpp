// Steps 1 and 2: what is measured and marked on the empty sheet.
#include "base/readout.h"
#include "guide/moves.h"
#include "guide/phrases.h"

namespace lanternleaf {

namespace {

Move holder_move(const char* name, MoveKind kind) {
    return make_move(StepId::mount_holder, "holder", name, kind);
}

void flap_moves(const HolderShape& shape, Vec2 way, std::vector<Move>& out) {
    Move measure = holder_move("measure", MoveKind::measure);
    measure.title = "Mark the middle of the bed";
    measure.sentence = "Put a dot " + from_edges(shape.disc_at_mm[0]) + ".";
    measure.why = "The tape, the flap and the foam are fitted round this dot.";
    measure.path_mm = {shape.disc_at_mm[0]};
    out.push_back(measure);

    Move bed = holder_move("bed", MoveKind::measure);
    bed.title = "Draw the bed";
    bed.sentence = "Draw a circle " + readout_mm(2.0 * shape.disc_radius_mm[0]) + " across round the dot.";
    bed.why = "The cell lies here; only one trace may come under it.";
    bed.path_mm = {shape.disc_at_mm[0]};
    out.push_back(bed);

    Move flap = holder_move("flap", MoveKind::flap_way);
    flap.title = "The flap opens " + which_way(way);
    flap.sentence = "Draw its circle " + readout_mm(distance(shape.disc_at_mm[0], shape.disc_at_mm[1])) +
                    " " + which_way(way) + ", " + readout_mm(2.0 * shape.disc_radius_mm[1]) + " across.";
    flap.why = "Closed, this circle lies on the cell.";
    flap.path_mm = {shape.disc_at_mm[0], shape.disc_at_mm[1]};
    out.push_back(flap);

    Move fold = holder_move("fold", MoveKind::press);
    fold.title = "Fold the flap and crease it";
    fold.sentence = "Fold it over halfway between the circles, rub the crease, open it again.";
    fold.why = "A sharp crease brings the flap down on the same spot each time.";
    fold.path_mm = {(shape.disc_at_mm[0] + shape.disc_at_mm[1]) * 0.5};
    out.push_back(fold);
}

void ready_made_moves(const Card& card, const HolderShape& shape, Vec2 way, std::vector<Move>& out) {
    Move measure = holder_move("measure", MoveKind::measure);
    measure.title = "Mark the holder's middle";
    measure.sentence = "Put a dot " + from_edges(card.holder.at_mm) + ".";
    measure.why = "Both traces start from its two pads.";
    measure.path_mm = {card.holder.at_mm};
    out.push_back(measure);

    Move way_move = holder_move("way", MoveKind::flap_way);
    way_move.title = "Turn its + pad " + which_way(way);
    way_move.sentence = "Hold it over the dot with the + pad " + towards(way) + ".";
    way_move.why = "Turned round, every light would stay dark.";
    way_move.path_mm = {shape.at_mm[0], shape.at_mm[1]};
    out.push_back(way_move);

    Move peel = holder_move("peel", MoveKind::peel);
    peel.title = "Peel the backing";
    peel.sentence = "Peel the backing off the holder without touching the glue.";
    peel.why = "Glue with finger marks lets go.";
    peel.path_mm = {card.holder.at_mm};
    out.push_back(peel);

    Move press = holder_move("press", MoveKind::press);
    press.title = "Press the holder down";
    press.sentence = "Set its middle on the dot and press for ten seconds.";
    press.why = "It must not shift when the cell goes in.";
    press.path_mm = {card.holder.at_mm};
    out.push_back(press);
}

std::string place(Vec2 at_mm) {
    return readout_mm(at_mm.x) + " from the left, " + readout_mm(at_mm.y) + " down";
}

void word_marks(Move& move, const PadRef& first, const PadRef& second, bool polar) {
    const std::string one = polar ? "−" : "pad 1";
    const std::string two = polar ? "+" : "pad 2";
    move.title = "Mark " + first.part + "'s two pads";
    move.sentence =
        "Mark " + one + " at " + place(first.at_mm) + "; " + two + " at " + place(second.at_mm) + ".";
    move.why = polar ? "The marks tell you later which way round " + first.part + " goes."
                     : "A resistor may go either way round.";
}

} // namespace

std::vector<Move> holder_moves(const GuideFacts& facts) {
    std::vector<Move> out;
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    const Vec2 way = direction(facts.card.holder.turn_deg);
    if (shape.flap) {
        flap_moves(shape, way, out);
    } else {
        ready_made_moves(facts.card, shape, way, out);
    }
    return out;
}

std::vector<Move> marking_moves(const GuideFacts& facts) {
    std::vector<Move> out;
    // Pads stand in pairs: LEDs in card order, then resistors.
    for (std::size_t i = 0; i + 1 < facts.pads.size(); i += 2) {
        const PadRef& first = facts.pads[i];
        const PadRef& second = facts.pads[i + 1];
        Move move = make_move(StepId::mark_pads, first.part, "pads", MoveKind::mark_pad);
        word_marks(move, first, second, first.piece.kind == PieceKind::led_pad);
        move.path_mm = {first.at_mm, second.at_mm};
        out.push_back(std::move(move));
    }
    return out;
}

} // namespace lanternleaf
