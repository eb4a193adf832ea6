#include "base/tolerance.h"
#include "mend/model.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// Below this share of the current expected a light is called dim; one brightness bin is 0.63 (tolerance.h),
// and hands call a light dim a little later than that.
constexpr double kDimShare = 0.55;
// How sharply looks change over: chance = 1 / (1 + (x / edge)^sharpness). An eye without anything to compare
// with is not sharper than this (engineering judgement).
constexpr double kSharpness = 6.0;

double above(double x, double edge) {
    return 1.0 - 1.0 / (1.0 + std::pow(std::max(x, 0.0) / edge, kSharpness));
}

Glow glow_of(double current_mA, double expected_mA) {
    const double shows = above(current_mA, tolerance::kDim_mA);
    // One that is dark by plan can only be told by what it shows at all.
    const double expected = expected_mA >= tolerance::kDim_mA ? expected_mA : tolerance::kLit_mA;
    double full = above(current_mA / expected, kDimShare);
    if (expected < tolerance::kLit_mA) {
        full *= 0.5; // dim by plan: some say lit, some say dim
    }
    Glow glow;
    glow.lit = static_cast<float>(shows * full);
    glow.dim = static_cast<float>(shows * (1.0 - full));
    glow.dark = static_cast<float>(1.0 - shows);
    return glow;
}

void apply_to(Circuit& circuit, const MendModel& model, const ElementEdit& edit) {
    const auto index = static_cast<std::size_t>(edit.index);
    switch (edit.what) {
    case ElementEdit::What::ohm:
        circuit.resistors[index].ohm = edit.value;
        return;
    case ElementEdit::What::turn:
        std::swap(circuit.diodes[index].anode, circuit.diodes[index].cathode);
        return;
    case ElementEdit::What::burn:
        circuit.diodes[index].saturation_A = 0.0;
        return;
    case ElementEdit::What::diode_as: {
        const DiodeElement& law = model.other_laws[static_cast<std::size_t>(edit.other)];
        circuit.diodes[index].saturation_A = law.saturation_A;
        circuit.diodes[index].ideality = law.ideality;
        circuit.diodes[index].series_ohm = law.series_ohm;
        return;
    }
    case ElementEdit::What::cell_open_V:
        for (CellElement& cell : circuit.cells) {
            cell.open_V = edit.value;
        }
        return;
    case ElementEdit::What::cell_ohm:
        for (CellElement& cell : circuit.cells) {
            cell.ohm = std::max(cell.ohm, edit.value); // the worse of two faults of the same path
        }
        return;
    }
}

void undo(Circuit& circuit, const Circuit& base, const ElementEdit& edit) {
    const auto index = static_cast<std::size_t>(edit.index);
    switch (edit.what) {
    case ElementEdit::What::ohm:
        circuit.resistors[index] = base.resistors[index];
        return;
    case ElementEdit::What::turn:
    case ElementEdit::What::burn:
    case ElementEdit::What::diode_as:
        circuit.diodes[index] = base.diodes[index];
        return;
    case ElementEdit::What::cell_open_V:
    case ElementEdit::What::cell_ohm:
        circuit.cells = base.cells;
        return;
    }
}

} // namespace

Simulator::Simulator(const MendModel& model)
    : model_(model), circuit_(model.circuit), solver_(model.circuit), solution_(model.base) {}

Showing Simulator::show(std::span<const int> faults) {
    std::vector<ElementEdit> edits;
    for (const int f : faults) {
        const Fault& fault = model_.faults[static_cast<std::size_t>(f)];
        edits.insert(edits.end(), fault.edits.begin(), fault.edits.end());
    }
    return show(faults, edits);
}

