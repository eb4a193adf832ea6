#include "card/parts.h"

namespace lanternleaf {

namespace {

template <class T>
void lay_over(std::map<std::string, T>& under, const std::map<std::string, T>& own) {
    for (const auto& [id, type] : own) {
        under.insert_or_assign(id, type);
    }
}

} // namespace

bool Parts::empty() const {
    return packages.empty() && leds.empty() && cells.empty() && tapes.empty() && holders.empty() &&
           !resistor && extras.empty();
}

Parts merged(const Parts& shipped, const Parts& own) {
    Parts result = shipped;
    lay_over(result.packages, own.packages);
    lay_over(result.leds, own.leds);
    lay_over(result.cells, own.cells);
    lay_over(result.tapes, own.tapes);
    lay_over(result.holders, own.holders);
    if (own.resistor) {
        result.resistor = own.resistor;
    }
    if (!own.extras.empty()) {
        result.extras = own.extras;
    }
    return result;
}

} // namespace lanternleaf
