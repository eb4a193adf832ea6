#include "mend/session.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace lanternleaf {

namespace {

constexpr std::size_t kMostAsked = 3;
// Below this chance a place is not worth a finger's visit, and a hypothesis not worth weighing.
constexpr double kLivePlace = 0.004;
constexpr double kLiveFault = 1e-4;
// To read the sentence and answer, beside the doing (engineering judgement).
constexpr double kOverhead_s = 3.0;
// A test is chosen by the square of its bits over its seconds, with a pause between two tests. Against plain
// bits per second that took a fifth fewer tests and 10 % fewer seconds at the same share named right
// (measured, mend_bench): with answers that may be wrong, one that tells much is worth more than two that
// tell half.
constexpr double kBetween_s = 3.0;
constexpr double kLeastBits = 0.01;

double entropy_part(double p) {
    return p > 0.0 ? -p * std::log2(p) : 0.0;
}

// What the answer of one fault is worth in uncertainty, by how sure it is: 256 values for a number of
// choices.
struct NoiseTable {
    double base = 0.0;          ///< chance of an outcome nobody predicts
    double slope = 0.0;         ///< and by how much a predicted one exceeds it, per chance
    std::vector<double> spread; ///< entropy of the answer of a fault that predicts an outcome other than 0
    double plain = 0.0;         ///< and of one that predicts outcome 0 for sure

    explicit NoiseTable(std::size_t choices) : spread(256) {
        const double others = static_cast<double>(choices) - 1.0;
        base = kWrongAnswers / others;
        slope = 1.0 - kWrongAnswers - base;
        plain = entropy_part(base + slope) + others * entropy_part(base);
        for (std::size_t s = 0; s < spread.size(); ++s) {
            const double sure = static_cast<double>(s) / 255.0;
            spread[s] = entropy_part(base + slope * sure) + entropy_part(base + slope * (1.0 - sure)) +
                        (others - 1.0) * entropy_part(base);
        }
    }
};

bool has(const MendTools& tools, TestNeeds needs) {
    switch (needs) {
    case TestNeeds::hands:
        return true;
    case TestNeeds::foil:
        return tools.foil;
    case TestNeeds::known_cell:
        return tools.known_cell;
    case TestNeeds::known_led:
        return tools.known_led;
    case TestNeeds::meter:
        return tools.meter;
    }
    return true;
}

class Choosing {
public:
    explicit Choosing(const MendSession& session) : session_(session), model_(*session.model) {
        for (std::size_t h = 0; h < session.chance.size(); ++h) {
            const double chance = session.chance[h];
            if (chance < kLiveFault) {
                continue;
            }
            if (h < model_.faults.size() && model_.faults[h].kind == FaultKind::other) {
                other_ = chance;
            } else {
                live_.push_back({h, chance});
            }
            sum_ += chance;
        }
    }

