#include "record/simulate.h"

#include "circuit/lights.h"
#include "conductors/conductors.h"
#include "guide/sequence.h"

#include <cmath>

namespace lanternleaf {

namespace {

int rank(const std::string& state) {
    return state == "lit" ? 2 : state == "dim" ? 1 : 0;
}

bool is_contact(const std::string& place) {
    return place == "bed" || place == "flap" || place == "holder-" || place == "holder+";
}

// What a meter between the holder's two contacts shows with no cell and no LED in place.
void measure_between_contacts(const Card& table, const Parts& parts, Reading& reading) {
    const Conductors conductors = find_conductors(table, parts);
    if (conductors.net_of_terminal[0] != conductors.net_of_terminal[1]) {
        reading.open = true;
        return;
    }
    CircuitOptions options;
    options.with_leds = false;
    options.with_cell = false;
    const Circuit circuit = build_circuit(table, parts, conductors, fresh_cell(table, parts), options);
    reading.value = resistance_between(circuit, circuit.node_of_terminal[0], circuit.node_of_terminal[1]);
    if (!std::isfinite(*reading.value)) {
        reading.value.reset();
        reading.open = true;
    }
}

void look_at_lights(const Card& table, const Parts& parts, Reading& reading) {
    const Lighting lighting = light_up(table, parts, find_conductors(table, parts), fresh_cell(table, parts));
    for (const Light& light : lighting.lights) {
        const Led& led = table.leds[static_cast<std::size_t>(light.led)];
        reading.seen.push_back({led.id, name_of(light.state), light.brightness});
    }
    reading.meter = false;
}

} // namespace

std::vector<Check> checks_of(const Step& step) {
    std::vector<Check> checks;
    for (const Move& move : step.moves) {
        if (move.check) {
            checks.push_back(*move.check);
        }
    }
    for (const Check& check : step.proof) {
        if (find_check(checks, check.id) == nullptr) {
            checks.push_back(check);
        }
    }
    return checks;
}

const Check* find_check(const std::vector<Check>& checks, const std::string& id) {
    for (const Check& check : checks) {
        if (check.id == id) {
            return &check;
        }
    }
    return nullptr;
}

std::optional<Reading> simulated_reading(const Card& as_built, const Parts& parts, StepId step,
                                         const Check& check, const Check* built) {
    Reading reading;
    reading.check = check.id;
    reading.simulated = true;
    switch (check.kind) {
    case CheckKind::open:
    case CheckKind::resistance:
        if (is_contact(check.from) && is_contact(check.to)) {
            measure_between_contacts(card_after(as_built, parts, step), parts, reading);
        } else if (built != nullptr && built->kind == CheckKind::resistance) {
            reading.value = built->expected;
        } else {
            reading.open = true; // the guide expects no path to a pad that no tape reaches
        }
        break;
    case CheckKind::lights:
        look_at_lights(card_after(as_built, parts, step), parts, reading);
        break;
    case CheckKind::look:
        return std::nullopt;
    case CheckKind::volts:
    case CheckKind::height:
        if (built == nullptr) {
            return std::nullopt;
        }
        reading.value = built->expected;
        break;
    }
    return reading;
}

ReadingVerdict judge_against_plan(const Check& check, const Check* built, const Reading& reading,
                                  const Words& words) {
    if (check.kind != CheckKind::lights) {
        // A pad that tape reaches on the plan and not on the card as built has a check for no path there.
        const bool lost =
            check.kind == CheckKind::resistance && built != nullptr && built->kind == CheckKind::open;
        return judge_reading(built != nullptr && !lost ? *built : check, reading, words);
    }
    Check least = check;
    for (LightExpectation& light : least.lights) {
        for (const LightExpectation& seen : reading.seen) {
            if (seen.led == light.led && rank(seen.state) > rank(light.state)) {
                light = seen; // brighter than planned is no fault
            }
        }
    }
    return judge_reading(least, reading, words);
}

} // namespace lanternleaf
