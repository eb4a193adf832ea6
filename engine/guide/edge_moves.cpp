// Step 7: foam along the edges, the closed card, and what is written on it.
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

Move foam_move(const Card& card, Edge edge, const Words& words) {
    const FoamStrip strip = foam_strip(card, edge);
    const double mm = distance(strip.from_mm, strip.to_mm);
    const int layers = card.foam->layers;
    const std::string name = name_of(edge);
    Move move = edge_move("foam", name.c_str(), MoveKind::foam);
    move.title = words("guide.foam_" + name);
    move.sentence =
        words(layers == 1 ? "guide.foam_how" : "guide.foam_stack_how", {{"n", layers}, {"mm", words.mm(mm)}});
    move.why = words("guide.foam_why");
    move.path_mm = {strip.from_mm, strip.to_mm};
    move.length_mm = mm * layers;
    return move;
}

std::string hold_sentence(Audience audience, bool flap, const Words& words) {
    switch (audience) {
    case Audience::adults:
        return words(flap ? "guide.hold_adults_flap" : "guide.hold_adults_holder");
    case Audience::children:
        return words("guide.hold_children");
    case Audience::small_children:
        return words("guide.hold_small_children");
    case Audience::school_class:
        return words("guide.hold_class");
    case Audience::sale:
        return words("guide.hold_sale");
    }
    return {};
}

Move hold_move(const GuideFacts& facts, const Card& card) {
    Move move = edge_move("cell", "hold", MoveKind::close);
    move.title = facts.words("guide.hold");
    move.sentence = hold_sentence(card.audience, has_flap(facts), facts.words);
    move.why = facts.words("guide.hold_why");
    move.adult_only = true;
    move.path_mm = {card.holder.at_mm};
    return move;
}

Move close_move(const Card& card, const Words& words) {
    Move move = edge_move("card", "close", MoveKind::close);
    move.title = words("guide.close");
    move.sentence = words(card.foam ? "guide.close_foam_how" : "guide.close_how");
    move.why = words("guide.close_why");
    move.path_mm = {{card.sheet.width_mm / 2.0, card.sheet.height_mm / 2.0}};
    return move;
}

Move label_move(const Card& card, const Words& words) {
    Move move = edge_move("card", "label", MoveKind::label);
    move.title = words("guide.label");
    move.sentence = words("guide.label_how", {{"cell", card.cell.type}});
    move.why = words("guide.label_why");
    move.path_mm = {{card.sheet.width_mm / 2.0, card.sheet.height_mm / 2.0}};
    return move;
}

Move disposal_move(const Card& card, const Words& words) {
    Move move = edge_move("cell", "disposal", MoveKind::label);
    move.title = words("guide.disposal");
    move.sentence = words("guide.disposal_how");
    move.why = words("guide.disposal_why");
    move.path_mm = {card.holder.at_mm};
    return move;
}

} // namespace

std::vector<Move> edge_moves(const GuideFacts& facts, const Card& as_built) {
    std::vector<Move> out;
    if (as_built.foam && as_built.foam->layers > 0) {
        for (const Edge edge : as_built.foam->edges) {
            out.push_back(foam_move(as_built, edge, facts.words));
        }
    }
    out.push_back(hold_move(facts, as_built));
    out.push_back(close_move(as_built, facts.words));
    out.push_back(label_move(as_built, facts.words));
    out.push_back(disposal_move(as_built, facts.words));
    return out;
}

} // namespace lanternleaf
