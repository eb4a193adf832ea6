// Mend meter view: what the keypad says while a reading of the test on offer is typed. Pure.
#pragma once

#include "model/mend_state.h"

#include <string>

namespace lanternleaf {

struct MendMeterView {
    std::string title;  ///< "Measure to L3+"
    std::string expect; ///< "OL", "0.1–2.1 Ω", "2.6–3.2 V"
    std::string unit;   ///< "Ω", "V"
    bool volts = false;
    double low = 0.0; ///< expected range
    double high = 0.0;
    double full = 1.0;
    std::string low_text;
    std::string high_text;
};

/// Of a test with a meter; for others empty words.
[[nodiscard]] MendMeterView mend_meter_view(const MendModel& model, const MendTest& test,
                                            const Words& words = english());

} // namespace lanternleaf
