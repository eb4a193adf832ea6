// Mend model: every fault a card could have, each simulated once. Made when the search starts and never
// changed after; a session (session.h) holds it and the answers so far.
// Also holds the circuit with its sleeping elements: links of kSleeping_ohm where + and - could come to
// touch.
#pragma once

#include "circuit/solve.h"
#include "findings/review.h"
#include "mend/fault.h"
#include "mend/mend_test.h"
#include "mend/resistance_table.h"
#include "words/words.h"

#include <memory>
#include <vector>

namespace lanternleaf {

/// A link that is not there. Ten megohm, what a hand meter is on its volts range (common practice), so that
/// a piece of tape that nothing feeds reads 0 V as it would on the table.
inline constexpr double kSleeping_ohm = 1e7;
inline constexpr double kOpen_ohm = 1e9;
/// A weak joint has this many times its resistance, and at least kWeak_ohm: less would dim nothing.
inline constexpr double kWeakTimes = 1000.0;
inline constexpr double kWeak_ohm = 30.0;
/// Pressing the card here and there finds the right spot this often (engineering judgement).
inline constexpr double kFindsSpot = 0.7;
inline constexpr double kTouch_ohm = 0.05; ///< bare foil on bare foil

/// How one light would look, as chances that add up to 1 (flickering apart).
struct Glow {
    float lit = 0.0F;
    float dim = 0.0F;
    float dark = 1.0F;
};

/// What a card with certain faults shows while pressed.
struct Showing {
    std::vector<Glow> glows;    ///< one per LED
    std::vector<bool> flickers; ///< per LED: the fault touches it, so it may flicker
    std::vector<float> node_V;  ///< per node of MendModel::circuit
    double cell_mA = 0.0;
};

struct MendModel {
    Card card; ///< as built
    Parts parts;
    Conductors conductors; ///< with a sleeping contact for each link appended
    int real_contacts = 0; ///< those before the sleeping ones
    Circuit circuit;       ///< as built, links asleep, fresh cell, switch closed
    Solution base;         ///< its operating point
    std::vector<FaultPlace> places;
    std::vector<Fault> faults;
    int cause_count = 0;
    Showing as_built;
    std::vector<Showing> showings; ///< one per fault
    std::vector<DiodeElement> other_laws;
    ResistanceTable ohms; ///< tape, joints and pads; no LEDs, no cell, no sleeping link
    std::vector<MendTest> tests;
    std::vector<Prediction> predictions; ///< [test * faults + fault]

    // Where the model's elements stand in the circuit.
    std::vector<int> contact_element;     ///< resistor of each contact
    std::vector<int> stretch_element;     ///< a resistor of each stretch of tape (see stretches)
    std::vector<int> tape_under_pad;      ///< node, -1: none; [2*led + pad]
    std::vector<int> tape_under_resistor; ///< the same for resistors
    int tape_on_terminal[2] = {-1, -1};   ///< node of the tape there
    std::vector<int> pad_link;            ///< contact index per LED

    Words words = english(); ///< what its places, tests and causes are told in
};

struct MendOptions {
    FaultWeights weights = usual_weights();
    std::vector<StepId> proved; ///< steps proved before
};

/// Candidates, their simulation, tests and what each fault would answer. Told in `words`: another language is
/// another model.
[[nodiscard]] std::shared_ptr<const MendModel> make_mend_model(const Card& as_built, const Parts& parts,
                                                               const MendOptions& options,
                                                               const Words& words = english());

// ---- stages of the above, in order; for the tests of this module
/// Places and faults, causes numbered, priors set; everything but simulations and tests.
void find_candidates(MendModel& model, const MendOptions& options);

/// Nearest places of opposite sides, closest first: pairs of strips with no contact, at most `most`.
struct NearMiss {
    int strip_a = 0;
    int strip_b = 0;
    double mm = 0.0;
    Vec2 at_mm;
};

[[nodiscard]] std::vector<NearMiss> near_misses(const Conductors& conductors, std::size_t most);

/// Solves the as-built circuit with any set of faults put in. Holds a prepared solver: make one, use it
/// often.
class Simulator {
public:
    explicit Simulator(const MendModel& model);
    /// `faults` are indices into model.faults; none: the card as built.
    [[nodiscard]] Showing show(std::span<const int> faults);
    /// With edits of another severity than the model's own (measurements of the method use it).
    [[nodiscard]] Showing show(std::span<const int> faults, std::span<const ElementEdit> edits);

private:
    const MendModel& model_;
    Circuit circuit_;
    PreparedSolver solver_;
    Solution solution_;
};

/// The likeliest look of two showings differs for some light.
[[nodiscard]] bool look_different(const Showing& a, const Showing& b);
[[nodiscard]] LightState likeliest(const Glow& glow);

} // namespace lanternleaf
