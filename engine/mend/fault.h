// Fault: one thing that may be wrong with a card on the table, as a change of element values in its circuit.
// Exists so that a fault is simulated, not described: what it does to the lights is solved, never listed.
//
//   as-built card -> candidates (this file's Fault) -> simulate.h -> what each would show -> session.h
#pragma once

#include "guide/change.h"
#include "guide/step.h"

#include <array>
#include <span>
#include <string>
#include <vector>

namespace lanternleaf {

enum class FaultKind {
    led_turned,
    led_dead,
    led_wrong,        ///< another type: one that takes the current, or one that gets too little
    led_swapped,      ///< two LEDs of the card exchanged
    led_one_side,     ///< both pads on the same trace
    led_in_series,    ///< two lights one behind the other, sharing the cell's push
    light_hidden,     ///< it shines, and nobody sees it (asked)
    pad_loose,        ///< an LED's or resistor's pad hardly touches its tape, or not at all
    joint_loose,      ///< a lap of two strips
    glue_plain,       ///< a tape whose glue does not conduct: every lap of it
    contact_loose,    ///< tape on the bed or inside the flap not reached, bent away or dirty
    strip_broken,     ///< torn, cracked at a fold or crease, or a gap
    run_poor,         ///< a whole strip of high resistance
    sides_touch,      ///< + and - touch where they come close
    crossing_bare,    ///< + and - touch at a crossing
    sides_touch_shut, ///< they touch only when the card is closed (asked)
    paper_leaks,      ///< damp or metallic paper, ink
    switch_open,      ///< the flap does not close the switch
    switch_stuck,     ///< the switch is always closed (asked)
    cell_upside_down,
    cell_flat,
    cell_wrong, ///< a 1.5 V type
    cell_loose,
    cell_missing,
    tab_left,   ///< pull tab or clear film still between
    liner_left, ///< backing still under a strip's end, or a strip upside down
    resistor_wrong,
    as_built, ///< nothing more is wrong: the card as built does this (a finding says why)
    other,    ///< none of these
};
inline constexpr int kFaultKinds = static_cast<int>(FaultKind::other) + 1;

/// How likely each kind is, against the usual (1): for example from what a maker's own records show.
using FaultWeights = std::array<double, kFaultKinds>;
[[nodiscard]] FaultWeights usual_weights();

/// What is known of a kind without a card. Percentages are estimates for beginners, from memory of common
/// practice; no published frequency table is known. The chances say how often the named act on the right
/// place shows the fault; engineering judgement.
struct FaultTraits {
    FaultKind kind;
    const char* name;     ///< "led-turned", as the command line prints it
    double prior_percent; ///< of all faults, shared among the kind's places on a card
    StepId made_in;       ///< the step whose proof speaks against it
    double stays;         ///< what is left of its prior once that step is proved
    double press;         ///< pressing there brings the light back while pressed
    double foil;          ///< a scrap of foil laid across brings it back
    double look;          ///< a close look shows it
    double flickers;      ///< a light that it touches flickers
};

[[nodiscard]] const FaultTraits& traits_of(FaultKind kind);
[[nodiscard]] const char* name_of(FaultKind kind);
/// The first step in which it can show. Of what is put in and proved in the same step: that step. A cell, its
/// seat and the flap matter from the first press on, and can fail later than that step's proof.
[[nodiscard]] StepId shows_from(FaultKind kind);

/// One element of the circuit with another value.
struct ElementEdit {
    enum class What {
        ohm,         ///< resistors[index].ohm = value
        turn,        ///< diodes[index] the other way round
        burn,        ///< diodes[index] carries nothing
        diode_as,    ///< diodes[index] takes the law of MendModel::other_laws[other]
        cell_open_V, ///< every cell
        cell_ohm,
    };
    What what = What::ohm;
    int index = 0;
    double value = 0.0;
    int other = 0;
};

/// Where a fault sits: a joint, a stretch of tape, a pad, an LED, a crossing, the cell, the switch.
struct FaultPlace {
    std::string name; ///< "the joint of N1 and N2", "L3−", "N1 between L1− and L2−"
    Vec2 at_mm;
    std::vector<std::string> parts; ///< ids as on the card
};

struct Fault {
    FaultKind kind = FaultKind::other;
    int place = -1;                      ///< index into MendModel::places; -1 for the card as a whole
    int led = -1;                        ///< the LED it is about, when it is one
    int led_b = -1;                      ///< the other of two swapped ones
    bool open = false;                   ///< parts entirely (a loose contact has two grades)
    double share = 1.0;                  ///< of its kind's prior, against the other places
    double prior = 0.0;                  ///< probability before anything is seen
    int cause = -1;                      ///< faults with one place and one cure are one cause
    StepId made_in = StepId::place_leds; ///< FaultTraits::made_in, or for tape the step its trace is laid in
    std::vector<ElementEdit> edits;
    std::string text; ///< as_built: what the finding says; fix in `fix`
    std::string fix;
    std::string type; ///< led_wrong: the type it may be instead; glue_plain and run_poor: the tape
};

} // namespace lanternleaf
