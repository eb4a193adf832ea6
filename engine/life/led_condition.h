// LED condition: the LEDs of a card not as typical ones at 25 C but warmer or colder, from the low or high
// end of what the maker sells under one name, or in one colour of a self-cycling LED. Exists so that the
// band of predictions comes from the parts file and not from the typical part alone.
#pragma once

#include "card/card.h"
#include "circuit/circuit.h"

#include <vector>

namespace lanternleaf {

/// All LEDs of the card at the least, typical or greatest forward voltage their file gives: the brightest
/// and hungriest, the typical, and the dimmest card that could be built.
enum class Spread { least, typical, most };

struct LedCondition {
    double celsius = 25.0;
    Spread spread = Spread::typical;
    /// Which colour self-cycling LEDs show, modulo each one's own count; -1: the file's main entry, the worst
    /// phase.
    int phase = -1;
};

/// Applies a condition to every diode of a circuit built from this card.
///
/// Temperature and spread move the whole curve along the voltage axis: Is' = Is exp(-dV / (n Vt)). For
/// temperature dV = forward_mV_per_K (T - 25 C). For the spread dV is the file's limit less the curve's own
/// voltage at the current the limit is stated for; that it holds at lower currents too is what Kingbright's
/// APTD1608LSECK sheet says (+-0.3 V at 2 mA, as other sheets at 20 mA).
void apply_condition(Circuit& circuit, const Card& card, const Parts& parts, const LedCondition& condition);

/// The most colours any LED of the card cycles through; 0 when none does.
[[nodiscard]] int phase_count(const Card& card, const Parts& parts);
/// The phase of `type` that a condition means; null when it has none or the main entry is meant.
[[nodiscard]] const LedPhase* phase_of(const LedType& type, int phase);
/// Luminous intensity under a condition: the phase's table, or the type's.
[[nodiscard]] double condition_mcd(const LedType& type, int phase, double current_mA);
/// The current at which it gives this intensity (tables rise with current).
[[nodiscard]] double condition_mA(const LedType& type, int phase, double mcd);
/// The LED's entry; the card's types are all known (the file reader makes sure).
[[nodiscard]] const LedType& type_of(const Card& card, const Parts& parts, int led);

} // namespace lanternleaf
