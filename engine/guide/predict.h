// Predict: the figures to expect at each step, from the circuit of what lies on the table then. Internal to
// guide/.
#pragma once

#include "circuit/solve.h"
#include "guide/facts.h"

#include <optional>

namespace lanternleaf {

/// What a hand meter should show between two places, in ohm.
///
/// `expected` is the engine's own figure. A hand's joint is between 0.05 and 0.5 ohm where a well pressed 5 x
/// 5 mm lap of copper tape has 0.13 ohm (the 0.13 from 0.005 ohm on a square inch, from memory of makers'
/// sheets; the spread is engineering judgement), so joints are taken from 0.4 to 4 times the figure in the
/// parts file. Tape of one kind is sold from 0.4 to 2 times its usual sheet resistance (fabric 0.02 to 0.1
/// ohm per square, copper foil 18 to 70 um: from memory). Meter leads add 0.1 to 0.4 ohm and are zeroed by
/// some and not by others (common practice): 0.3 ohm is added above, and 0.05 ohm (half a last digit) taken
/// off below. Both ends are rounded outwards to the 0.1 ohm that a meter shows. The probe stands on the tape
/// in the bed or flap, so the contact of the holder itself is not in it.
struct OhmRange {
    double expected = 0.0;
    double low = 0.0;
    double high = 0.0;
};

/// Readings on one stage of the table; parts and cell are not on it yet.
class Predictor {
public:
    Predictor(const GuideFacts& facts, const Stage& stage);
    /// From where a pad's tape is fed (feed_of: the tape on the holder contact, or under a resistor's near
    /// pad) to the tape under the pad; empty when nothing feeds it.
    [[nodiscard]] std::optional<OhmRange> feed_to_pad(const PadRef& pad) const;
    /// Between the tape under two pads.
    [[nodiscard]] std::optional<OhmRange> pad_to_pad(const PadRef& from, const PadRef& to) const;

private:
    struct Place {
        int strip = 0;
        double along_mm = 0.0;
    };

    [[nodiscard]] std::optional<Place> under(const PadRef& pad) const;
    [[nodiscard]] std::optional<OhmRange> between(const std::vector<Place>& from, Place to) const;

    const GuideFacts& facts_;
    const Stage& stage_;
    Circuit circuits_[2]; ///< joints as in the parts file; poor against the tape
};

/// A node of `circuit` at `along_mm` of a strip; the tape's element there is split when there is none yet.
/// For a place between two contacts the resistance divides by length, which is what a meter's probe on the
/// tape sees.
[[nodiscard]] int node_on_strip(Circuit& circuit, const Card& card, const Parts& parts,
                                const Conductors& conductors, int strip, double along_mm);

} // namespace lanternleaf
