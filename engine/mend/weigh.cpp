#include "mend/session.h"

#include <algorithm>
#include <cmath>

namespace lanternleaf {

namespace {

// Pairs are simulated when the best single fault leaves this much unexplained: an answer that does not fit
// counts about 3, and one in ten is wrong anyway.
constexpr double kTooMuch = 5.0;
constexpr double kUsualPerAnswer = 0.22;
// Of cards with a fault, one in twenty has two (engineering judgement).
constexpr double kTwoFaults = 0.05;
constexpr std::size_t kMostFirst = 30; ///< faults that a pair is looked for with
constexpr std::size_t kMostPairs = 400;
constexpr double kLooks = 4.0;
// A meter is read right this often. A weak contact has any ohms: a factor of five either way is nothing odd,
// and what is further off still counts a third. Volts sag with the cell's age. (Engineering judgement.)
constexpr double kReads = 0.97;
constexpr double kFarOff = 0.35;
constexpr double kOhmSpread = 1.6; ///< of a natural logarithm
constexpr double kLeads_ohm = 0.5;
constexpr double kVoltSpread = 0.2;

double noisy(double fits, double choices) {
    return (1.0 - kWrongAnswers) * fits + kWrongAnswers * (1.0 - fits) / (choices - 1.0);
}

bool is_mending(TestKind kind) {
    switch (kind) {
    case TestKind::press_pads:
    case TestKind::press_along:
    case TestKind::press_all:
    case TestKind::press_holder:
    case TestKind::foil_along:
    case TestKind::foil_holder:
    case TestKind::feed_holder:
    case TestKind::swap_cell:
    case TestKind::lift_led:
    case TestKind::lift_bridge:
    case TestKind::try_open:
    case TestKind::slip_paper:
    case TestKind::see_hidden:
        return true;
    default:
        return false;
    }
}

class Weighing {
public:
    explicit Weighing(const MendSession& session) : session_(session), model_(*session.model) {}

    // The logarithm of how well hypothesis h explains the evidence.
    [[nodiscard]] double explains(std::size_t h) const {
        const bool other = h < model_.faults.size() && model_.faults[h].kind == FaultKind::other;
        const Showing& showing = showing_of(session_, h);
        double sum = other ? look_count() * std::log(noisy(1.0 / kLooks, kLooks)) : of_looks(showing, h);
        if (session_.evidence.pressing_changes) {
            const double yes = other ? 0.5 : press_chance(h);
            sum += std::log(noisy(*session_.evidence.pressing_changes ? yes : 1.0 - yes, 2.0));
        }
        for (const Evidence::Answer& answer : session_.evidence.answers) {
            const double choices = answer.choices;
            if (other) {
                sum -= std::log(choices);
                continue;
            }
            const Prediction predicted = prediction_of(session_, h, answer.test);
            const double sure = predicted.sure_255 / 255.0;
            const double fits = (answer.outcome == predicted.outcome ? sure : 0.0) +
                                (answer.outcome == 0 && predicted.outcome != 0 ? 1.0 - sure : 0.0);
            sum += std::log(noisy(fits, choices));
        }
        for (const Evidence::Reading& reading : session_.evidence.readings) {
            sum += std::log(other ? 1.0 / 3.0 : noisy(reading_fit(reading, h, showing), 3.0));
        }
        return sum;
    }

    // What a hypothesis that fits in everything would get.
    [[nodiscard]] double at_best() const {
        const double one = std::log(noisy(1.0, kLooks));
        return one * static_cast<double>(session_.evidence.count());
    }

private:
    [[nodiscard]] double look_count() const {
        const std::vector<Look>& looks = session_.evidence.looks;
        return static_cast<double>(looks.size()) -
               static_cast<double>(std::count(looks.begin(), looks.end(), Look::unseen));
    }