Showing Simulator::show(std::span<const int> faults, std::span<const ElementEdit> edits) {
    for (const ElementEdit& edit : edits) {
        apply_to(circuit_, model_, edit);
    }
    solution_ = model_.base;
    solver_.solve(circuit_, {}, solution_.ok(), solution_);
    for (const ElementEdit& edit : edits) {
        undo(circuit_, model_.circuit, edit);
    }
    Showing showing;
    const std::size_t lights = model_.card.leds.size();
    showing.glows.resize(lights);
    showing.flickers.resize(lights);
    showing.node_V.assign(solution_.node_V.begin(), solution_.node_V.end());
    for (const double amps : solution_.cell_A) {
        showing.cell_mA = std::max(showing.cell_mA, 1e3 * std::fabs(amps));
    }
    for (std::size_t d = 0; d < model_.circuit.diodes.size(); ++d) {
        const auto led = static_cast<std::size_t>(model_.circuit.diodes[d].led);
        const double expected_mA = d < model_.base.diode_A.size() ? 1e3 * model_.base.diode_A[d] : 0.0;
        showing.glows[led] = glow_of(solution_.ok() ? 1e3 * solution_.diode_A[d] : 0.0, expected_mA);
        const Glow& usual = model_.as_built.glows.empty() ? showing.glows[led] : model_.as_built.glows[led];
        showing.flickers[led] = likeliest(showing.glows[led]) != likeliest(usual);
    }
    for (const int f : faults) {
        const Fault& fault = model_.faults[static_cast<std::size_t>(f)];
        if (fault.kind == FaultKind::light_hidden) {
            showing.glows[static_cast<std::size_t>(fault.led)] = {0.05F, 0.15F, 0.8F};
        } else if (fault.kind == FaultKind::sides_touch_shut) {
            // Open on the table all is well; closed, as most ask about it, nothing lights.
            for (Glow& glow : showing.glows) {
                glow = {0.03F, 0.02F, 0.95F};
            }
        }
    }
    return showing;
}

LightState likeliest(const Glow& glow) {
    if (glow.dark >= glow.lit && glow.dark >= glow.dim) {
        return LightState::dark;
    }
    return glow.lit >= glow.dim ? LightState::lit : LightState::dim;
}

bool look_different(const Showing& a, const Showing& b) {
    return !std::equal(a.glows.begin(), a.glows.end(), b.glows.begin(), b.glows.end(),
                       [](const Glow& x, const Glow& y) { return likeliest(x) == likeliest(y); });
}

namespace {

// Nobody looks for a fault that no light shows: a pad of a few ohms too many may be there, but is not why
// Mend was opened. What only shows with the card closed keeps its prior.
constexpr double kShowsNothing = 0.05;

void doubt_what_shows_nothing(MendModel& model) {
    double sum = 0.0;
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        Fault& fault = model.faults[f];
        if (!fault.edits.empty() && !look_different(model.showings[f], model.as_built)) {
            fault.prior *= kShowsNothing;
        }
        sum += fault.prior;
    }
    for (Fault& fault : model.faults) {
        fault.prior /= sum > 0.0 ? sum : 1.0;
    }
}

} // namespace

std::shared_ptr<const MendModel> make_mend_model(const Card& as_built, const Parts& parts,
                                                 const MendOptions& options, const Words& words) {
    auto model = std::make_shared<MendModel>();
    model->words = words;
    model->card = as_built;
    model->parts = parts;
    model->conductors = find_conductors(as_built, parts);
    find_candidates(*model, options);
    model->base = solve_operating_point(model->circuit);
    Simulator simulator(*model);
    model->as_built = simulator.show({});
    model->showings.reserve(model->faults.size());
    for (int f = 0; f < static_cast<int>(model->faults.size()); ++f) {
        model->showings.push_back(model->faults[static_cast<std::size_t>(f)].edits.empty() &&
                                          model->faults[static_cast<std::size_t>(f)].kind >=
                                              FaultKind::as_built
                                      ? model->as_built
                                      : simulator.show({&f, 1}));
    }
    doubt_what_shows_nothing(*model);
    std::vector<bool> used(model->circuit.resistors.size(), true);
    for (std::size_t c = static_cast<std::size_t>(model->real_contacts); c < model->contact_element.size();
         ++c) {
        used[static_cast<std::size_t>(model->contact_element[c])] = false;
    }
    for (std::size_t i = 0; i < model->circuit.resistors.size();
         ++i) { // probes stand on tape, not on the cell
        const ResistorElement& r = model->circuit.resistors[i];
        for (const int terminal : model->circuit.node_of_terminal) {
            used[i] = used[i] && r.a != terminal && r.b != terminal;
        }
    }
    model->ohms = ResistanceTable(model->circuit, used);
    find_tests(*model);
    predict_tests(*model);
    return model;
}

} // namespace lanternleaf
