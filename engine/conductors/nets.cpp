// Nets: which pieces are one conductor, and which of the cell's faces each reaches.
#include "conductors/stages.h"

#include <algorithm>
#include <numeric>

namespace lanternleaf::conductors_stages {

int node_count(const Conductors& made) {
    return static_cast<int>(2 + made.strips.size() + made.led_pads.size() + made.resistor_pads.size());
}

int node_of(const Conductors& made, Piece piece) {
    const int first_led_pad = 2 + static_cast<int>(made.strips.size());
    switch (piece.kind) {
    case PieceKind::terminal:
        return piece.pad;
    case PieceKind::strip:
        return 2 + piece.index;
    case PieceKind::led_pad:
        return first_led_pad + 2 * piece.index + piece.pad;
    case PieceKind::resistor_pad:
        return first_led_pad + static_cast<int>(made.led_pads.size()) + 2 * piece.index + piece.pad;
    }
    return 0;
}

Piece piece_at(const Conductors& made, int node) {
    if (node < 2) {
        return {PieceKind::terminal, 0, node};
    }
    node -= 2;
    if (node < static_cast<int>(made.strips.size())) {
        return {PieceKind::strip, node, 0};
    }
    node -= static_cast<int>(made.strips.size());
    if (node < static_cast<int>(made.led_pads.size())) {
        return {PieceKind::led_pad, node / 2, node % 2};
    }
    node -= static_cast<int>(made.led_pads.size());
    return {PieceKind::resistor_pad, node / 2, node % 2};
}

namespace {

/// The head of a node's set; halves the path on the way (Tarjan's path halving).
std::size_t head_of(std::vector<std::size_t>& heads, std::size_t node) {
    while (heads[node] != node) {
        heads[node] = heads[heads[node]];
        node = heads[node];
    }
    return node;
}

} // namespace

void find_nets(const Card& card, Conductors& made) {
    const auto count = static_cast<std::size_t>(node_count(made));
    std::vector<std::size_t> heads(count);
    std::iota(heads.begin(), heads.end(), std::size_t{0});
    for (const Contact& contact : made.contacts) {
        const std::size_t a = head_of(heads, static_cast<std::size_t>(node_of(made, contact.a)));
        const std::size_t b = head_of(heads, static_cast<std::size_t>(node_of(made, contact.b)));
        heads[std::max(a, b)] = std::min(a, b);
    }

    // Numbers: the cell's minus net first, its plus net next, the others as they come.
    std::vector<int> net_of_head(count, -1);
    const auto net_of = [&](std::size_t node) -> int& { return net_of_head[head_of(heads, node)]; };
    const auto number = [&](std::size_t node) {
        if (net_of(node) < 0) {
            net_of(node) = static_cast<int>(made.nets.size());
            made.nets.push_back({net_of(node), NetSide::none, {}});
        }
        return net_of(node);
    };
    const int minus = number(static_cast<std::size_t>(terminal_of(card, CellFace::negative)));
    const int plus = number(static_cast<std::size_t>(terminal_of(card, CellFace::positive)));
    made.nets[static_cast<std::size_t>(plus)].side = NetSide::positive;
    made.nets[static_cast<std::size_t>(minus)].side = minus == plus ? NetSide::both : NetSide::negative;

    made.net_of_strip.reserve(made.strips.size());
    made.net_of_led_pad.reserve(made.led_pads.size());
    made.net_of_resistor_pad.reserve(made.resistor_pads.size());
    for (std::size_t node = 0; node < count; ++node) {
        const int net = number(node);
        const Piece piece = piece_at(made, static_cast<int>(node));
        made.nets[static_cast<std::size_t>(net)].members.push_back(piece);
        switch (piece.kind) {
        case PieceKind::terminal:
            made.net_of_terminal[piece.pad] = net;
            break;
        case PieceKind::strip:
            made.net_of_strip.push_back(net);
            break;
        case PieceKind::led_pad:
            made.net_of_led_pad.push_back(net);
            break;
        case PieceKind::resistor_pad:
            made.net_of_resistor_pad.push_back(net);
            break;
        }
    }
}

} // namespace lanternleaf::conductors_stages
