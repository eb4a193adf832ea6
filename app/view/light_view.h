// LightView: the Light sheet as finished words, curves and shares at the slider's hours. Exists so that the
// screen computes nothing and a test can read what a maker would see.
//
//   LightSheet -> make_light_view -> LightView
#pragma once

#include "colour/glow.h"
#include "model/light_sheet.h"
#include "words/words.h"

#include <string>
#include <utility>
#include <vector>

namespace lanternleaf {

/// Lights of one type whose curves cannot be told apart on the plot.
struct LightCurve {
    std::string ids;  ///< "L1 L2", "L3–L5"
    std::string what; ///< "warm white"
    std::vector<int> leds;
    Rgb glow;
    int dash = 0;             ///< which dash pattern, from 0 (solid); no two curves share one
    std::vector<double> seen; ///< kLightSamples shares 0..1, evenly over the slider
    double now = 0.0;         ///< at the slider
};

/// One light at the slider's hours.
struct LightShare {
    std::string id;
    Vec2 at_mm;
    Rgb glow;
    double seen = 0.0;   ///< of the card's brightest fresh light, as the eye takes it
    double halo = 0.0;   ///< 0..1: `seen`, less where even the brightest is below its light at 5 mA
    std::string percent; ///< "68 %", "dark"
};

struct LightView {
    std::string title;   ///< of the card
    std::string trouble; ///< why there is nothing to plot; empty when there is
    std::vector<LightCurve> curves;
    std::vector<LightShare> lights;                    ///< one per Card::leds
    std::string plot_words;                            ///< "as the eye sees it; 100 % = L7 on a fresh cell"
    std::string after;                                 ///< "after **6 h** of light"
    std::string at_head;                               ///< "At 6 h"
    std::vector<std::pair<double, std::string>> ticks; ///< hours and their labels
    double most_h = 0.0;
    std::string figure;              ///< "22–31 h": the two makers' cells
    std::string figure_words;        ///< what comes after those hours
    std::vector<std::string> counts; ///< dark, presses left, what the cell gives: `**bold**` figures
    std::vector<std::string> helps;  ///< sentences, best first
    std::vector<std::string> notes;  ///< what the figures rest on
};

[[nodiscard]] LightView make_light_view(const LightSheet& light, const Words& words = english());

/// "L1 L2", "L3–L5 L7": three or more in a row are joined.
[[nodiscard]] std::string ids_text(const Card& card, const std::vector<int>& leds);
/// "22–31 h", "about 40 min", "more than 3000 h".
[[nodiscard]] std::string hour_range_text(HourRange range, double most_h, const Words& words = english());
/// Two significant figures: "14 000", "860".
[[nodiscard]] std::string about_count(double count);

} // namespace lanternleaf
