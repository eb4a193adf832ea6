#include "base/readout.h"

#include <cmath>
#include <cstdio>

namespace lanternleaf {

std::string readout_number(double value, int decimals) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    std::string out = text;
    if (out.find('.') != std::string::npos) {
        while (out.back() == '0') {
            out.pop_back();
        }
        if (out.back() == '.') {
            out.pop_back();
        }
    }
    return out == "-0" ? "0" : out;
}

std::string readout_mm(double mm) {
    return readout_number(mm, 1) + " mm";
}

namespace {

// The unit a resistance is spoken in, and its size in ohms.
struct OhmUnit {
    double size;
    const char* name;
};

OhmUnit ohm_unit(double ohm) {
    if (std::abs(ohm) >= 0.9995e6) {
        return {1e6, "MΩ"};
    }
    if (std::abs(ohm) >= 999.5) {
        return {1e3, "kΩ"};
    }
    return {1.0, "Ω"};
}

std::string in_unit(double ohm, OhmUnit unit) {
    const double scaled = ohm / unit.size;
    return readout_number(scaled, std::abs(scaled) < 9.95 ? 1 : 0);
}

} // namespace

std::string readout_ohm(double ohm) {
    const OhmUnit unit = ohm_unit(ohm);
    return in_unit(ohm, unit) + " " + unit.name;
}

std::string readout_ohm_range(double low_ohm, double high_ohm) {
    const OhmUnit unit = ohm_unit(high_ohm);
    return in_unit(low_ohm, unit) + "–" + in_unit(high_ohm, unit) + " " + unit.name;
}

std::string readout_volts(double volts) {
    char text[64];
    std::snprintf(text, sizeof text, "%.2f V", volts);
    return text;
}

std::string readout_mA(double mA) {
    const double size = std::abs(mA);
    if (size > 0.0 && size < 0.0995) {
        return readout_number(mA * 1000.0, size < 0.00995 ? 1 : 0) + " µA";
    }
    return readout_number(mA, size < 9.95 ? 1 : 0) + " mA";
}

std::string readout_hours(double hours) {
    if (hours < 1.0) {
        return "about " + readout_number(std::round(hours * 60.0 / 5.0) * 5.0, 0) + " min";
    }
    return readout_number(hours, hours < 9.95 ? 1 : 0) + " h";
}

std::string readout_percent(double fraction) {
    return readout_number(fraction * 100.0, 0) + " %";
}

} // namespace lanternleaf
