// Slider and stepper: a number along a line, and a number with a step down and a step up.
// Exists so that numbers are set without a keyboard. A slider takes the finger as soon as it is touched;
// arrow keys move it by one step.
#pragma once

#include <string>
#include <vector>

#include "controls/ui.h"

namespace lanternleaf {

struct SliderLook {
    std::string label{}; ///< read out, not drawn
    float low = 0;
    float high = 1;
    float step = 0;        ///< values snap to low + k step; 0 for none
    float key_step = 0.5f; ///< what an arrow key does

    struct Mark {
        float value = 0;
        std::string label{};
    };

    std::vector<Mark> marks{}; ///< ticks with labels under the line
    std::string value_text{};  ///< read out: "6 hours"
};

/// Height a slider with marks needs.
[[nodiscard]] float slider_height(const Ui& ui, const SliderLook& look);
/// True in each frame in which the value changed.
bool slider(Ui& ui, std::string_view name, const Rect& r, const SliderLook& look, float& value);

struct StepperLook {
    std::string label{};      ///< read out, with "less" and "more" behind it
    std::string value_text{}; ///< drawn between the buttons
    double low = 0;
    double high = 100;
    double step = 1;
};

/// True when the value changed. Held down, it goes on by itself. Targets NAME/less and NAME/more.
bool stepper(Ui& ui, std::string_view name, const Rect& r, const StepperLook& look, double& value);

} // namespace lanternleaf
