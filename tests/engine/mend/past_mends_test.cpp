// Past mends: a maker's own records move the ranking slowly, and take no kind away.
#include "mend/past_mends.h"
#include "mending.h"
#include "support/lamp_rows.h"

using namespace lanternleaf;
using namespace lanternleaf::mending;

namespace {

double share(const MendSession& session, FaultKind kind) {
    double sum = 0.0;
    for (std::size_t f = 0; f < session.model->faults.size(); ++f) {
        sum += session.model->faults[f].kind == kind ? session.chance[f] : 0.0;
    }
    return sum;
}

} // namespace

TEST_CASE("No records, no change", "[mend]") {
    const FaultWeights usual = usual_weights();
    const FaultWeights none = weights_from({});
    for (std::size_t k = 0; k < none.size(); ++k) {
        CHECK(none[k] == Approx(usual[k]));
    }
}

TEST_CASE("Names are counted, two at once as two, unknown ones passed over", "[mend]") {
    PastMends past;
    add_mend(past, "led-turned");
    add_mend(past, "led-turned joint-loose");
    add_mend(past, "gremlins");
    add_mend(past, "");
    add_mend(past, "other");
    add_mend(past, "as-built");
    CHECK(past.found[static_cast<std::size_t>(FaultKind::led_turned)] == 2);
    CHECK(past.found[static_cast<std::size_t>(FaultKind::joint_loose)] == 1);
    int all = 0;
    for (const int n : past.found) {
        all += n;
    }
    CHECK(all == 3);
}

TEST_CASE("Weights are Dirichlet's: shares still add up to one, and none is zero", "[mend]") {
    PastMends past;
    past.found[static_cast<std::size_t>(FaultKind::glue_plain)] = 12;
    past.found[static_cast<std::size_t>(FaultKind::led_turned)] = 3;
    const FaultWeights weights = weights_from(past);
    double before = 0.0;
    double after = 0.0;
    for (int k = 0; k < kFaultKinds; ++k) {
        const auto kind = static_cast<FaultKind>(k);
        CHECK(weights[static_cast<std::size_t>(k)] > 0.0);
        if (kind != FaultKind::as_built && kind != FaultKind::other) {
            before += traits_of(kind).prior_percent;
            after += traits_of(kind).prior_percent * weights[static_cast<std::size_t>(k)];
        }
    }
    CHECK(after == Approx(before));
    // (60 p + 12) / 75 of a kind whose share p is 2.5 of the sum.
    const double p = traits_of(FaultKind::glue_plain).prior_percent / before;
    CHECK(weights[static_cast<std::size_t>(FaultKind::glue_plain)] ==
          Approx((kPriorStrength * p + 12.0) / (kPriorStrength + 15.0) / p));
    CHECK(weights[static_cast<std::size_t>(FaultKind::as_built)] == 1.0);

    past.found.fill(0); // ten thousand of one kind still leave the others a chance
    past.found[static_cast<std::size_t>(FaultKind::led_turned)] = 10'000;
    for (const double weight : weights_from(past)) {
        CHECK(weight > 1e-3);
    }
}

TEST_CASE("A few mends move the ranking gently, many turn it", "[mend]") {
    std::mt19937 random(5);
    const Card card = make::random_rows(6, random);
    const auto with = [&](int loose_pads) {
        PastMends past;
        past.found[static_cast<std::size_t>(FaultKind::pad_loose)] = loose_pads;
        MendOptions options;
        options.weights = weights_from(past);
        MendSession session = start_mend(card, make::test_parts(), options);
        Showing seen = session.model->as_built;
        seen.glows[2] = {0.0F, 0.0F, 1.0F};
        return told_lights(session, seen);
    };
    const auto first = [](const MendSession& session) { return causes(session, 1).front().kind; };
    const MendSession none = with(0);
    const MendSession few = with(2);
    const MendSession many = with(120);
    CHECK(first(none) == FaultKind::led_turned);
    CHECK(first(few) == FaultKind::led_turned); // two cards turn nothing over
    CHECK(share(few, FaultKind::pad_loose) > share(none, FaultKind::pad_loose));
    CHECK(share(few, FaultKind::pad_loose) < 1.5 * share(none, FaultKind::pad_loose));
    CHECK(first(many) == FaultKind::pad_loose);
    CHECK(share(many, FaultKind::led_turned) > 0.01); // and the other is still there
    CHECK(few.model->faults.size() == none.model->faults.size());
    for (const Fault& fault : many.model->faults) {
        CHECK(fault.prior > 0.0);
    }
}
