// LightSheet: the card after dark, fresh to tired: what the Light sheet needs to know of one card. Exists so
// that the card's life is worked out once, when the sheet is opened, and the slider only asks it for a
// moment.
#pragma once

#include "conductors/conductors.h"
#include "life/helps.h"
#include "life/life.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// Moments of the plotted curves, evenly from fresh to `most_h`.
inline constexpr int kLightSamples = 97;
/// What an arrow key moves the slider by.
inline constexpr double kLightStep_h = 0.5;

struct LightSheet {
    Card card;
    Parts parts; ///< shipped, with the card's own laid over
    Conductors conductors;
    std::string card_folder; ///< where its line art is
    std::string picture;     ///< path of its front picture; may be empty
    Life life;
    Use use = Use::press; ///< as the holder has it: pressed, or switched on and left
    int maker = 0;        ///< whose cell the curves show: the one that dims first
    double most_h = 0.0;  ///< the slider's end
    double tick_h = 8.0;
    std::vector<LifeMoment> samples; ///< kLightSamples of them; empty when the card gives no light
    std::vector<Help> helps;         ///< best first
    double hours = 0.0;              ///< where the slider is
    bool traces = false;             ///< the plan instead of the front picture
};

} // namespace lanternleaf
