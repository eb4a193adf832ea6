#include "learn/learnt.h"

#include "base/readout.h"
#include "learn/limits.h"

#include <cmath>

namespace lanternleaf {

const char* name_of(PartSort sort) {
    return sort == PartSort::led ? "led" : sort == PartSort::tape ? "tape" : "foam";
}

namespace learn {

std::string measured_on(const std::string& at) {
    return "measured by the maker on " + at.substr(0, 10) + ": ";
}

bool usable(double value) {
    return std::isfinite(value);
}

} // namespace learn

Outcome<Learnt> learn_foam(const FoamTest& test, const std::string& at, const Words& words) {
    using namespace learn;
    if (test.layers < 1 || test.layers > kMostLayers) {
        return Problem{"", "foam", "expected 1 to " + std::to_string(kMostLayers) + " layers"};
    }
    if (!usable(test.height_mm) || !usable(test.squeezed_mm)) {
        return Problem{"", "foam", "expected a height in millimetres"};
    }
    const double each_mm = test.height_mm / test.layers;
    if (each_mm < kLeastLayer_mm || each_mm > kMostLayer_mm) {
        return Problem{"", "foam",
                       words("learn.no_layer", {{"least", words.mm(kLeastLayer_mm)},
                                                {"most", words.mm(kMostLayer_mm)},
                                                {"found", words.mm(each_mm)}})};
    }
    if (test.squeezed_mm < 0.0 || test.squeezed_mm > test.height_mm) {
        return Problem{"", "foam", words("learn.no_squeeze")};
    }
    const auto hundredths = [](double mm) { return std::round(mm * 100.0) / 100.0; };
    FoamType foam;
    foam.thickness_mm = hundredths(each_mm);
    foam.squeezed_mm = std::min(foam.thickness_mm, hundredths(test.squeezed_mm / test.layers));
    foam.measured_at = at;
    foam.source = measured_on(at) + std::to_string(test.layers) +
                  (test.layers == 1 ? " layer " : " layers ") + readout_mm(test.height_mm) + " high";
    if (test.squeezed_mm > 0.0) {
        foam.source += ", " + readout_mm(test.squeezed_mm) + " pressed down";
    }
    Learnt out;
    out.sort = PartSort::foam;
    out.id = "foam-" + readout_number(foam.thickness_mm, 1);
    out.parts.foams[out.id] = foam;
    return out;
}

} // namespace lanternleaf