    // Expected bits from a test with `choices` outcomes on offer.
    double bits(int test, std::size_t choices) {
        const NoiseTable& noise = tables_.try_emplace(choices, choices).first->second;
        marginal_.assign(model_.tests[static_cast<std::size_t>(test)].outcomes.size(), 0.0);
        double conditional = other_ * std::log2(static_cast<double>(choices));
        for (const auto& [h, chance] : live_) {
            const Prediction predicted = prediction_of(session_, h, test);
            if (predicted.outcome == 0) {
                marginal_[0] += chance;
                conditional += chance * noise.plain;
            } else {
                const double sure = predicted.sure_255 / 255.0;
                marginal_[predicted.outcome] += chance * sure;
                marginal_[0] += chance * (1.0 - sure);
                conditional += chance * noise.spread[predicted.sure_255];
            }
        }
        const double flat = other_ / static_cast<double>(choices);
        double whole = 0.0;
        double covered = 0.0;
        for (const double part : marginal_) {
            if (part > 0.0) {
                whole += entropy_part((noise.base * (sum_ - other_) + noise.slope * part + flat) / sum_);
                covered += 1.0;
            }
        }
        whole += std::max(0.0, static_cast<double>(choices) - covered) *
                 entropy_part((noise.base * (sum_ - other_) + flat) / sum_);
        return whole - conditional / sum_;
    }

private:
    const MendSession& session_;
    const MendModel& model_;
    std::vector<std::pair<std::size_t, double>> live_;
    double other_ = 0.0;
    double sum_ = 0.0;
    std::map<std::size_t, NoiseTable> tables_;
    std::vector<double> marginal_;
};

std::vector<double> chance_of_places(const MendSession& session) {
    const MendModel& model = *session.model;
    std::vector<double> chance(model.places.size(), 0.0);
    const auto add = [&](int fault, double p) {
        const int place = model.faults[static_cast<std::size_t>(fault)].place;
        if (place >= 0) {
            chance[static_cast<std::size_t>(place)] += p;
        }
        if (model.faults[static_cast<std::size_t>(fault)].kind == FaultKind::glue_plain) {
            for (const Fault& joint : model.faults) { // it shows at the laps
                if (joint.kind == FaultKind::joint_loose) {
                    chance[static_cast<std::size_t>(joint.place)] += p;
                }
            }
        }
    };
    for (std::size_t h = 0; h < session.chance.size(); ++h) {
        if (session.chance[h] < kLiveFault) {
            continue;
        }
        if (h < model.faults.size()) {
            add(static_cast<int>(h), session.chance[h]);
        } else {
            const FaultPair& pair = (*session.pairs)[h - model.faults.size()];
            add(pair.a, session.chance[h]);
            add(pair.b, session.chance[h]);
        }
    }
    return chance;
}

// The outcomes to offer: those of a test of places whose place still matters.
void find_offered(const MendTest& test, const std::vector<double>& places, std::vector<int>& offered) {
    offered.clear();
    if (test.places.size() < 2) {
        offered = test.offered;
        return;
    }
    offered.push_back(0);
    for (std::size_t k = 0; k < test.places.size(); ++k) {
        if (places[static_cast<std::size_t>(test.places[k])] > kLivePlace) {
            offered.push_back(static_cast<int>(k) + 1);
        }
    }
}

double effort(const MendTest& test, std::size_t offered) {
    return test.effort_s + test.per_place_s * static_cast<double>(offered - 1) + kOverhead_s;
}

} // namespace

const MendTest* find_test(const MendModel& model, const std::string& id) {
    const auto found = std::find_if(model.tests.begin(), model.tests.end(),
                                    [&](const MendTest& test) { return test.id == id; });
    return found == model.tests.end() ? nullptr : &*found;
}

MendTest live_test(const MendSession& session, int test) {
    MendTest live = session.model->tests[static_cast<std::size_t>(test)];
    std::vector<int> offered;
    find_offered(live, chance_of_places(session), offered);
    live.offered = std::move(offered);
    return live;
}

double effort_of(const MendTest& live) {
    return effort(live, live.offered.size());
}

std::optional<MendTest> next_test(const MendSession& session, const MendTools& tools) {
    const MendModel& model = *session.model;
    std::vector<std::size_t> asked(model.tests.size(), 0);
    for (const Evidence::Answer& answer : session.evidence.answers) {
        ++asked[static_cast<std::size_t>(answer.test)];
    }
    for (const int skipped : session.evidence.skipped) {
        asked[static_cast<std::size_t>(skipped)] = kMostAsked;
    }
    for (std::size_t t = 0; session.evidence.pressing_changes && t < model.tests.size(); ++t) {
        asked[t] = model.tests[t].kind == TestKind::press_all ? kMostAsked : asked[t]; // it has been told
    }
    for (std::size_t t = 0; t < model.tests.size(); ++t) { // a figure is not asked for twice
        const MendTest& test = model.tests[t];
        for (const Evidence::Reading& taken : session.evidence.readings) {
            const bool volts = taken.unit == MeterUnit::volt;
            if ((volts ? reads_volts(test.kind) : reads_ohms(test.kind)) &&
                taken.from_node == test.from_node && taken.to_node == test.to_node) {
                asked[t] = kMostAsked;
            }
        }
    }
    const std::vector<double> places = chance_of_places(session);
    Choosing choosing(session);
    std::vector<int> offered;
    double best = 0.0;
    int chosen = -1;
    for (std::size_t t = 0; t < model.tests.size(); ++t) {
        const MendTest& test = model.tests[t];
        if (asked[t] >= kMostAsked || !has(tools, test.needs)) {
            continue;
        }
        find_offered(test, places, offered);
        if (offered.size() < 2) {
            continue;
        }
        const double bits = choosing.bits(static_cast<int>(t), offered.size());
        const double merit = bits * bits / (effort(test, offered.size()) + kBetween_s);
        if (bits > kLeastBits && merit > best) {
            best = merit;
            chosen = static_cast<int>(t);
        }
    }
    if (chosen < 0) {
        return std::nullopt;
    }
    return live_test(session, chosen);
}

} // namespace lanternleaf
