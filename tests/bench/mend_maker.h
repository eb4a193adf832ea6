// A maker at a table whose card has one fault or two: what the lights show and what is answered, one time in
// ten something else. Shared by the benchmarks of the search.
#pragma once

#include "mend/session.h"
#include "support/lamp_rows.h"

#include <memory>
#include <span>

namespace lanternleaf::bench {

inline double uniform(std::mt19937& random) {
    return static_cast<double>(random()) / 4294967296.0;
}

/// A fault drawn from the priors. "None of these" has no answers to give, and "nothing wrong" no cause to
/// name: they are drawn again.
inline int draw_fault(std::mt19937& random, const std::vector<Fault>& faults) {
    for (;;) {
        double left = uniform(random);
        for (std::size_t f = 0; f < faults.size(); ++f) {
            left -= faults[f].prior;
            if (left < 0.0) {
                if (faults[f].kind == FaultKind::other || faults[f].kind == FaultKind::as_built) {
                    break;
                }
                return static_cast<int>(f);
            }
        }
    }
}

class Maker {
public:
    /// `truth` are one or two indices of faults of the session's model.
    Maker(const MendSession& session, std::vector<int> truth, std::mt19937& random)
        : truth_(std::move(truth)), random_(random), knows_(session) {
        std::vector<ElementEdit> edits;
        for (const int index : truth_) {
            const Fault& fault = session.model->faults[static_cast<std::size_t>(index)];
            // Another severity than the search supposes.
            const bool loose = fault.kind == FaultKind::pad_loose || fault.kind == FaultKind::joint_loose ||
                               fault.kind == FaultKind::contact_loose;
            const double factor = loose && !fault.open ? std::exp2(-1.0 + 4.0 * uniform(random)) : 1.0;
            for (ElementEdit edit : fault.edits) {
                edit.value *= factor;
                edits.push_back(edit);
            }
            flicker_ = std::max(flicker_, traits_of(fault.kind).flickers);
        }
        Simulator simulator(*session.model);
        shows_ = simulator.show(truth_, edits);
        flickers_now_ = uniform(random) < flicker_;
        if (truth_.size() == 2) {
            FaultPair pair;
            pair.a = truth_[0];
            pair.b = truth_[1];
            pair.showing = simulator.show(truth_);
            const auto& alone = session.model->showings;
            pair.mending_a_shows = look_different(pair.showing, alone[static_cast<std::size_t>(pair.b)]);
            pair.mending_b_shows = look_different(pair.showing, alone[static_cast<std::size_t>(pair.a)]);
            knows_.pairs = std::make_shared<const std::vector<FaultPair>>(1, std::move(pair));
        }
    }

    [[nodiscard]] const Showing& shows() const { return shows_; }

    Look look_at(std::size_t led) {
        Look look = honest_look(led);
        if (uniform(random_) < kWrongAnswers) {
            const Look before = look;
            while (look == before) {
                look = static_cast<Look>(1 + random_() % 4);
            }
        }
        return look;
    }

    int answer(const MendTest& live, int test) {
        const std::size_t h =
            truth_.size() == 2 ? knows_.model->faults.size() : static_cast<std::size_t>(truth_.front());
        const Prediction predicted = prediction_of(knows_, h, test);
        const int told = uniform(random_) * 255.0 < predicted.sure_255 ? predicted.outcome : 0;
        if (uniform(random_) < kWrongAnswers) {
            for (;;) {
                const int other = live.offered[random_() % live.offered.size()];
                if (other != told) {
                    return other;
                }
            }
        }
        return told;
    }

private:
    Look honest_look(std::size_t led) {
        const Glow& glow = shows_.glows[led];
        double left = uniform(random_);
        if (shows_.flickers[led] && flickers_now_) {
            return Look::flickers;
        }
        left -= static_cast<double>(glow.lit);
        if (left < 0.0) {
            return Look::lit;
        }
        return left < static_cast<double>(glow.dim) ? Look::dim : Look::dark;
    }

    std::vector<int> truth_;
    std::mt19937& random_;
    MendSession knows_; ///< with the truth as its only pair, to ask what it would answer
    Showing shows_;
    double flicker_ = 0.0;
    bool flickers_now_ = false;
};

} // namespace lanternleaf::bench
