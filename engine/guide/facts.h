// Facts: what the guide's files need to know of a card, found once: conductors, waiting tails, and for every
// pad the trace it is meant to sit on. Internal to guide/.
//
//   Card -> GuideFacts (the whole card) -> Stage (the table after one step) -> moves, checks, verdict
#pragma once

#include "conductors/conductors.h"
#include "guide/sequence.h"
#include "words/words.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// A pad of an LED or a resistor, and the strip it belongs on.
struct PadRef {
    Piece piece;
    std::string part; ///< "L3", "R1"
    std::string name; ///< "L3-", "R1.2"
    Vec2 at_mm;
    Side want = Side::negative; ///< the trace it is meant to be on; link for pads between parts in series
    int strip = -1;             ///< laid index of that strip; -1 when the pad touches none of that trace
    double along_mm = 0.0;      ///< where on the strip's centre line
    /// A pad that touches none of its trace: the laid index of the strip of that trace it comes closest to
    /// (-1: there is none), and where along it. It is that strip's laying that should have reached the pad.
    int near_strip = -1;
    double near_along_mm = 0.0;
};

/// The card with each LED turned as its marks stand: until step 6 no LED lies there, so one that is (or will
/// be) put the wrong way round must not change what steps 2 to 5 say of the pad places.
struct GuideFacts {
    Card card;
    const Parts& parts;
    const Words& words;
    Conductors conductors;   ///< of `card`, everything laid
    std::vector<Tail> waits; ///< tails(card)
    std::vector<PadRef> pads;
    /// The holder contact each trace starts from: [0] for the negative, [1] for the positive. Taken from
    /// where the strips lie, so that a cell put in upside down later does not move it; from face_down when no
    /// strip tells.
    int terminal[2] = {0, 1};
};

[[nodiscard]] GuideFacts make_facts(const Card& card, const Parts& parts, const Words& words);

/// Where the tape of a net gets its current from while no LED is on the table.
inline constexpr int kNotFed = -2;
/// From the trace's holder contact. A value of 0 or more means through a resistor: GuideFacts::pads[n] is the
/// pad by which the net is fed, and a probe stands on the tape under it.
inline constexpr int kFromContact = -1;

/// What lies on the table at one moment (card_after a step), with its conductors.
struct Stage {
    Card card;
    Conductors conductors;
    std::vector<int> feed[2]; ///< by net: for the negative and the positive trace
};

[[nodiscard]] Stage make_stage(const GuideFacts& facts, StepId step);
/// Any other selection of the card's strips (ids as on the card).
[[nodiscard]] Stage make_stage(const GuideFacts& facts, Card on_table);
/// The same as in sequence.h, when the waiting tails are already known.
[[nodiscard]] Card card_after(const Card& card, const std::vector<Tail>& waits, StepId step);

/// The step a strip is laid in: negative 3, positive and link 4.
[[nodiscard]] StepId step_of(Side side);
/// Index into `conductors.strips` of the strip with this id; -1 when it is not on the table.
[[nodiscard]] int strip_index(const Card& card, const Conductors& conductors, const std::string& id);
/// The net under a pad's place on `stage`; -1 when its strip is not down there (waiting, cut back before it,
/// none).
[[nodiscard]] int net_under(const GuideFacts& facts, const Stage& stage, const PadRef& pad);
/// Whether the tape that should lie under a pad is on the table of `stage`: for a pad that misses its trace,
/// the tape that comes closest to it. A pad with no strip of its trace anywhere counts as due.
[[nodiscard]] bool tape_is_down(const GuideFacts& facts, const Stage& stage, const PadRef& pad);
/// Where a pad's place is fed from (see kFromContact); for a link pad always kNotFed.
[[nodiscard]] int feed_of(const GuideFacts& facts, const Stage& stage, const PadRef& pad);
/// Whether that place is fed; a link pad: whether its tape leads on to another part or a holder contact.
[[nodiscard]] bool reached(const GuideFacts& facts, const Stage& stage, const PadRef& pad);

/// "bed", "flap"; "holder-", "holder+" for a ready-made holder: as used in check ids.
[[nodiscard]] std::string contact_key(const GuideFacts& facts, int terminal);
/// The contact a trace starts from: terminal[0] for negative, terminal[1] for positive.
[[nodiscard]] int contact_of(const GuideFacts& facts, Side side);
/// Whether the holder is the folded-paper kind with a flap.
[[nodiscard]] bool has_flap(const GuideFacts& facts);

} // namespace lanternleaf
