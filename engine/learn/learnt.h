// Learnt: what a maker's own test says of a part at hand: which mark means minus, whether a tape's glue
// conducts, how high the foam really is. Exists because bags, rolls and sheets of one name differ, and only
// the one on the table counts. Times come in as text in UTC ("2026-05-04T10:00:00Z"). What a maker can get
// wrong is answered in their `words`; the sources of figures stand in files and stay English.
#pragma once

#include "base/outcome.h"
#include "card/parts.h"
#include "words/words.h"

#include <optional>
#include <string>

namespace lanternleaf {

enum class PartSort { led, tape, foam };
[[nodiscard]] const char* name_of(PartSort sort); ///< "led", "tape", "foam"

/// One thing learnt: a single part under the id it takes over (foam: an id of its own), its source in words.
struct Learnt {
    PartSort sort = PartSort::led;
    std::string id;
    Parts parts; ///< that one part and nothing else
};

/// One light held across a coin cell until it lit.
struct TouchTest {
    std::string type;                  ///< what it was taken for: an LED's id
    std::string colour{};              ///< as seen; empty: that of `type`. Another colour is another LED.
    std::string looks;                 ///< the mark in a few words: "green line"
    bool marked_on_plus = false;       ///< which face the marked side lay on when it lit
    std::optional<double> forward_V{}; ///< on a meter's diode range
    double forward_mA = kDiodeRange_mA;

    /// What hand meters drive through a diode on that range; common practice.
    static constexpr double kDiodeRange_mA = 1.0;
};

/// The LED as known, with its mark's meaning. A forward voltage shifts saturation_A so that the diode law
/// (LedType) passes through it, ideality and series_ohm as they were. Refused: a type or colour nobody
/// describes, a mark without words, a forward voltage more than kMostShift_V from the known one.
[[nodiscard]] Outcome<Learnt> learn_led(const TouchTest& test, const Parts& known, const std::string& at,
                                        const Words& words = english());
inline constexpr double kMostShift_V = 0.6; ///< above it is another colour, by the typical values of each

/// How the joint of two strips answered.
enum class JointAnswer {
    ohms, ///< the meter's figure
    open, ///< the meter shows OL
    lit,  ///< a light known to be good, fed through the joint: as bright as without it
    dim,
    dark,
};

/// Two strips of one tape, the end of one stuck on the other, pressed, and tried from end to end.
struct TwoStripTest {
    std::string type;          ///< the tape's id
    double overlap_mm = 10.0;  ///< along the strips; across, the tape's own width
    double between_mm = 100.0; ///< from probe to probe along the tape
    JointAnswer answer = JointAnswer::ohms;
    double reading_ohm = 0.0;
    double leads_ohm = 0.0; ///< the meter with its tips pressed together
};

/// The figure the reading holds: joint_ohm = reading - leads - ohm_per_square x between / width, the strips'
/// resistance as conductors/ counts it (to the middle of the overlap from both sides).
[[nodiscard]] double joint_ohm(const TwoStripTest& test, const TapeType& tape);

/// The tape as known, with adhesive as found and joint_ohm_mm2 = joint_ohm x overlap x width. A joint below
/// kLeastJoint_ohm is taken as that. Above kOpen_ohm_mm2, open, dim or dark: its glue does not conduct. Then,
/// and with only a light to tell, the known joint figure stays. Refused: what cannot have been measured.
[[nodiscard]] Outcome<Learnt> learn_tape(const TwoStripTest& test, const Parts& known, const std::string& at,
                                         const Words& words = english());

/// Half the last digit of a hand meter that shows 0.1 ohm: less cannot be told from nothing.
inline constexpr double kLeastJoint_ohm = 0.05;
/// A 10 mm overlap of 5 mm tape: 1 ohm is good, 10 ohm as good as open (common practice at the craft table,
/// judged, not measured).
inline constexpr double kGood_ohm_mm2 = 50.0;
inline constexpr double kOpen_ohm_mm2 = 500.0;

/// What a maker should make of a tape's joints.
enum class Glue { conducts, weakly, not_at_all };
[[nodiscard]] Glue glue_of(const TapeType& tape);

/// Some layers stacked and measured.
struct FoamTest {
    int layers = 1;
    double height_mm = 0.0;   ///< of all, nothing pressing on it
    double squeezed_mm = 0.0; ///< of all, pressed down hard; 0: not measured
};

/// A foam of its own, "foam-1.4", each layer the stack's share. Refused: layers that no foam has.
[[nodiscard]] Outcome<Learnt> learn_foam(const FoamTest& test, const std::string& at,
                                         const Words& words = english());

} // namespace lanternleaf
