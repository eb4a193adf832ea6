// Steps 1 and 2: what is measured and marked on the empty sheet.
#include "guide/moves.h"
#include "guide/phrases.h"

namespace lanternleaf {

namespace {

Move holder_move(const char* name, MoveKind kind) {
    return make_move(StepId::mount_holder, "holder", name, kind);
}

void flap_moves(const HolderShape& shape, Vec2 way, const Words& words, std::vector<Move>& out) {
    Move measure = holder_move("measure", MoveKind::measure);
    measure.title = words("guide.bed_dot");
    measure.sentence = words("guide.dot", {{"place", from_edges(shape.disc_at_mm[0], words)}});
    measure.why = words("guide.bed_dot_why");
    measure.path_mm = {shape.disc_at_mm[0]};
    out.push_back(measure);

    Move bed = holder_move("bed", MoveKind::measure);
    bed.title = words("guide.bed");
    bed.sentence = words("guide.bed_circle", {{"mm", words.mm(2.0 * shape.disc_radius_mm[0])}});
    bed.why = words("guide.bed_why");
    bed.path_mm = {shape.disc_at_mm[0]};
    out.push_back(bed);

    Move flap = holder_move("flap", MoveKind::flap_way);
    flap.title = words("guide.flap", {{"way", which_way(way, words)}});
    flap.sentence =
        words("guide.flap_circle", {{"mm", words.mm(distance(shape.disc_at_mm[0], shape.disc_at_mm[1]))},
                                    {"way", which_way(way, words)},
                                    {"across", words.mm(2.0 * shape.disc_radius_mm[1])}});
    flap.why = words("guide.flap_why");
    flap.path_mm = {shape.disc_at_mm[0], shape.disc_at_mm[1]};
    out.push_back(flap);

    Move fold = holder_move("fold", MoveKind::press);
    fold.title = words("guide.flap_fold");
    fold.sentence = words("guide.flap_fold_how");
    fold.why = words("guide.flap_fold_why");
    fold.path_mm = {(shape.disc_at_mm[0] + shape.disc_at_mm[1]) * 0.5};
    out.push_back(fold);
}

void ready_made_moves(const Card& card, const HolderShape& shape, Vec2 way, const Words& words,
                      std::vector<Move>& out) {
    Move measure = holder_move("measure", MoveKind::measure);
    measure.title = words("guide.holder_dot");
    measure.sentence = words("guide.dot", {{"place", from_edges(card.holder.at_mm, words)}});
    measure.why = words("guide.holder_dot_why");
    measure.path_mm = {card.holder.at_mm};
    out.push_back(measure);

    Move way_move = holder_move("way", MoveKind::flap_way);
    way_move.title = words("guide.holder_way", {{"way", which_way(way, words)}});
    way_move.sentence = words("guide.holder_way_how", {{"towards", towards(way, words)}});
    way_move.why = words("guide.holder_way_why");
    way_move.path_mm = {shape.at_mm[0], shape.at_mm[1]};
    out.push_back(way_move);

    Move peel = holder_move("peel", MoveKind::peel);
    peel.title = words("guide.holder_peel");
    peel.sentence = words("guide.holder_peel_how");
    peel.why = words("guide.holder_peel_why");
    peel.path_mm = {card.holder.at_mm};
    out.push_back(peel);

    Move press = holder_move("press", MoveKind::press);
    press.title = words("guide.holder_press");
    press.sentence = words("guide.holder_press_how");
    press.why = words("guide.holder_press_why");
    press.path_mm = {card.holder.at_mm};
    out.push_back(press);
}

std::string place(Vec2 at_mm, const Words& words) {
    return words("guide.marks_place", {{"x", words.mm(at_mm.x)}, {"y", words.mm(at_mm.y)}});
}

void word_marks(Move& move, const PadRef& first, const PadRef& second, bool polar, const Words& words) {
    move.title = words("guide.marks", {{"part", first.part}});
    move.sentence = words(polar ? "guide.marks_polar" : "guide.marks_plain",
                          {{"first", place(first.at_mm, words)}, {"second", place(second.at_mm, words)}});
    move.why =
        polar ? words("guide.marks_polar_why", {{"part", first.part}}) : words("guide.marks_plain_why");
}

} // namespace

std::vector<Move> holder_moves(const GuideFacts& facts) {
    std::vector<Move> out;
    const HolderShape shape = holder_shape(facts.card, facts.parts);
    const Vec2 way = direction(facts.card.holder.turn_deg);
    if (shape.flap) {
        flap_moves(shape, way, facts.words, out);
    } else {
        ready_made_moves(facts.card, shape, way, facts.words, out);
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
        word_marks(move, first, second, first.piece.kind == PieceKind::led_pad, facts.words);
        move.path_mm = {first.at_mm, second.at_mm};
        out.push_back(std::move(move));
    }
    return out;
}

} // namespace lanternleaf
