// Conductors: what is joined to what on a card, found from shapes alone and never from names.
// Exists so that every later stage (circuit, findings, steps, Mend) asks one place what touches what. A
// newcomer's trap: `side` on a strip is what the maker means it to be; a net's side is what it really
// reaches.
//
//   Card + Parts -> find_conductors -> Conductors { shapes, overlaps, contacts, nets }
#pragma once

#include "card/card.h"
#include "card/parts.h"
#include "geometry/convex.h"
#include "geometry/ribbon.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// A piece of metal on the card. `index` counts within its kind: Card::leds, Card::resistors, or strips (the
/// strips of Card::laid in order, see Conductors::strips). `pad` is 0 for "-"/"1", 1 for "+"/"2".
enum class PieceKind { strip, led_pad, resistor_pad, terminal };

/// For PieceKind::terminal, `index` is 0 and `pad` tells which of the holder's two contacts: 0 is the bed (or
/// the holder's "-" pad), 1 the flap (or "+" pad). Which cell face each carries is terminal_face().
struct Piece {
    PieceKind kind = PieceKind::strip;
    int index = 0;
    int pad = 0;
    friend bool operator==(const Piece&, const Piece&) = default;
};

/// The shape of one strip and where it lies in the stack.
struct StripShape {
    int laid_index = 0; ///< place in Card::laid; larger lies higher
    Ribbon ribbon;
};

struct PatchShape {
    int laid_index = 0;
    Convex outline;
    Box box;
};

struct PadOutline {
    Piece piece;
    Convex outline;
    Box box;
    Vec2 at_mm;
};

/// Two strips that lie over each other somewhere. One strip pair can have several separate overlaps.
struct Overlap {
    int lower = 0; ///< index into Conductors::strips
    int upper = 0;
    std::vector<Convex> pieces; ///< the whole overlap, before patches
    std::vector<Convex> bare;   ///< what no patch between them covers
    std::vector<int> patches;   ///< indices into Conductors::patches that lie between and touch the overlap
    double area_mm2 = 0.0;      ///< of pieces
    double bare_mm2 = 0.0;      ///< of bare
    Vec2 at_mm;                 ///< centroid of pieces
    bool folded_end = false;    ///< a folded end of the upper strip lies in it
    bool conducts = false; ///< bare metal meets: area left bare, and adhesive or folded end lets it through
    double along_lower_mm = 0.0; ///< where on each strip's centre line
    double along_upper_mm = 0.0;
};

/// Current can pass from a to b here.
struct Contact {
    Piece a;
    Piece b;
    double ohm = 0.0;
    double area_mm2 = 0.0;
    Vec2 at_mm;
    double along_a_mm = 0.0; ///< arc length when a is a strip, else 0
    double along_b_mm = 0.0;
    int overlap = -1; ///< index into Conductors::overlaps when both are strips
};

/// What a net really is: it reaches the cell's - face, its + face, both (a short), or neither.
enum class NetSide { negative, positive, both, none };

/// A set of pieces that are joined metal to metal (through contacts, not through LEDs or resistors).
struct Net {
    int id = 0;
    NetSide side = NetSide::none;
    std::vector<Piece> members; ///< terminals first, then strips, then pads, each in card order
};

struct Conductors {
    std::vector<StripShape> strips;
    std::vector<PatchShape> patches;
    std::vector<PadOutline> led_pads;      ///< two per LED: [2*i] is "-", [2*i+1] is "+"
    std::vector<PadOutline> resistor_pads; ///< two per resistor
    std::vector<Overlap> overlaps;
    std::vector<Contact> contacts;
    std::vector<Net> nets; ///< every strip, pad and terminal is in exactly one
    std::vector<int> net_of_strip;
    std::vector<int> net_of_led_pad;
    std::vector<int> net_of_resistor_pad;
    int net_of_terminal[2] = {0, 0}; ///< by pad number: bed, flap
};

/// Needs every type the card names to be in `parts` (the file reader makes sure).
[[nodiscard]] Conductors find_conductors(const Card& card, const Parts& parts);

/// The strips of a card in order of laying: their places in Card::laid.
[[nodiscard]] std::vector<int> strip_places(const Card& card);
[[nodiscard]] const Strip& strip_of(const Card& card, const Conductors& conductors, int strip);

/// The cell face that a holder contact carries (0 bed or "-" pad, 1 flap or "+" pad).
[[nodiscard]] CellFace terminal_face(const Card& card, int terminal);
/// The holder contact (0 or 1) that carries the given face.
[[nodiscard]] int terminal_of(const Card& card, CellFace face);

/// "N1", "L1-", "R1.2", "holder-" (the contact that carries the cell's - face).
[[nodiscard]] std::string name_of(const Card& card, const Conductors& conductors, Piece piece);
[[nodiscard]] const char* name_of(NetSide side); ///< "negative", "positive", "short", "none"

/// Shape of a part on the sheet.
struct HolderShape {
    bool flap = false;
    Vec2 disc_at_mm[2];         ///< bed, flap (flap holders)
    double disc_radius_mm[2]{}; ///< 0 for pad holders
    Convex pad[2];              ///< pad holders
    Convex body;                ///< outline of a pad holder; empty for flap holders
    Vec2 at_mm[2];              ///< where each contact's middle is
};

[[nodiscard]] HolderShape holder_shape(const Card& card, const Parts& parts);
[[nodiscard]] Convex led_body(const Card& card, const Parts& parts, int led);
[[nodiscard]] Convex resistor_body(const Card& card, const Parts& parts, int resistor);

/// Why are these two joined? The shortest chain of contacts from `from` to `to`; empty when they are not
/// joined (or are the same piece). Each entry is an index into conductors.contacts.
[[nodiscard]] std::vector<int> joined_by(const Conductors& conductors, Piece from, Piece to);
/// The same, in words: "N1 to N2 at 60, 45; N2 to L3- at 80, 45".
[[nodiscard]] std::string joined_by_text(const Card& card, const Conductors& conductors, Piece from,
                                         Piece to);

} // namespace lanternleaf
