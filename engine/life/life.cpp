#include "life/life.h"

#include "base/at.h"
#include "base/tolerance.h"
#include "circuit/lights.h"
#include "circuit/seen.h"
#include "life/fading.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace lanternleaf {

namespace {

std::vector<LightScale> scales_of(const LoadLine& line, const Card& card, const Parts& parts,
                                  const CellState& fresh) {
    const double cell_V = line.meet(fresh).cell_V;
    const int phase = line.condition().phase;
    std::vector<LightScale> scales(card.leds.size());
    for (int led = 0; led < line.led_count(); ++led) {
        const LedType& type = type_of(card, parts, led);
        LightScale& scale = scales[at(led)];
        constexpr double kFull_mA = 5.0; // the card file's measure of brightness
        scale.full_mcd = condition_mcd(type, phase, kFull_mA);
        scale.fresh_mcd = condition_mcd(type, phase, line.led_mA(led, cell_V));
        const double reference = std::fmax(scale.fresh_mcd, condition_mcd(type, phase, tolerance::kLit_mA));
        const double half = std::pow(0.5, 1.0 / kStevensExponent);
        const double dark_mA = tolerance::kDim_mA;
        scale.mark_mA = {std::fmax(condition_mA(type, phase, tolerance::kPlainlyDimmer * reference), dark_mA),
                         std::fmax(condition_mA(type, phase, half * reference), dark_mA), dark_mA};
    }
    return scales;
}

void find_marks(const LoadLine& line, const std::vector<LightScale>& scales, LifeRun& run) {
    const Fading fading(line, run.cell, run.use, run.discharge);
    run.marks.resize(scales.size());
    for (int led = 0; led < line.led_count(); ++led) {
        for (std::size_t mark = 0; mark < kMarks; ++mark) {
            run.marks[at(led)][mark] = fading.last_above_h(led, scales[at(led)].mark_mA[mark]);
        }
    }
}

class Living {
public:
    Living(const Card& card, const Parts& parts, const Conductors& conductors, const LifeOptions& options)
        : card_(card), parts_(parts), type_(parts.cells.at(card.cell.type)),
          circuit_(build_circuit(card, parts, conductors, fresh_cell(card, parts))), solver_(circuit_) {
        life_.options = options;
    }

    Life run() {
        const LifeOptions& options = life_.options;
        life_.phases = phase_count(card_, parts_);
        life_.stored_loss = self_discharge_mAh(type_, options.stored_years, kSelfDischarge_per_year) /
                            std::fmax(type_.capacity_mAh, 1e-9);
        life_.lines.reserve(3 + at(life_.phases));
        add_line({options.celsius, Spread::typical, -1});
        if (options.with_phases) {
            for (int phase = 0; phase < life_.phases; ++phase) {
                add_line({options.celsius, Spread::typical, phase});
            }
        }
        if (options.with_band) {
            add_line({options.celsius, Spread::least, -1});
            add_line({options.celsius, Spread::most, -1});
        }
        find_reversed();
        return std::move(life_);
    }

private:
    CellModel cell(int maker) const {
        const double stored_mAh =
            self_discharge_mAh(type_, life_.options.stored_years, kSelfDischarge_per_year);
        return CellModel(type_, card_.cell.count, maker, life_.options.celsius, stored_mAh);
    }

    void add_line(const LedCondition& condition) {
        // A cell's open voltage is highest fresh and warm; a little above it for good measure.
        double most_V = 0.0;
        for (int maker = 0; maker < cell_maker_count(); ++maker) {
            most_V = std::fmax(most_V, cell(maker).at(0.0, 0.0).open_V);
        }
        life_.lines.emplace_back(circuit_, card_, parts_, condition, most_V + 0.05, solver_);
        const LoadLine& line = life_.lines.back();
        life_.solved = life_.solved && line.ok();
        const CellModel fresh(type_, card_.cell.count, 0, life_.options.celsius);
        life_.scales.push_back(scales_of(line, card_, parts_, fresh.at(0.0, 0.0)));
        if (life_.lines.size() == 1) {
            for (const LightScale& scale : life_.scales.back()) {
                life_.brightest_mcd = std::fmax(life_.brightest_mcd, scale.fresh_mcd);
            }
        }
        for (int maker = 0; maker < cell_maker_count(); ++maker) {
            for (const Use use : {Use::press, Use::left_on}) {
                add_run(maker, use);
            }
        }
    }

    void add_run(int maker, Use use) {
        LifeRun run{maker, use, static_cast<int>(life_.lines.size()) - 1, cell(maker), {}, {}};
        const LoadLine& line = life_.lines.back();
        DischargeOptions options;
        options.use = use;
        options.most_h = life_.options.most_h;
        run.discharge = discharge(
            run.cell, [&line](const CellState& state) { return line.meet(state).cell_mA; }, options);
        life_.estimate = run.cell.estimate();
        find_marks(line, life_.scales.back(), run);
        life_.runs.push_back(std::move(run));
    }

