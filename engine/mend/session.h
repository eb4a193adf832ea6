// Mend session: what may be wrong with a card, given what was seen, and what to try next. A value: observing
// gives another session, the old one stays as it was, so that an answer can be taken back.
//
//   start_mend -> observe (each tap, reading, answer) -> causes, next_test -> observe -> ...
//
// Bayes over simulated faults with answers that are wrong one time in ten; the test with the most expected
// information for its seconds comes next (J. de Kleer and B. C. Williams, "Diagnosing multiple faults",
// Artificial Intelligence 32 (1987) 97-130). 'Take the cell out first' and 'is it warm?' come before anything
// else: the screen shows them, `warm` is a test like the others.
#pragma once

#include "base/outcome.h"
#include "mend/model.h"

#include <optional>
#include <variant>

namespace lanternleaf {

/// How one light looks while pressed; `unseen` takes an answer back.
enum class Look { unseen, lit, dim, dark, flickers };

struct SeenLight {
    std::string led;
    Look look = Look::unseen;
};

/// Does pressing the card here and there change anything? Empty takes the answer back.
struct PressingChanges {
    std::optional<bool> changes;
};

/// The answer to a test: an index into its outcomes; -1: cannot tell (the test is not offered again).
struct TestAnswer {
    std::string test;
    int outcome = -1;
};

enum class MeterUnit { ohm, volt };

/// A meter between two places: "bed", "flap" ("holder-", "holder+": the tape there), an LED's tape "L3+", or
/// for volts from "cell" to "" the bare cell. Volts are read while pressed, ohms with the cell out.
struct Metered {
    std::string from;
    std::string to;
    MeterUnit unit = MeterUnit::ohm;
    double value = 0.0;
    bool open = false; ///< the meter shows OL
};

/// What the meter shows in a test that needs one: volts or ohms as the test asks.
struct TestReading {
    std::string test;
    double value = 0.0;
    bool open = false; ///< the meter shows OL
};

using Observation = std::variant<SeenLight, PressingChanges, TestAnswer, Metered, TestReading>;

/// Two faults at once, simulated when no single one explains enough.
struct FaultPair {
    int a = 0;
    int b = 0;
    double prior = 0.0;
    Showing showing;
    bool mending_a_shows = false; ///< some light looks different once a is put right
    bool mending_b_shows = false;
};

struct Evidence {
    std::vector<Look> looks; ///< per LED
    std::optional<bool> pressing_changes;

    struct Answer {
        int test = 0;
        int outcome = 0;
        int choices = 2; ///< how many were offered
    };

    std::vector<Answer> answers;

    struct Reading {
        MeterUnit unit = MeterUnit::ohm;
        int from_node = 0; ///< -1 and -1 with volts: the bare cell
        int to_node = 0;
        double value = 0.0;
        bool open = false;
    };

    std::vector<Reading> readings;
    std::vector<int> skipped; ///< tests that could not be told

    [[nodiscard]] std::size_t count() const; ///< single observations
};

struct MendSession {
    std::shared_ptr<const MendModel> model;
    Evidence evidence;
    std::shared_ptr<const std::vector<FaultPair>> pairs; ///< null while single faults explain enough
    std::vector<double> chance; ///< of each fault of the model, then of each pair; adds up to 1
    /// How much worse the best single fault explains what was seen than answers that all fit, as a logarithm.
    double unexplained = 0.0;
};

/// Starts on the card as built (changes already applied). Needs every type the card names to be in `parts`.
/// Causes and tests of the session are told in `words`.
[[nodiscard]] MendSession start_mend(const Card& as_built, const Parts& parts,
                                     const MendOptions& options = {}, const Words& words = english());

/// A Problem when the observation names a light, place or test that the card has not got.
[[nodiscard]] Outcome<MendSession> observe(const MendSession& session, const Observation& observation);
/// From a check of a step and its reading, so that a failed check opens Mend with what is known: lights and
/// resistances between places that Mend knows; other checks tell nothing and change nothing.
[[nodiscard]] MendSession observe_reading(const MendSession& session, const struct Check& check,
                                          const struct Reading& reading);

/// One thing that may be wrong, in words, with where it is and what to do.
struct Cause {
    FaultKind kind = FaultKind::other;
    double probability = 0.0;
    std::string title;    ///< "The joint of N1 and N2 hardly touches"
    std::string sentence; ///< why it may be
    std::string fix;      ///< what to do, one action a sentence
    std::vector<FaultPlace> places;
    std::optional<Change> found; ///< makes the card as built show it; for the record
    std::optional<Change> mend;  ///< what the mending itself adds to the card, when it adds something
    std::vector<int> ids;        ///< Fault::cause of the one or two faults
};

/// Likeliest first, at most `most`; `other` ("none of these fits") is among them when it is likely enough.
[[nodiscard]] std::vector<Cause> causes(const MendSession& session, std::size_t most = 4);

/// The same without words: {cause ids, chance}, all of them, likeliest first.
struct CauseChance {
    int a = 0;
    int b = -1; ///< second fault of a pair
    double probability = 0.0;
    int fault = 0; ///< its likeliest fault
    int fault_b = -1;
};

[[nodiscard]] std::vector<CauseChance> cause_chances(const MendSession& session);

struct MendTools {
    bool foil = true;
    bool known_cell = true; ///< a cell that is known to be good
    bool known_led = true;  ///< a light that is known to be good
    bool meter = false;
};

/// The test that tells most for its effort; empty when none tells anything worth its time. Tests skipped, or
/// answered three times, are not offered. `offered` of the result lists the outcomes to show.
[[nodiscard]] std::optional<MendTest> next_test(const MendSession& session, const MendTools& tools = {});
/// How often the maker's answers are taken to be wrong.
inline constexpr double kWrongAnswers = 0.1;

/// A test by its id, with the outcomes that matter now and its seconds.
[[nodiscard]] const MendTest* find_test(const MendModel& model, const std::string& id);
[[nodiscard]] MendTest live_test(const MendSession& session, int test);
[[nodiscard]] double effort_of(const MendTest& live);
/// What fault (or pair, numbered after the faults) `h` would answer.
[[nodiscard]] Prediction prediction_of(const MendSession& session, std::size_t h, int test);
[[nodiscard]] const Showing& showing_of(const MendSession& session, std::size_t h);

[[nodiscard]] const char* name_of(Look look); ///< "lit", "dim", "dark", "flickers"
/// From a name; `unseen` when it is none.
[[nodiscard]] Look look_from(const std::string& name);

/// Internal: chances from evidence; pairs where singles fall short (`merit`: log prior and fit of each
/// fault).
void weigh(MendSession& session);
[[nodiscard]] std::vector<FaultPair> find_pairs(const MendSession& session, std::span<const double> merit);

} // namespace lanternleaf
