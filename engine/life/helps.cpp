#include "life/helps.h"

#include "base/at.h"
#include "base/tolerance.h"
#include "circuit/lights.h"
#include "circuit/seen.h"
#include "life/evenness.h"
#include "life/fading.h"
#include "life/help_words.h"
#include "life/resistors.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace lanternleaf {

namespace {

/// A card in one's head: which types its LEDs are, what stands in series, which are left out, which cell.
struct Trial {
    std::vector<std::string> led_types;
    std::vector<double> extra_ohm;
    std::vector<bool> left_out;
    std::string cell;
};

struct TrialResult {
    bool solved = false;
    bool estimate = false;
    double hours = 0.0;
    double ratio = 1.0;
    std::vector<double> brightness; ///< fresh, against 5 mA
};

class Trying {
public:
    Trying(const Card& card, const Parts& parts, const Conductors& conductors, const HelpOptions& options)
        : card_(card), parts_(parts), options_(options),
          circuit_(build_circuit(card, parts, conductors, fresh_cell(card, parts))), solver_(circuit_) {
        use_ = parts.holders.at(card.holder.type).kind == HolderKind::flap ? Use::press : Use::left_on;
    }

    [[nodiscard]] Trial as_it_is() const {
        Trial trial;
        for (const Led& led : card_.leds) {
            trial.led_types.push_back(led.type);
        }
        trial.extra_ohm.assign(card_.leds.size(), 0.0);
        trial.left_out.assign(card_.leds.size(), false);
        trial.cell = card_.cell.type;
        return trial;
    }

    [[nodiscard]] Use use() const { return use_; }

    /// Marks are set by the first card that is run: the one as it is.
    TrialResult run(const Trial& trial) {
        Card changed = bare_card_with(trial);
        Circuit circuit = circuit_of(changed, trial);
        const CellType& type = parts_.cells.at(trial.cell);
        const CellModel fresh(type, card_.cell.count, 0, options_.celsius);
        const double most_V = fresh.at(0.0, 0.0).open_V + 0.1;
        const LedCondition condition{options_.celsius, Spread::typical, -1};
        const LoadLine line(circuit, changed, parts_, condition, most_V, solver_);

        TrialResult out;
        out.solved = line.ok();
        out.estimate = fresh.estimate();
        const double cell_V = line.meet(fresh.at(0.0, 0.0)).cell_V;
        std::vector<double> mcd;
        Card kept;
        for (int led = 0; led < line.led_count(); ++led) {
            const LedType& led_type = type_of(changed, parts_, led);
            const double now_mcd = intensity_mcd(led_type, line.led_mA(led, cell_V));
            out.brightness.push_back(now_mcd / intensity_mcd(led_type, kFull_mA));
            if (!trial.left_out[at(led)]) {
                kept.leds.push_back(changed.leds[at(led)]);
                mcd.push_back(now_mcd);
            }
        }
        out.ratio = worst_ratio(evenness_of(kept, mcd));
        if (marks_.empty()) {
            for (int led = 0; led < line.led_count(); ++led) {
                const LedType& led_type = type_of(changed, parts_, led);
                const double at_1_mA =
                    intensity_mcd(led_type, tolerance::kLit_mA) / intensity_mcd(led_type, kFull_mA);
                const double half = std::pow(0.5, 1.0 / kStevensExponent);
                marks_.push_back(half * std::fmax(out.brightness[at(led)], at_1_mA));
            }
        }
        out.hours = hours_of(line, changed, trial, type);
        return out;
    }

private:
    static constexpr double kFull_mA = 5.0;

    [[nodiscard]] Card bare_card_with(const Trial& trial) const {
        Card changed;
        changed.leds = card_.leds;
        for (std::size_t i = 0; i < changed.leds.size(); ++i) {
            changed.leds[i].type = trial.led_types[i];
        }
        return changed;
    }