    void find_reversed() {
        const LoadLine& line = life_.lines.front();
        const double cell_V = line.meet(life_.runs.front().cell.at(0.0, 0.0)).cell_V;
        constexpr double kAgainst_V = 0.1; // far above what tape drops
        for (int led = 0; led < line.led_count(); ++led) {
            const double volts = -line.led_V(led, cell_V);
            if (volts > kAgainst_V) {
                life_.reversed.push_back({led, volts, type_of(card_, parts_, led).max_reverse_V});
            }
        }
    }

    const Card& card_;
    const Parts& parts_;
    const CellType& type_;
    Circuit circuit_;
    PreparedSolver solver_;
    Life life_;
};

bool is_dark_from_start(const LifeRun& run, std::size_t led) {
    return run.marks[led][at(static_cast<int>(Mark::dark))] <= 0.0;
}

} // namespace

double seen_ratio(double intensity_ratio) {
    return intensity_ratio > 0.0 ? std::pow(intensity_ratio, kStevensExponent) : 0.0;
}

const LifeRun& Life::typical(Use use, int maker) const {
    const auto found = std::find_if(runs.begin(), runs.end(), [&](const LifeRun& run) {
        return run.line == 0 && run.use == use && run.maker == maker;
    });
    assert(found != runs.end());
    return *found;
}

Life live(const Card& card, const Parts& parts, const Conductors& conductors, const LifeOptions& options) {
    if (conductors.net_of_terminal[0] == conductors.net_of_terminal[1]) {
        Life life;
        life.options = options;
        life.shorted = true;
        return life;
    }
    return Living(card, parts, conductors, options).run();
}

void moment_at(const Life& life, const LifeRun& run, const Card& card, const Parts& parts, double hours,
               LifeMoment& out) {
    const LoadLine& line = life.lines[at(run.line)];
    out.hours = std::fmax(hours, 0.0);
    out.drawn_mAh = run.discharge.drawn_mAh(out.hours);
    out.depth = run.cell.depth(out.drawn_mAh);
    const LoadLine::Point point = line.meet(run.cell.at(out.drawn_mAh, settled_after(run.use, out.hours)));
    out.cell_V = point.cell_V;
    out.cell_mA = point.cell_mA;
    out.lights.resize(card.leds.size());
    for (int led = 0; led < line.led_count(); ++led) {
        LightMoment& light = out.lights[at(led)];
        const LightScale& scale = life.scales[at(run.line)][at(led)];
        light.mA = line.led_mA(led, point.cell_V);
        const double mcd = condition_mcd(type_of(card, parts, led), line.condition().phase, light.mA);
        light.brightness = scale.full_mcd > 0.0 ? mcd / scale.full_mcd : 0.0;
        light.mcd = state_of(light.mA) == LightState::dark ? 0.0 : mcd;
        light.seen = life.brightest_mcd > 0.0 ? seen_ratio(light.mcd / life.brightest_mcd) : 0.0;
    }
}

std::vector<int> dark_from_start(const Life& life) {
    std::vector<int> dark;
    if (life.runs.empty()) {
        return dark;
    }
    for (std::size_t led = 0; led < life.runs.front().marks.size(); ++led) {
        if (is_dark_from_start(life.runs.front(), led)) {
            dark.push_back(static_cast<int>(led));
        }
    }
    return dark;
}

HourRange range_of(const Life& life, const RunChoice& choice, Mark mark, int led) {
    HourRange range{kNever_h, 0.0};
    bool any = false;
    for (const LifeRun& run : life.runs) {
        const LedCondition& condition = life.lines[at(run.line)].condition();
        if (run.use != choice.use || condition.phase != choice.phase.value_or(-1) ||
            (!choice.whole_band && condition.spread != Spread::typical)) {
            continue;
        }
        double hours = kNever_h;
        bool lit = false;
        for (std::size_t i = 0; i < run.marks.size(); ++i) {
            if (led >= 0 ? static_cast<int>(i) == led : !is_dark_from_start(life.runs.front(), i)) {
                hours = std::fmin(hours, run.marks[i][at(static_cast<int>(mark))]);
                lit = true;
            }
        }
        hours = lit ? hours : 0.0;
        range.low_h = std::fmin(range.low_h, hours);
        range.high_h = std::fmax(range.high_h, hours);
        any = true;
    }
    return any ? range : HourRange{};
}

double presses_of(const LifeOptions& options, double hours) {
    return options.press_s > 0.0 ? hours * 3600.0 / options.press_s : 0.0;
}

} // namespace lanternleaf
