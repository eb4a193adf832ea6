#include "mend/fault.h"

#include <cassert>

namespace lanternleaf {

namespace {

using Kind = FaultKind;
using S = StepId;

// A step proved by the engine's own check leaves little room for what it covers; more for what can come later
// (a crack when the card is closed, a cell run flat).
constexpr double kLittle = 0.05;
constexpr double kSome = 0.35;
constexpr double kAll = 1.0;

// The percentages follow this list of why a light does not come on at a beginner's table (estimates, from
// memory of common practice): turned 13; pad off its tape 11; joint on plain glue 9 (a joint 6.5, all of a
// tape's 2.5); cell upside down 8; switch stays open 7; + and - touch 6; cell flat 5, of an old stock 1;
// cracked 4.5, a gap 3.5; mixed colours 3.5; crossing bare 2.5; in series 2.5; too many lights 2.5; both pads
// on one trace 2.5; tab left 2; cell loose 2; dead or wrong light 1.5; dirty or bent contact 1.5; short when
// shut 1.5; light hidden 1.5; switch stuck 1.5; a poor run 1.5; wrong cell 1.5; liner left 1; paper leaks 1;
// other 2. Mixed colours and too many lights show in the findings of the card as built, or as a wrong light.
// Ours besides: lights exchanged, no cell, a wrong resistor, tape that ends short of the cell.
constexpr FaultTraits kTraits[kFaultKinds] = {
    // kind, name, prior %, made in, stays, press, foil, look, flickers
    {Kind::led_turned, "led-turned", 13.0, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {Kind::led_dead, "led-dead", 1.5, S::place_leds, kSome, 0.0, 0.0, 0.1, 0.01},
    {Kind::led_wrong, "led-wrong", 3.5, S::place_leds, kLittle, 0.0, 0.0, 0.6, 0.01},
    {Kind::led_swapped, "led-swapped", 1.5, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {Kind::led_one_side, "led-one-side", 2.5, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {Kind::led_in_series, "led-in-series", 2.5, S::place_leds, kLittle, 0.0, 0.0, 0.7, 0.01},
    {Kind::light_hidden, "light-hidden", 1.5, S::pad_edges, kSome, 0.0, 0.0, 0.8, 0.01},
    {Kind::pad_loose, "pad-loose", 11.0, S::place_leds, kSome, 0.9, 0.8, 0.3, 0.25},
    {Kind::joint_loose, "joint-loose", 6.5, S::place_leds, kLittle, 0.8, 0.95, 0.3, 0.2},
    {Kind::glue_plain, "glue-plain", 2.5, S::place_leds, kLittle, 0.3, 0.95, 0.1, 0.1},
    {Kind::contact_loose, "contact-loose", 3.0, S::place_leds, kSome, 0.6, 0.9, 0.6, 0.25},
    {Kind::strip_broken, "strip-broken", 8.0, S::place_leds, kSome, 0.2, 0.9, 0.7, 0.15},
    {Kind::run_poor, "run-poor", 1.5, S::place_leds, kLittle, 0.0, 0.8, 0.1, 0.01},
    {Kind::sides_touch, "sides-touch", 6.0, S::lay_positive, kLittle, 0.0, 0.0, 0.8, 0.05},
    {Kind::crossing_bare, "crossing-bare", 2.5, S::insulate, kLittle, 0.0, 0.0, 0.6, 0.05},
    {Kind::sides_touch_shut, "sides-touch-shut", 1.5, S::pad_edges, kAll, 0.0, 0.0, 0.3, 0.05},
    {Kind::paper_leaks, "paper-leaks", 1.0, S::lay_positive, kLittle, 0.0, 0.0, 0.2, 0.01},
    {Kind::switch_open, "switch-open", 7.0, S::pad_edges, kSome, 0.7, 0.95, 0.4, 0.25},
    {Kind::switch_stuck, "switch-stuck", 1.5, S::pad_edges, kAll, 0.0, 0.0, 0.3, 0.01},
    {Kind::cell_upside_down, "cell-upside-down", 8.0, S::place_leds, kLittle, 0.0, 0.0, 0.95, 0.01},
    {Kind::cell_flat, "cell-flat", 6.0, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.03},
    {Kind::cell_wrong, "cell-wrong", 1.5, S::place_leds, kLittle, 0.0, 0.0, 0.95, 0.03},
    {Kind::cell_loose, "cell-loose", 2.0, S::pad_edges, kSome, 0.9, 0.5, 0.4, 0.4},
    {Kind::cell_missing, "cell-missing", 0.5, S::place_leds, kLittle, 0.0, 0.0, 0.99, 0.01},
    {Kind::tab_left, "tab-left", 2.0, S::place_leds, kLittle, 0.0, 0.9, 0.95, 0.01},
    {Kind::liner_left, "liner-left", 1.0, S::place_leds, kLittle, 0.1, 0.9, 0.3, 0.05},
    {Kind::resistor_wrong, "resistor-wrong", 0.5, S::place_leds, kLittle, 0.0, 0.8, 0.8, 0.01},
    {Kind::as_built, "as-built", 6.0, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.02},
    {Kind::other, "other", 2.0, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.1},
};

} // namespace

FaultWeights usual_weights() {
    FaultWeights weights;
    weights.fill(1.0);
    return weights;
}

const FaultTraits& traits_of(FaultKind kind) {
    const FaultTraits& found = kTraits[static_cast<int>(kind)];
    assert(found.kind == kind);
    return found;
}

StepId shows_from(FaultKind kind) {
    switch (kind) {
    case Kind::cell_flat:
    case Kind::cell_loose:
    case Kind::switch_open:
        return S::place_leds;
    default:
        return traits_of(kind).made_in;
    }
}

const char* name_of(FaultKind kind) {
    return traits_of(kind).name;
}

} // namespace lanternleaf
