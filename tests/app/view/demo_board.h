// The demo cards as tests of the card view need them: read from assets, with their conductors and steps.
#pragma once

#include "cardfile/cardfile.h"
#include "conductors/conductors.h"
#include "guide/sequence.h"
#include "view/board_view.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace lanternleaf::test {

struct DemoBoard {
    Card card;
    Parts parts;
    Conductors conductors;
    std::vector<Step> steps;
};

inline const std::vector<std::string>& demo_names() {
    static const std::vector<std::string> names{"window-candle", "harbour-lighthouse", "night-tram"};
    return names;
}

inline std::string text_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    REQUIRE(file.good());
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

inline DemoBoard demo_board(const std::string& name) {
    const std::string assets = std::string(LANTERNLEAF_SOURCE) + "/assets/";
    const Outcome<Parts> shipped = read_parts(text_of(assets + "parts.json"), "parts.json");
    REQUIRE(shipped.ok());
    const std::string file = name + ".card.json";
    const Outcome<Card> card = read_card(text_of(assets + "cards/" + file), file, shipped.value());
    REQUIRE(card.ok());
    DemoBoard board;
    board.card = card.value();
    board.parts = merged(shipped.value(), board.card.own_parts);
    board.conductors = find_conductors(board.card, board.parts);
    board.steps = make_steps(board.card, board.parts);
    return board;
}

/// The card view with everything in place, at a size of the design: tablet 3.92, phone 2.42 points a
/// millimetre.
inline BoardView finished_view(const DemoBoard& board, double ppm) {
    BoardOptions options;
    options.ppm = ppm;
    options.label_em = ppm < 3 ? 14 : 17;
    options.note_em = ppm < 3 ? 12 : 16;
    return make_board_view(board.card, board.parts, board.conductors,
                           finished_board(board.card, board.conductors), options);
}

inline Convex pill_of(const PartView& part) {
    return rectangle(part.pill_mm, part.pill_size_mm, 0.0);
}

} // namespace lanternleaf::test
