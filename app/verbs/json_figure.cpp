#include "verbs/json_figure.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>

namespace lanternleaf {

nlohmann::ordered_json json_figure(double value) {
    if (!std::isfinite(value)) {
        return nullptr;
    }
    char text[40];
    std::snprintf(text, sizeof text, "%.6g", value);
    const double rounded = std::strtod(text, nullptr);
    if (rounded == std::floor(rounded) && std::abs(rounded) < 1e9) {
        return static_cast<long long>(rounded); // "148", not "148.0"; also turns -0 into 0
    }
    return rounded;
}

std::string json_text(const nlohmann::ordered_json& json) {
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

} // namespace lanternleaf
