// Currents and brightness, from the solved circuit. Silent when the cell is shorted or the circuit was not
// solved: then another rule has already said what matters.
#include "base/tolerance.h"
#include "findings/colour_words.h"
#include "findings/rule_tools.h"

#include <algorithm>

namespace lanternleaf {

namespace {

/// The next value up in the E12 series of IEC 60063, in which resistors are sold.
double next_e12_ohm(double ohm) {
    static constexpr double kSteps[] = {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
    for (double decade = 1.0; decade < 1e9; decade *= 10.0) {
        for (const double step : kSteps) {
            if (step * decade >= ohm) {
                return step * decade;
            }
        }
    }
    return ohm;
}

/// A resistor that keeps the LED within its limit even if it were alone on the fresh cell.
double guarding_ohm(const ReviewFacts& facts, int led) {
    const LedType& type = led_type(facts, led);
    DiodeElement diode;
    diode.saturation_A = type.saturation_A;
    diode.ideality = type.ideality;
    diode.series_ohm = type.series_ohm;
    const double limit_A = type.max_mA / 1000.0;
    const CellState cell = fresh_cell(facts.card, facts.parts);
    return next_e12_ohm((cell.open_V - diode_voltage_V(diode, limit_A)) / limit_A - cell.ohm);
}

/// The LED has its way to both faces of the cell and stands the right way round: what it lacks is current.
bool is_sound(const ReviewFacts& facts, int led) {
    return reach_of_led(facts, led, true).both() && !is_reversed(facts, led);
}

/// Another LED of another colour that takes more current: the likely thief.
int thief_of(const ReviewFacts& facts, int led) {
    int thief = -1;
    double most_mA = facts.lighting.lights[static_cast<std::size_t>(led)].current_mA;
    for (std::size_t i = 0; i < facts.lighting.lights.size(); ++i) {
        if (led_type(facts, static_cast<int>(i)).colour != led_type(facts, led).colour &&
            facts.lighting.lights[i].current_mA > most_mA) {
            most_mA = facts.lighting.lights[i].current_mA;
            thief = static_cast<int>(i);
        }
    }
    return thief;
}

bool any_reversed(const ReviewFacts& facts) {
    for (int led = 0; led < static_cast<int>(facts.card.leds.size()); ++led) {
        if (is_reversed(facts, led)) {
            return true;
        }
    }
    return false;
}

std::string dim_fix(const ReviewFacts& facts, int led, bool alone) {
    if (!alone) {
        return facts.words("findings.one_after_other_fix");
    }
    const Conductors& made = facts.conductors;
    const std::size_t pad = 2 * static_cast<std::size_t>(led);
    const auto leads_on = [&](int net) {
        return net == made.net_of_terminal[0] || net == made.net_of_terminal[1];
    };
    if (!leads_on(made.net_of_led_pad[pad]) || !leads_on(made.net_of_led_pad[pad + 1])) {
        return facts.words("findings.smaller_resistor_fix");
    }
    return facts.words("findings.fewer_lights_fix");
}

std::string id_of_led(const ReviewFacts& facts, int led) {
    return facts.card.leds[static_cast<std::size_t>(led)].id;
}

} // namespace

void rule_led_overdriven(const ReviewFacts& facts, Findings& out) {
    if (!has_light(facts)) {
        return;
    }
    for (const Light& light : facts.lighting.lights) {
        const double max_mA = led_type(facts, light.led).max_mA;
        if (max_mA <= 0.0 || light.current_mA <= max_mA) {
            continue;
        }
        const std::string id = id_of_led(facts, light.led);
        Finding found{"led-overdriven",
                      Level::problem,
                      facts.card.leds[static_cast<std::size_t>(light.led)].at_mm,
                      {id},
                      "",
                      ""};
        const Words& words = facts.words;
        found.text = words("findings.overdriven", {{"led", id},
                                                   {"current", mA_beside(light.current_mA, max_mA, words)},
                                                   {"limit", words.mA(max_mA)}});
        const bool stacked = facts.card.cell.count > 1;
        found.fix = words(stacked ? "findings.overdriven_stacked_fix" : "findings.overdriven_fix",
                          {{"ohm", words.ohm(guarding_ohm(facts, light.led))}, {"led", id}});
        out.push_back(std::move(found));
    }
}

void rule_cell_overloaded(const ReviewFacts& facts, Findings& out) {
    if (!has_light(facts)) {
        return;
    }
    // A flap is pressed for seconds: the cell's pulse limit holds. A switch leaves the light on for hours:
    // then the voltage has settled, and the continuous limit holds.
    const CellType& cell = cell_type(facts);
    const bool press = holder_type(facts).kind == HolderKind::flap;
    const bool pulse = press && cell.max_pulse_mA > 0.0;
    const bool settled = !press && cell.steady_ohm > 0.0;
    const double current_mA = settled ? facts.steady_lighting.cell_mA : facts.lighting.cell_mA;
    const double limit_mA = pulse ? cell.max_pulse_mA : cell.max_continuous_mA;
    if (limit_mA <= 0.0 || current_mA <= limit_mA) {
        return;
    }
    Finding found{"cell-overloaded", Level::caution, facts.card.holder.at_mm, {"holder"}, "", ""};
    const Words& words = facts.words;
    const char* message = pulse     ? "findings.overloaded_pulse"
                          : settled ? "findings.overloaded_left_on"
                          : press   ? "findings.overloaded_pressed"
                                    : "findings.overloaded";
    found.text = words(message, {{"current", mA_beside(current_mA, limit_mA, words)},
                                 {"cell", facts.card.cell.type},
                                 {"limit", words.mA(limit_mA)}});
    found.fix = words("findings.overloaded_fix");
    out.push_back(std::move(found));
}

void rule_dim_led(const ReviewFacts& facts, Findings& out) {
    if (!has_light(facts)) {
        return;
    }
    for (const Light& light : facts.lighting.lights) {
        if (light.state == LightState::lit || !is_sound(facts, light.led)) {
            continue;
        }
        const bool alone = reach_of_led(facts, light.led, false).both(); // no other LED in its path
        if (!alone && any_reversed(facts)) {
            continue; // the turned one holds the current back, and that is told
        }
        const std::string id = id_of_led(facts, light.led);
        Finding found{
            "dim-led", Level::caution, facts.card.leds[static_cast<std::size_t>(light.led)].at_mm, {id}, "",
            ""};
        const double current_mA = std::max(0.0, light.current_mA);
        const Words& words = facts.words;
        found.text = words(light.state == LightState::dark ? "findings.stays_dark" : "findings.is_dim",
                           {{"led", id},
                            {"current", current_mA < 1e-4 ? std::string("0 mA")
                                                          : mA_beside(current_mA, tolerance::kLit_mA, words)},
                            {"lit", words.mA(tolerance::kLit_mA)}});
        const int thief = thief_of(facts, light.led);
        if (thief >= 0) {
            found.parts.push_back(id_of_led(facts, thief));
            found.fix =
                words("findings.thief_fix", {{"led", id_of_led(facts, thief)},
                                             {"colour", colour_words(led_type(facts, thief).colour, words)}});
        } else {
            found.fix = dim_fix(facts, light.led, alone);
        }
        out.push_back(std::move(found));
    }
}

void rule_uneven_light(const ReviewFacts& facts, Findings& out) {
    if (!has_light(facts)) {
        return;
    }
    const std::vector<Light>& lights = facts.lighting.lights;
    std::vector<bool> counts(lights.size(), false);
    for (std::size_t i = 0; i < lights.size(); ++i) {
        counts[i] = lights[i].state != LightState::dark; // a dark one is another rule's business
    }
    std::vector<double> others_mcd;
    for (std::size_t i = 0; i < lights.size(); ++i) {
        if (!counts[i]) {
            continue;
        }
        const std::string& colour = led_type(facts, lights[i].led).colour;
        others_mcd.clear();
        for (std::size_t j = 0; j < lights.size(); ++j) {
            if (j != i && counts[j] && led_type(facts, lights[j].led).colour == colour) {
                others_mcd.push_back(lights[j].mcd);
            }
        }
        if (others_mcd.empty()) {
            continue;
        }
        std::sort(others_mcd.begin(), others_mcd.end());
        const std::size_t half = others_mcd.size() / 2;
        const double median_mcd =
            others_mcd.size() % 2 == 1 ? others_mcd[half] : 0.5 * (others_mcd[half - 1] + others_mcd[half]);
        if (lights[i].mcd >= tolerance::kPlainlyDimmer * median_mcd) {
            continue;
        }
        const std::string id = id_of_led(facts, lights[i].led);
        Finding found{"uneven-light", Level::caution, facts.card.leds[i].at_mm, {id}, "", ""};
        const Words& words = facts.words;
        found.text = words("findings.uneven", {{"led", id},
                                               {"percent", words.percent(lights[i].mcd / median_mcd)},
                                               {"colour", colour_words(colour, words)},
                                               {"n", others_mcd.size()},
                                               {"limit", words.percent(tolerance::kPlainlyDimmer)}});
        found.fix = words("findings.uneven_fix", {{"led", id}});
        out.push_back(std::move(found));
    }
}

} // namespace lanternleaf
