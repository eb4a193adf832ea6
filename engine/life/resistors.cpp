#include "life/resistors.h"

#include "base/tolerance.h"
#include "circuit/solve.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

constexpr double kStarving = 4.0; // a quarter of the current is plainly another light
constexpr double kLeast_ohm = 10.0;
constexpr double kMost_ohm = 1000.0;
constexpr int kMostRounds = 4;

class Trials {
public:
    Trials(const Card& card, const Parts& parts, const Conductors& conductors)
        : card_(card), circuit_(build_circuit(card, parts, conductors, fresh_cell(card, parts))),
          solver_(circuit_) {}

    /// Current of every LED with these extra resistances, one per LED; false when it could not be solved.
    bool solve(const std::vector<double>& extra_ohm, std::vector<double>& led_mA) {
        Circuit circuit = circuit_;
        for (DiodeElement& diode : circuit.diodes) {
            if (diode.led >= 0) {
                diode.series_ohm += extra_ohm[static_cast<std::size_t>(diode.led)];
            }
        }
        solver_.solve(circuit, {}, warm_, solution_);
        warm_ = solution_.ok();
        led_mA.assign(card_.leds.size(), 0.0);
        for (std::size_t i = 0; i < circuit.diodes.size() && warm_; ++i) {
            if (circuit.diodes[i].led >= 0) {
                led_mA[static_cast<std::size_t>(circuit.diodes[i].led)] = 1e3 * solution_.diode_A[i];
            }
        }
        return warm_;
    }

private:
    const Card& card_;
    Circuit circuit_;
    PreparedSolver solver_;
    Solution solution_;
    bool warm_ = false;
};

/// The weakest of those that carry anything the right way; LEDs that stand reversed or lead nowhere are not
/// helped by a resistor.
int weakest(const std::vector<double>& led_mA, const std::vector<bool>& counts) {
    int least = -1;
    for (std::size_t i = 0; i < led_mA.size(); ++i) {
        if (counts[i] && (least < 0 || led_mA[i] < led_mA[static_cast<std::size_t>(least)])) {
            least = static_cast<int>(i);
        }
    }
    return least;
}

std::string sentence_of(const Card& card, const ResistorSuggestion& s, const Words& words) {
    const auto starved = static_cast<std::size_t>(s.starved);
    const auto first = static_cast<std::size_t>(s.leds.front());
    std::vector<std::string> names;
    for (const int led : s.leds) {
        names.push_back(card.leds[static_cast<std::size_t>(led)].id);
    }
    return words(s.leds.size() > 1 ? "life.resistor_each" : "life.resistor",
                 {{"ohm", words.ohm(s.ohm)},
                  {"lights", words.list(names)},
                  {"weak", card.leds[starved].id},
                  {"weak_before", words.mA(s.before_mA[starved])},
                  {"weak_after", words.mA(s.after_mA[starved])},
                  {"strong", card.leds[first].id},
                  {"strong_before", words.mA(s.before_mA[first])},
                  {"strong_after", words.mA(s.after_mA[first])}});
}

} // namespace

std::vector<double> e12_values(double low_ohm, double high_ohm) {
    static constexpr double kSteps[] = {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2};
    std::vector<double> values;
    for (int decade = -2; decade <= 7; ++decade) {
        for (const double step : kSteps) {
            // Divided where it can be, so that 1.2 is the number that is written 1.2.
            const double tens = std::round(step * 10.0);
            const double ohm =
                decade > 0 ? tens * std::pow(10.0, decade - 1) : tens / std::pow(10.0, 1 - decade);
            if (ohm >= low_ohm * (1.0 - 1e-9) && ohm <= high_ohm * (1.0 + 1e-9)) {
                values.push_back(ohm);
            }
        }
    }
    return values;
}

std::vector<ResistorSuggestion> suggest_resistors(const Card& card, const Parts& parts,
                                                  const Conductors& conductors, const Words& words) {
    std::vector<ResistorSuggestion> made;
    if (card.leds.size() < 2 || conductors.net_of_terminal[0] == conductors.net_of_terminal[1]) {
        return made;
    }
    Trials trials(card, parts, conductors);
    std::vector<double> extra_ohm(card.leds.size(), 0.0);
    std::vector<double> now_mA;
    if (!trials.solve(extra_ohm, now_mA)) {
        return made;
    }
    // A starved blue light still carries microamperes, one that is reversed or not reached none at all.
    constexpr double kConnected_mA = 1e-7;
    std::vector<bool> counts(card.leds.size());
    for (std::size_t i = 0; i < counts.size(); ++i) {
        counts[i] = now_mA[i] > kConnected_mA;
    }
    for (int round = 0; round < kMostRounds; ++round) {
        const int starved = weakest(now_mA, counts);
        if (starved < 0 || now_mA[static_cast<std::size_t>(starved)] >= tolerance::kLit_mA) {
            break;
        }
        const auto weak = static_cast<std::size_t>(starved);
        int thief = -1;
        for (std::size_t i = 0; i < now_mA.size(); ++i) {
            if (card.leds[i].type != card.leds[weak].type && now_mA[i] >= kStarving * now_mA[weak] &&
                (thief < 0 || now_mA[i] > now_mA[static_cast<std::size_t>(thief)])) {
                thief = static_cast<int>(i);
            }
        }
        if (thief < 0) {
            break;
        }
        ResistorSuggestion best;
        double best_mA = now_mA[weak];
        std::vector<int> takers;
        for (std::size_t i = 0; i < card.leds.size(); ++i) {
            if (card.leds[i].type == card.leds[static_cast<std::size_t>(thief)].type && counts[i]) {
                takers.push_back(static_cast<int>(i));
            }
        }
        std::vector<double> after_mA;
        for (const double ohm : e12_values(kLeast_ohm, kMost_ohm)) {
            std::vector<double> trial_ohm = extra_ohm;
            for (const int led : takers) {
                trial_ohm[static_cast<std::size_t>(led)] += ohm;
            }
            if (!trials.solve(trial_ohm, after_mA)) {
                continue;
            }
            const double least_mA = after_mA[static_cast<std::size_t>(weakest(after_mA, counts))];
            if (least_mA > best_mA) {
                best_mA = least_mA;
                best.ohm = ohm;
                best.after_mA = after_mA;
            }
        }
        if (best.ohm <= 0.0) {
            break;
        }
        best.leds = takers;
        best.starved = starved;
        best.before_mA = now_mA;
        best.sentence = sentence_of(card, best, words);
        for (const int led : takers) {
            extra_ohm[static_cast<std::size_t>(led)] += best.ohm;
        }
        now_mA = best.after_mA;
        made.push_back(std::move(best));
    }
    return made;
}

} // namespace lanternleaf