    // A loose contact makes all the lights behind it flicker, or none: one light alone that seems to flicker
    // says little.
    [[nodiscard]] double of_looks(const Showing& showing, std::size_t h) const {
        double steady = 0.0;
        double restless = 0.0;
        for (std::size_t i = 0; i < session_.evidence.looks.size(); ++i) {
            const Look look = session_.evidence.looks[i];
            if (look == Look::unseen) {
                continue;
            }
            const Glow& glow = showing.glows[i];
            const float as_it_glows = look == Look::lit    ? glow.lit
                                      : look == Look::dim  ? glow.dim
                                      : look == Look::dark ? glow.dark
                                                           : 0.0F;
            const double fits = static_cast<double>(as_it_glows);
            steady += std::log(noisy(fits, kLooks));
            restless += std::log(noisy(!showing.flickers[i]     ? fits
                                       : look == Look::flickers ? 1.0
                                                                : 0.0,
                                       kLooks));
        }
        const double flickers = flicker_chance(h);
        return steady + std::log(1.0 - flickers + flickers * std::exp(std::min(restless - steady, 500.0)));
    }

    double flicker_chance(std::size_t h) const {
        if (h < model_.faults.size()) {
            return traits_of(model_.faults[h].kind).flickers;
        }
        const FaultPair& pair = (*session_.pairs)[h - model_.faults.size()];
        return std::max(flicker_chance(static_cast<std::size_t>(pair.a)),
                        flicker_chance(static_cast<std::size_t>(pair.b)));
    }

    double press_chance(std::size_t h) const {
        if (h < model_.faults.size()) {
            const bool shows = look_different(model_.showings[h], model_.as_built);
            return shows ? kFindsSpot * traits_of(model_.faults[h].kind).press : 0.0;
        }
        const FaultPair& pair = (*session_.pairs)[h - model_.faults.size()];
        const double a = pair.mending_a_shows ? press_chance(static_cast<std::size_t>(pair.a)) : 0.0;
        const double b = pair.mending_b_shows ? press_chance(static_cast<std::size_t>(pair.b)) : 0.0;
        return std::max(a, b);
    }

    void changed_ohms(std::size_t h, std::vector<ChangedOhm>& out) const {
        if (h >= model_.faults.size()) {
            const FaultPair& pair = (*session_.pairs)[h - model_.faults.size()];
            changed_ohms(static_cast<std::size_t>(pair.a), out);
            changed_ohms(static_cast<std::size_t>(pair.b), out);
            return;
        }
        for (const ElementEdit& edit : model_.faults[h].edits) {
            if (edit.what == ElementEdit::What::ohm) {
                out.push_back({edit.index, edit.value});
            }
        }
    }

    // How well a figure fits: its class must be the same, and within the class a figure far off counts less.
    double reading_fit(const Evidence::Reading& reading, std::size_t h, const Showing& showing) const {
        if (reading.unit == MeterUnit::volt && reading.from_node < 0) {
            return cell_fit(reading.open ? 0.0 : reading.value, h);
        }
        if (reading.unit == MeterUnit::volt) {
            const auto across = [&](const Showing& of) {
                return static_cast<double>(of.node_V[static_cast<std::size_t>(reading.from_node)] -
                                           of.node_V[static_cast<std::size_t>(reading.to_node)]);
            };
            const double read = reading.open ? 0.0 : reading.value;
            const double expected = across(model_.as_built);
            const double volts = across(showing);
            return class_of_volts(read, expected) == class_of_volts(volts, expected)
                       ? graded((read - volts) / kVoltSpread)
                       : 0.0;
        }
        std::vector<ChangedOhm> changed;
        changed_ohms(h, changed);
        const double expected = model_.ohms.between(reading.from_node, reading.to_node);
        const double ohm = model_.ohms.between(reading.from_node, reading.to_node, changed);
        const double read = reading.open ? 2.0 * kNoPath_ohm : reading.value;
        const bool path = read < kNoPath_ohm && ohm < kNoPath_ohm;
        const double off = path ? std::log((read + kLeads_ohm) / (ohm + kLeads_ohm)) / kOhmSpread : 0.0;
        if (expected > kNoPath_ohm) { // no path by plan: a path is a path, whatever its ohms
            return (read < kNoPath_ohm) == (ohm < kNoPath_ohm) ? graded(off) : 0.0;
        }
        const OhmClass shows = class_of_ohm(read, expected);
        if (shows != class_of_ohm(ohm, expected)) {
            return 0.0;
        }
        return shows == OhmClass::high ? graded(off) : kReads;
    }

