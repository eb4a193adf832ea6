// What several rules need: names and numbers as a maker reads them, the shapes of a card's parts, and which
// face of the cell a conductor leads to. Private to this module. Exists so that two rules never word or
// measure the same thing in two ways.
#pragma once

#include "findings/rule_list.h"

#include <array>

namespace lanternleaf {

// ---- words
// -------------------------------------------------------------------------------------------------

/// "L6-" -> "L6−" (U+2212) for sentences; Finding::parts keep the plain hyphen of the files.
[[nodiscard]] std::string spoken(const std::string& name);
/// "N1", "N1 and N2", "N1, N2 and N3", each spoken.
[[nodiscard]] std::string spoken_list(const std::vector<std::string>& names, const Words& words);
/// "25 mm²", one decimal below 10.
[[nodiscard]] std::string area_text(double mm2, const Words& words);
/// A height of foam or paper, to the hundredth: "0.25 mm".
[[nodiscard]] std::string fine_mm(double mm, const Words& words);
/// A length that lies below a limit, with as many decimals (at most 2) as show that it does.
[[nodiscard]] std::string below_mm(double mm, double limit_mm, const Words& words);
/// A current that is told beside its limit, with as many decimals (at most 3) as tell the two apart.
[[nodiscard]] std::string mA_beside(double mA, double limit_mA, const Words& words);
/// "+" or "−" for a face of the cell.
[[nodiscard]] const char* sign_of(CellFace face);
/// "+", "−" or "link" for what a strip is meant to be.
[[nodiscard]] std::string sign_of(Side side, const Words& words);
/// "+ trace", "− trace".
[[nodiscard]] std::string trace_words(CellFace face, const Words& words);
/// "N1 (−)".
[[nodiscard]] std::string with_sign(const ReviewFacts& facts, const Strip& strip);
/// An id, or "The holder", to begin a sentence with.
[[nodiscard]] std::string part_words(const std::string& id, const Words& words);
/// "the bed", "the inside of the flap", "the holder's + pad".
[[nodiscard]] std::string contact_words(const ReviewFacts& facts, int terminal);

// ---- the card's things
// -------------------------------------------------------------------------------------

[[nodiscard]] const Strip& strip_at(const ReviewFacts& facts, int strip);
[[nodiscard]] const std::string& patch_id(const ReviewFacts& facts, int patch);
[[nodiscard]] std::string piece_name(const ReviewFacts& facts, Piece piece);
[[nodiscard]] const CellType& cell_type(const ReviewFacts& facts);
[[nodiscard]] const HolderType& holder_type(const ReviewFacts& facts);
[[nodiscard]] const LedType& led_type(const ReviewFacts& facts, int led);
/// One is meant to be negative, the other positive.
[[nodiscard]] bool opposite(Side a, Side b);

/// The solid shapes of one part that lies on the sheet: body and pads of an LED or resistor, or the holder.
struct PartShapes {
    std::string id;
    std::vector<Convex> solids;
    std::vector<Vec2> discs_mm; ///< centres of round shapes
    std::array<double, 2> disc_radius_mm{};
};

/// Every LED, resistor and the holder, in that order.
[[nodiscard]] std::vector<PartShapes> part_shapes(const ReviewFacts& facts);

// ---- where current can go
// ----------------------------------------------------------------------------------

/// The cell faces a conductor leads to.
struct Reach {
    bool negative = false;
    bool positive = false;

    [[nodiscard]] bool none() const { return !negative && !positive; }

    [[nodiscard]] bool to(CellFace face) const { return face == CellFace::negative ? negative : positive; }
};

/// From a net, through resistors and (when asked) through LEDs other than `without_led`, up to the first
/// conductors that touch the cell: a path does not go on through the cell's own conductors.
[[nodiscard]] Reach reach_of_net(const ReviewFacts& facts, int net, bool through_leds, int without_led);

/// How an LED stands between the cell's faces.
struct LedReach {
    Reach minus; ///< what its - pad leads to
    Reach plus;  ///< what its + pad leads to

    /// Its two pads lead to the two faces, either way round.
    [[nodiscard]] bool both() const {
        return (minus.negative && plus.positive) || (minus.positive && plus.negative);
    }
};

[[nodiscard]] LedReach reach_of_led(const ReviewFacts& facts, int led, bool through_leds);
/// The anode is led to the cell's - face and the cathode to its + face, or the solved voltage stands against
/// it.
[[nodiscard]] bool is_reversed(const ReviewFacts& facts, int led);
/// The cell's two faces are joined by metal.
[[nodiscard]] bool cell_shorted(const ReviewFacts& facts);
/// The currents mean something: solved, and the cell not shorted.
[[nodiscard]] bool has_light(const ReviewFacts& facts);

// ---- shapes
// ------------------------------------------------------------------------------------------------

/// Takes `hole` out of every piece. `scratch` is only working space.
void subtract_from(std::vector<Convex>& pieces, const Convex& hole, std::vector<Convex>& scratch);
[[nodiscard]] double total_area(const std::vector<Convex>& pieces);
/// Like grown(), with every corner cut square to its bisector at `by_mm`: close to what lies within `by_mm`
/// of the shape, where the sharp corners of a thin or slanting shape would reach several times as far.
[[nodiscard]] Convex grown_blunt(const Convex& shape, double by_mm);
/// Closest approach; where two edges run side by side, in the middle of that stretch.
[[nodiscard]] Nearest nearest_middle(const Convex& a, const Convex& b);
/// What the patches between leave bare of a crossing grown by `spare_mm` on every side.
[[nodiscard]] double left_bare_mm2(const ReviewFacts& facts, const Overlap& overlap, double spare_mm);
/// Distance from a point to a convex shape; 0 inside.
[[nodiscard]] double distance_to(const Convex& shape, Vec2 p);
/// The part of segment a-b that lies inside the shape; false when shorter than `least_mm` or only along an
/// edge.
[[nodiscard]] bool segment_inside(const Convex& shape, Vec2 a, Vec2 b, double least_mm, Vec2& from, Vec2& to);

/// The closest approach of a strip to something.
struct SideGap {
    double mm = 1e300;
    int strip = -1;    ///< the strip approached, -1 when none
    int terminal = -1; ///< or the holder contact approached
    Vec2 on_a;
    Vec2 on_b;
};

/// Closest approach of two strips.
[[nodiscard]] Nearest nearest_of_strips(const Ribbon& a, const Ribbon& b);
/// Closest approach of a strip and a holder contact (0 when they overlap).
[[nodiscard]] Nearest nearest_to_contact(const ReviewFacts& facts, const Ribbon& ribbon, int terminal);
/// Area of a strip on one of the holder's contacts.
[[nodiscard]] double area_on_contact(const ReviewFacts& facts, const Ribbon& ribbon, int terminal);

} // namespace lanternleaf
