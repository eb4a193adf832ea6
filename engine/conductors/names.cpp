// What pieces and nets are called in findings, steps and the command line's answers.
#include "conductors/conductors.h"

namespace lanternleaf {

std::string name_of(const Card& card, const Conductors& conductors, Piece piece) {
    const auto index = static_cast<std::size_t>(piece.index);
    switch (piece.kind) {
    case PieceKind::strip:
        return strip_of(card, conductors, piece.index).id;
    case PieceKind::led_pad:
        return card.leds[index].id + (piece.pad == 0 ? "-" : "+");
    case PieceKind::resistor_pad:
        return card.resistors[index].id + (piece.pad == 0 ? ".1" : ".2");
    case PieceKind::terminal:
        return terminal_face(card, piece.pad) == CellFace::negative ? "holder-" : "holder+";
    }
    return "";
}

const char* name_of(NetSide side) {
    switch (side) {
    case NetSide::negative:
        return "negative";
    case NetSide::positive:
        return "positive";
    case NetSide::both:
        return "short";
    case NetSide::none:
        return "none";
    }
    return "";
}

} // namespace lanternleaf