    static double graded(double spreads_off) {
        return kReads * std::max(kFarOff, std::exp(-0.5 * spreads_off * spreads_off));
    }

    // The bare cell, whatever the card does.
    double cell_fit(double read_V, std::size_t h) const {
        if (h >= model_.faults.size()) {
            const FaultPair& pair = (*session_.pairs)[h - model_.faults.size()];
            const int about = of_cell(pair.a) ? pair.a : pair.b;
            return cell_fit(read_V, static_cast<std::size_t>(about));
        }
        const Fault& fault = model_.faults[h];
        double alone_V = model_.circuit.cells.empty() ? 0.0 : model_.circuit.cells.front().open_V;
        double spread = kVoltSpread;
        if (fault.kind == FaultKind::cell_missing) {
            alone_V = 0.0;
        } else if (fault.kind == FaultKind::cell_flat || fault.kind == FaultKind::cell_wrong) {
            for (const ElementEdit& edit : fault.edits) {
                alone_V = edit.what == ElementEdit::What::cell_open_V ? edit.value : alone_V;
            }
            // A tired cell reads well alone and sags under load.
            spread *= fault.kind == FaultKind::cell_flat ? 1.5 : 1.0;
        }
        const double off = (std::fabs(read_V) - alone_V) / spread;
        return kReads * std::exp(-0.5 * off * off);
    }

    [[nodiscard]] bool of_cell(int fault) const {
        const FaultKind kind = model_.faults[static_cast<std::size_t>(fault)].kind;
        return kind == FaultKind::cell_missing || kind == FaultKind::cell_flat ||
               kind == FaultKind::cell_wrong;
    }

    const MendSession& session_;
    const MendModel& model_;
};

} // namespace

const Showing& showing_of(const MendSession& session, std::size_t h) {
    const std::size_t singles = session.model->faults.size();
    return h < singles ? session.model->showings[h] : (*session.pairs)[h - singles].showing;
}

Prediction prediction_of(const MendSession& session, std::size_t h, int test) {
    const MendModel& model = *session.model;
    const std::size_t singles = model.faults.size();
    const Prediction* const row = model.predictions.data() + static_cast<std::size_t>(test) * singles;
    if (h < singles) {
        return row[h];
    }
    const FaultPair& pair = (*session.pairs)[h - singles];
    const MendTest& what = model.tests[static_cast<std::size_t>(test)];
    Prediction a = row[pair.a];
    Prediction b = row[pair.b];
    switch (what.kind) {
    case TestKind::see_light: {
        const LightState state = likeliest(pair.showing.glows[static_cast<std::size_t>(what.led)]);
        return {static_cast<std::uint8_t>(state == LightState::dark  ? 0
                                          : state == LightState::dim ? 1
                                                                     : 2),
                230};
    }
    case TestKind::probe_holder:
    case TestKind::probe_led:
    case TestKind::meter_volts:
    case TestKind::meter_holder: {
        const auto across = [&](const Showing& of) {
            return static_cast<double>(of.node_V[static_cast<std::size_t>(what.from_node)] -
                                       of.node_V[static_cast<std::size_t>(what.to_node)]);
        };
        return {static_cast<std::uint8_t>(class_of_volts(across(pair.showing), across(model.as_built))), 247};
    }
    case TestKind::meter_apart:
    case TestKind::meter_reach:
    case TestKind::meter_joint:
        return a.outcome >= b.outcome ? a : b; // the worse of the two
    default:
        break;
    }
    if (is_mending(what.kind)) { // putting one right shows only where the other does not hide it
        a = pair.mending_a_shows ? a : Prediction{};
        b = pair.mending_b_shows ? b : Prediction{};
    }
    return a.outcome != 0 ? a : b;
}

std::vector<FaultPair> find_pairs(const MendSession& session, std::span<const double> merit) {
    const MendModel& model = *session.model;
    std::vector<int> best;
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        if (model.faults[f].kind < FaultKind::as_built && !model.faults[f].edits.empty()) {
            best.push_back(static_cast<int>(f));
        }
    }
    const std::vector<int> all = best;
    std::sort(best.begin(), best.end(), [&](int x, int y) {
        return merit[static_cast<std::size_t>(x)] > merit[static_cast<std::size_t>(y)];
    });
    best.resize(std::min(best.size(), kMostFirst));