    [[nodiscard]] Circuit circuit_of(const Card& changed, const Trial& trial) const {
        Circuit circuit = circuit_;
        for (DiodeElement& diode : circuit.diodes) {
            if (diode.led < 0) {
                continue;
            }
            const LedType& type = type_of(changed, parts_, diode.led);
            diode.saturation_A = trial.left_out[at(diode.led)] ? 0.0 : type.saturation_A;
            diode.ideality = type.ideality;
            diode.series_ohm = type.series_ohm + trial.extra_ohm[at(diode.led)];
        }
        return circuit;
    }

    double hours_of(const LoadLine& line, const Card& changed, const Trial& trial, const CellType& type) {
        double hours = kNever_h;
        for (int maker = 0; maker < cell_maker_count(); ++maker) {
            const CellModel cell(type, card_.cell.count, maker, options_.celsius);
            DischargeOptions options;
            options.use = use_;
            options.most_h = options_.most_h;
            const Discharge run = discharge(
                cell, [&line](const CellState& state) { return line.meet(state).cell_mA; }, options);
            const Fading fading(line, cell, use_, run);
            for (int led = 0; led < line.led_count(); ++led) {
                if (trial.left_out[at(led)]) {
                    continue;
                }
                const LedType& led_type = type_of(changed, parts_, led);
                const double mcd = marks_[at(led)] * intensity_mcd(led_type, kFull_mA);
                const double mA = std::fmax(condition_mA(led_type, -1, mcd), tolerance::kDim_mA);
                hours = std::fmin(hours, fading.last_above_h(led, mA));
            }
        }
        return std::fmin(hours, options_.most_h);
    }

    const Card& card_;
    const Parts& parts_;
    HelpOptions options_;
    Circuit circuit_;
    PreparedSolver solver_;
    Use use_ = Use::press;
    std::vector<double> marks_;
};

class Search {
public:
    Search(const Card& card, const Parts& parts, const Conductors& conductors, const HelpOptions& options,
           const Words& words)
        : card_(card), parts_(parts), options_(options), words_(words),
          trying_(card, parts, conductors, options), as_it_is_(trying_.as_it_is()),
          before_(trying_.run(as_it_is_)) {
        for (int i = 0; i < static_cast<int>(card.leds.size()); ++i) {
            groups_[card.leds[at(i)].type].push_back(i);
        }
    }

    std::vector<Help> run() {
        if (before_.solved) {
            try_fewer();
            try_colours();
            try_resistors();
            try_cells();
        }
        std::sort(found_.begin(), found_.end(),
                  [](const Help& a, const Help& b) { return a.score > b.score; });
        std::vector<Help> best;
        for (Help& help : found_) {
            const auto same = std::count_if(best.begin(), best.end(),
                                            [&](const Help& other) { return other.kind == help.kind; });
            if (same < 2 && static_cast<int>(best.size()) < options_.most) {
                help.sentence = help_sentence(card_, parts_, help, trying_.use(), options_.press_s, words_);
                best.push_back(std::move(help));
            }
        }
        return best;
    }

private:
    void judge(const Trial& trial, Help help) {
        const TrialResult after = trying_.run(trial);
        if (!after.solved) {
            return;
        }
        help.before_h = before_.hours;
        help.after_h = after.hours;
        help.before_ratio = before_.ratio;
        help.after_ratio = after.ratio;
        help.estimate = help.kind == HelpKind::other_cell && after.estimate;
        for (std::size_t i = 0; i < after.brightness.size(); ++i) {
            // Light beyond that of 5 mA is no loss: the screens do not show it either (circuit/seen.h).
            const double was = seen_brightness(before_.brightness[i]);
            if (was > 0.0 && !trial.left_out[i]) {
                help.fresh_seen = std::fmin(help.fresh_seen, seen_brightness(after.brightness[i]) / was);
            }
        }
        constexpr double kLeast_h =
            0.1; // so that nothing to something is a large step but not an endless one
        constexpr double kLeastRatio = 0.01;
        const auto even = [&](double ratio) { return std::clamp(ratio, kLeastRatio, kEven); };
        help.score = std::log2(std::fmax(after.hours, kLeast_h) / std::fmax(before_.hours, kLeast_h)) +
                     std::log2(even(after.ratio) / even(before_.ratio));
        constexpr double kWorthwhile = 0.07; // five per cent
        if (help.score > kWorthwhile && help.fresh_seen >= kNoDimmer) {
            found_.push_back(std::move(help));
        }
    }

