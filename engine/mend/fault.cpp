#include "mend/fault.h"

#include <cassert>

namespace lanternleaf {

namespace {

using K = FaultKind;
using S = StepId;

// A step proved by the engine's own check leaves little room for what it covers; more for what can come later
// (a crack when the card is closed, a cell run flat).
constexpr double kLittle = 0.05;
constexpr double kSome = 0.35;
constexpr double kAll = 1.0;

constexpr FaultTraits kTraits[kFaultKinds] = {
    // kind, name, prior %, made in, stays, press, foil, look, flickers
    {K::led_turned, "led-turned", 13.0, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {K::led_dead, "led-dead", 1.0, S::place_leds, kSome, 0.0, 0.0, 0.1, 0.01},
    {K::led_wrong, "led-wrong", 3.5, S::place_leds, kLittle, 0.0, 0.0, 0.6, 0.01},
    {K::led_swapped, "led-swapped", 1.5, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {K::led_one_side, "led-one-side", 2.5, S::place_leds, kLittle, 0.0, 0.0, 0.8, 0.01},
    {K::light_hidden, "light-hidden", 1.5, S::pad_edges, kSome, 0.0, 0.0, 0.8, 0.01},
    {K::pad_loose, "pad-loose", 11.0, S::place_leds, kSome, 0.9, 0.8, 0.3, 0.25},
    {K::joint_loose, "joint-loose", 7.0, S::place_leds, kLittle, 0.8, 0.95, 0.3, 0.2},
    {K::glue_plain, "glue-plain", 3.0, S::place_leds, kLittle, 0.3, 0.95, 0.1, 0.1},
    {K::contact_loose, "contact-loose", 3.0, S::place_leds, kSome, 0.6, 0.9, 0.6, 0.25},
    {K::strip_broken, "strip-broken", 8.0, S::place_leds, kSome, 0.2, 0.9, 0.7, 0.15},
    {K::run_poor, "run-poor", 1.5, S::place_leds, kLittle, 0.0, 0.8, 0.1, 0.01},
    {K::sides_touch, "sides-touch", 6.0, S::lay_positive, kLittle, 0.0, 0.0, 0.8, 0.05},
    {K::crossing_bare, "crossing-bare", 2.5, S::insulate, kLittle, 0.0, 0.0, 0.6, 0.05},
    {K::sides_touch_shut, "sides-touch-shut", 1.5, S::pad_edges, kAll, 0.0, 0.0, 0.3, 0.05},
    {K::paper_leaks, "paper-leaks", 1.0, S::lay_positive, kLittle, 0.0, 0.0, 0.2, 0.01},
    {K::switch_open, "switch-open", 7.0, S::pad_edges, kSome, 0.7, 0.95, 0.4, 0.25},
    {K::switch_stuck, "switch-stuck", 1.5, S::pad_edges, kAll, 0.0, 0.0, 0.3, 0.01},
    {K::cell_upside_down, "cell-upside-down", 8.0, S::place_leds, kLittle, 0.0, 0.0, 0.95, 0.01},
    {K::cell_flat, "cell-flat", 6.0, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.03},
    {K::cell_wrong, "cell-wrong", 1.5, S::place_leds, kLittle, 0.0, 0.0, 0.95, 0.03},
    {K::cell_loose, "cell-loose", 2.0, S::pad_edges, kSome, 0.9, 0.5, 0.4, 0.4},
    {K::cell_missing, "cell-missing", 0.5, S::place_leds, kLittle, 0.0, 0.0, 0.99, 0.01},
    {K::tab_left, "tab-left", 2.0, S::place_leds, kLittle, 0.0, 0.9, 0.95, 0.01},
    {K::liner_left, "liner-left", 1.0, S::place_leds, kLittle, 0.1, 0.9, 0.3, 0.05},
    {K::resistor_wrong, "resistor-wrong", 0.5, S::place_leds, kLittle, 0.0, 0.8, 0.8, 0.01},
    {K::as_built, "as-built", 8.5, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.02},
    {K::other, "other", 2.0, S::pad_edges, kAll, 0.0, 0.0, 0.0, 0.1},
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

const char* name_of(FaultKind kind) {
    return traits_of(kind).name;
}

} // namespace lanternleaf