    // A rough guess first: each light as the fault that dims it more would have it. Only the likeliest pairs
    // are then solved.
    struct Guess {
        int a = 0;
        int b = 0;
        double merit = 0.0;
    };

    std::vector<Guess> guesses;
    for (std::size_t i = 0; i < best.size(); ++i) {
        const Fault& first = model.faults[static_cast<std::size_t>(best[i])];
        for (const int j : all) {
            const Fault& second = model.faults[static_cast<std::size_t>(j)];
            const bool done = std::find(best.begin(), best.begin() + static_cast<std::ptrdiff_t>(i) + 1, j) !=
                              best.begin() + static_cast<std::ptrdiff_t>(i) + 1;
            if (done || (first.place == second.place && first.place >= 0)) {
                continue;
            }
            Guess guess{best[i], j, std::log(first.prior * second.prior)};
            for (std::size_t led = 0; led < session.evidence.looks.size(); ++led) {
                const Glow& x = model.showings[static_cast<std::size_t>(best[i])].glows[led];
                const Glow& y = model.showings[static_cast<std::size_t>(j)].glows[led];
                const Glow& worse = x.dark + 0.5F * x.dim >= y.dark + 0.5F * y.dim ? x : y;
                const Look look = session.evidence.looks[led];
                const float fits = look == Look::lit    ? worse.lit
                                   : look == Look::dim  ? worse.dim
                                   : look == Look::dark ? worse.dark
                                                        : 0.3F;
                guess.merit += std::log(noisy(static_cast<double>(fits), kLooks));
            }
            guesses.push_back(guess);
        }
    }
    std::sort(guesses.begin(), guesses.end(),
              [](const Guess& x, const Guess& y) { return x.merit > y.merit; });
    guesses.resize(std::min(guesses.size(), kMostPairs));
    Simulator simulator(model);
    std::vector<FaultPair> pairs;
    for (const Guess& guess : guesses) {
        FaultPair pair;
        pair.a = guess.a;
        pair.b = guess.b;
        pair.prior = 2.0 * kTwoFaults * model.faults[static_cast<std::size_t>(pair.a)].prior *
                     model.faults[static_cast<std::size_t>(pair.b)].prior;
        const int both[2] = {pair.a, pair.b};
        pair.showing = simulator.show(both);
        pair.mending_a_shows = look_different(pair.showing, model.showings[static_cast<std::size_t>(pair.b)]);
        pair.mending_b_shows = look_different(pair.showing, model.showings[static_cast<std::size_t>(pair.a)]);
        pairs.push_back(std::move(pair));
    }
    return pairs;
}

void weigh(MendSession& session) {
    const MendModel& model = *session.model;
    const std::size_t singles = model.faults.size();
    const Weighing weighing(session);
    std::vector<double> logs(singles);
    double best = -1e300;
    for (std::size_t f = 0; f < singles; ++f) {
        const double explained = weighing.explains(f);
        logs[f] = std::log(std::max(model.faults[f].prior, 1e-300)) + explained;
        if (model.faults[f].kind != FaultKind::other) {
            best = std::max(best, explained);
        }
    }
    session.unexplained = weighing.at_best() - best;
    const double too_much = kTooMuch + kUsualPerAnswer * static_cast<double>(session.evidence.count());
    if (session.unexplained > too_much && model.card.leds.size() > 1) {
        if (!session.pairs) {
            session.pairs = std::make_shared<const std::vector<FaultPair>>(find_pairs(session, logs));
        }
    } else {
        session.pairs.reset();
    }
    if (session.pairs) {
        for (std::size_t p = 0; p < session.pairs->size(); ++p) {
            logs.push_back(std::log(std::max((*session.pairs)[p].prior, 1e-300)) +
                           weighing.explains(singles + p));
        }
    }
    const double top = *std::max_element(logs.begin(), logs.end());
    double sum = 0.0;
    for (double& one : logs) {
        one = std::exp(one - top);
        sum += one;
    }
    for (double& one : logs) {
        one /= sum;
    }
    session.chance = std::move(logs);
}

} // namespace lanternleaf