    void try_fewer() {
        const std::size_t count = card_.leds.size();
        for (std::size_t i = 0; i < count && count > 1; ++i) {
            Trial trial = as_it_is_;
            trial.left_out[i] = true;
            Help help;
            help.leds = {static_cast<int>(i)};
            judge(trial, help);
        }
        constexpr std::size_t kMany = 6;
        if (count >= kMany) { // every third one
            Trial trial = as_it_is_;
            Help help;
            for (std::size_t i = 2; i < count; i += 3) {
                trial.left_out[i] = true;
                help.leds.push_back(static_cast<int>(i));
            }
            judge(trial, help);
        }
    }

    void try_colours() {
        for (const auto& [type, leds] : groups_) {
            const LedType& now = parts_.leds.at(type);
            for (const auto& [other, led] : parts_.leds) {
                if (led.package != now.package || other == type || !led.phases.empty()) {
                    continue;
                }
                Trial trial = as_it_is_;
                for (const int i : leds) {
                    trial.led_types[at(i)] = other;
                }
                Help help;
                help.kind = HelpKind::other_colour;
                help.leds = leds;
                help.type = other;
                judge(trial, help);
            }
        }
    }

    void try_resistors() {
        const auto with = [&](const std::vector<int>& leds, double ohm) {
            Trial trial = as_it_is_;
            for (const int i : leds) {
                trial.extra_ohm[at(i)] += ohm;
            }
            Help help;
            help.kind = HelpKind::resistor;
            help.leds = leds;
            help.ohm = ohm;
            judge(trial, help);
        };
        std::vector<int> all(card_.leds.size());
        std::iota(all.begin(), all.end(), 0);
        for (const double ohm : {10.0, 22.0, 47.0, 68.0, 100.0, 150.0, 220.0, 330.0, 470.0}) { // of E12
            for (const auto& [type, leds] : groups_) {
                with(leds, ohm);
            }
            if (groups_.size() > 1) {
                with(all, ohm);
            }
        }
    }

    void try_cells() {
        const HolderType& holder = parts_.holders.at(card_.holder.type);
        for (const auto& [id, cell] : parts_.cells) {
            if (id == card_.cell.type) {
                continue;
            }
            Trial trial = as_it_is_;
            trial.cell = id;
            Help help;
            help.kind = HelpKind::other_cell;
            help.type = id;
            help.other_holder = std::fabs(cell.diameter_mm - holder.cell_diameter_mm) > 0.1;
            judge(trial, help);
        }
    }

    /// A ratio above one brightness bin is even: no more is gained by it.
    static constexpr double kEven = tolerance::kPlainlyDimmer;
    /// No light may start plainly dimmer than before: the same bin, as the eye takes it (0.63 ^ 0.33).
    static constexpr double kNoDimmer = 0.859;

    const Card& card_;
    const Parts& parts_;
    HelpOptions options_;
    const Words& words_;
    Trying trying_;
    Trial as_it_is_;
    TrialResult before_;
    std::map<std::string, std::vector<int>> groups_;
    std::vector<Help> found_;
};

} // namespace

std::vector<Help> what_helps(const Card& card, const Parts& parts, const Conductors& conductors,
                             const HelpOptions& options, const Words& words) {
    if (card.leds.empty() || conductors.net_of_terminal[0] == conductors.net_of_terminal[1]) {
        return {};
    }
    return Search(card, parts, conductors, options, words).run();
}

} // namespace lanternleaf
