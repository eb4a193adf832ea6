#include "card/parts.h"

namespace lanternleaf {

namespace {

// Times as text of one form (utc_text) sort as they passed.
template <class T>
bool measured_before(const T& own, const T& there) {
    if constexpr (requires { own.measured_at; }) {
        return !own.measured_at.empty() && own.measured_at < there.measured_at;
    } else {
        return false;
    }
}

template <class T>
void lay_over(std::map<std::string, T>& under, const std::map<std::string, T>& own) {
    for (const auto& [id, type] : own) {
        const auto there = under.find(id);
        if (there == under.end() || !measured_before(type, there->second)) {
            under.insert_or_assign(id, type);
        }
    }
}

} // namespace

bool Parts::empty() const {
    return packages.empty() && leds.empty() && cells.empty() && tapes.empty() && holders.empty() &&
           foams.empty() && !resistor && extras.empty();
}

Parts merged(const Parts& shipped, const Parts& own) {
    Parts result = shipped;
    lay_over(result.packages, own.packages);
    lay_over(result.leds, own.leds);
    lay_over(result.cells, own.cells);
    lay_over(result.tapes, own.tapes);
    lay_over(result.holders, own.holders);
    lay_over(result.foams, own.foams);
    if (own.resistor) {
        result.resistor = own.resistor;
    }
    if (!own.extras.empty()) {
        result.extras = own.extras;
    }
    return result;
}

} // namespace lanternleaf
