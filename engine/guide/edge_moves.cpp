// Step 7: foam along the edges, the closed card, and what is written on it.
#include "base/readout.h"
#include "guide/moves.h"

#include <algorithm>

namespace lanternleaf {

namespace {

// Foam strips are cut this wide (common practice; the border drawn on the card view).
constexpr double kFoamWidth_mm = 5.0;

Move edge_move(const std::string& part, const char* name, MoveKind kind) {
    return make_move(StepId::pad_edges, part, name, kind);
}

struct FoamStrip {
    Vec2 from_mm;
    Vec2 to_mm;
};

// Top and bottom run the full width; the sides fit between them, so that the layers never pile up at a
// corner.
FoamStrip foam_strip(const Card& card, Edge edge) {
    const auto padded = [&](Edge other) {
        const std::vector<Edge>& edges = card.foam->edges;
        return std::find(edges.begin(), edges.end(), other) != edges.end();
    };
    const double half = kFoamWidth_mm / 2.0;
    const double right = card.sheet.width_mm;
    const double bottom = card.sheet.height_mm;
    const double side_from = padded(Edge::top) ? kFoamWidth_mm : 0.0;
    const double side_to = bottom - (padded(Edge::bottom) ? kFoamWidth_mm : 0.0);
    switch (edge) {
    case Edge::top:
        return {{0.0, half}, {right, half}};
    case Edge::bottom:
        return {{0.0, bottom - half}, {right, bottom - half}};
    case Edge::left:
        return {{half, side_from}, {half, side_to}};
    case Edge::right:
        return {{right - half, side_from}, {right - half, side_to}};
    }
    return {};
}

Move foam_move(const Card& card, Edge edge) {
    const FoamStrip strip = foam_strip(card, edge);
    const double mm = distance(strip.from_mm, strip.to_mm);
    const int layers = card.foam->layers;
    const std::string name = name_of(edge);
    Move move = edge_move("foam", name.c_str(), MoveKind::foam);
    move.title = "Pad the " + name + " edge";
    move.sentence = layers == 1 ? "Cut " + readout_mm(mm) + " of foam and stick it along the edge."
                                : "Cut " + std::to_string(layers) + " lengths of " + readout_mm(mm) +
                                      " and stack them along the edge.";
    move.why = "Foam holds the card off its own switch, yet lets a press through.";
    move.path_mm = {strip.from_mm, strip.to_mm};
    move.length_mm = mm * layers;
    return move;
}

std::string hold_sentence(Audience audience, bool flap) {
    switch (audience) {
    case Audience::adults:
        return flap ? "Tape the flap's edge so that the cell cannot slip out."
                    : "Try that the holder keeps the cell when turned over.";
    case Audience::children:
        return "Tape over the holder all round, so that opening it needs scissors.";
    case Audience::small_children:
        return "Take the cell out before giving it, or use a holder closed by a screw.";
    case Audience::school_class:
        return "Take the cell out and count it back before cards go home.";
    case Audience::sale:
        return "Look up each market's rules on coin cells before you sell it.";
    }
    return {};
}

Move hold_move(const GuideFacts& facts, const Card& card) {
    Move move = edge_move("cell", "hold", MoveKind::close);
    move.title = "See to the cell";
    move.sentence = hold_sentence(card.audience, has_flap(facts));
    move.why = "A loose coin cell in a small mouth is an emergency.";
    move.adult_only = true;
    move.path_mm = {card.holder.at_mm};
    return move;
}

Move close_move(const Card& card) {
    Move move = edge_move("card", "close", MoveKind::close);
    move.title = "Close the card";
    move.sentence = card.foam ? "Peel the top of the foam and press the cover down."
                              : "Fold the cover over without pressing on the switch.";
    move.why = "From now on only a press should light it.";
    move.path_mm = {{card.sheet.width_mm / 2.0, card.sheet.height_mm / 2.0}};
    return move;
}

Move label_move(const Card& card) {
    Move move = edge_move("card", "label", MoveKind::label);
    move.title = "Write the label";
    move.sentence = "Write the date and “contains a " + card.cell.type + " coin cell” on the back.";
    move.why = "Whoever finds it later must know what is inside.";
    move.path_mm = {{card.sheet.width_mm / 2.0, card.sheet.height_mm / 2.0}};
    return move;
}

Move disposal_move(const Card& card) {
    Move move = edge_move("cell", "disposal", MoveKind::label);
    move.title = "Add what to do when it is flat";
    move.sentence = "Write: tape both faces, then take it to a battery collection.";
    move.why = "A flat cell still burns when swallowed.";
    move.path_mm = {card.holder.at_mm};
    return move;
}

} // namespace

std::vector<Move> edge_moves(const GuideFacts& facts, const Card& as_built) {
    std::vector<Move> out;
    if (as_built.foam && as_built.foam->layers > 0) {
        for (const Edge edge : as_built.foam->edges) {
            out.push_back(foam_move(as_built, edge));
        }
    }
    out.push_back(hold_move(facts, as_built));
    out.push_back(close_move(as_built));
    out.push_back(label_move(as_built));
    out.push_back(disposal_move(as_built));
    return out;
}

} // namespace lanternleaf
