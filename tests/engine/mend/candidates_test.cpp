// Faults put into the circuit against the same faults made on the card itself: the card is changed, its
// conductors found anew and solved; Mend must show the same lights and hold the fault among its candidates.
#include "circuit/lights.h"
#include "mending.h"
#include "support/lamp_rows.h"

#include <set>

using namespace lanternleaf;
using namespace lanternleaf::mending;

namespace {

struct Injected {
    Change change;
    FaultKind kind;
    std::string part;
};

Change change_of(ChangeKind kind, const std::string& part) {
    Change change;
    change.kind = kind;
    change.part = part;
    return change;
}

std::vector<Injected> injections(const MendModel& model) {
    std::vector<Injected> list;
    list.push_back({change_of(ChangeKind::cell_upside_down, ""), FaultKind::cell_upside_down, ""});
    for (const Led& led : model.card.leds) {
        list.push_back({change_of(ChangeKind::led_turned, led.id), FaultKind::led_turned, led.id});
        const int wrong = find_fault(model, FaultKind::led_wrong, led.id);
        if (wrong >= 0) {
            Change other = change_of(ChangeKind::led_swapped, led.id);
            other.type = model.faults[static_cast<std::size_t>(wrong)].type;
            list.push_back({other, FaultKind::led_wrong, led.id});
        }
    }
    for (const Laid& item : model.card.laid) {
        if (std::holds_alternative<Patch>(item)) {
            list.push_back(
                {change_of(ChangeKind::patch_missing, id_of(item)), FaultKind::crossing_bare, id_of(item)});
        }
    }
    for (const Fault& fault : model.faults) {
        if (fault.kind == FaultKind::strip_broken) {
            const FaultPlace& place = model.places[static_cast<std::size_t>(fault.place)];
            Change tear = change_of(ChangeKind::tear, place.parts.front());
            tear.at_mm = place.at_mm;
            tear.mm = 1.0;
            list.push_back({tear, FaultKind::strip_broken, place.name});
        }
    }
    return list;
}

void injected_is_a_candidate(const Card& card, const Parts& parts) {
    const MendSession start = start_mend(card, parts);
    const MendModel& model = *start.model;
    for (const Injected& one : injections(model)) {
        CAPTURE(describe(one.change));
        const int fault = find_fault(model, one.kind, one.part);
        REQUIRE(fault >= 0);
        const Outcome<Card> changed = apply_change(card, parts, one.change);
        REQUIRE(changed.ok());
        const Lighting real = light_up(changed.value(), parts, find_conductors(changed.value(), parts),
                                       fresh_cell(changed.value(), parts));
        const double least_mA = 0.05;
        for (std::size_t i = 0; i < real.lights.size(); ++i) {
            const Glow& glow = model.showings[static_cast<std::size_t>(fault)].glows[i];
            CAPTURE(card.leds[i].id, real.lights[i].current_mA);
            CHECK((likeliest(glow) == LightState::dark) == (real.lights[i].current_mA < least_mA));
        }
        // Told the lights and answered without a slip, it comes first, or level with the first.
        const MendSession end =
            search(told_lights(start, model.showings[static_cast<std::size_t>(fault)]), fault);
        const std::vector<CauseChance> chances = cause_chances(end);
        const int cause = model.faults[static_cast<std::size_t>(fault)].cause;
        double own = 0.0;
        for (const CauseChance& chance : chances) {
            own = chance.a == cause && chance.b < 0 ? chance.probability : own;
        }
        CAPTURE(causes(end, 1).front().title, own, chances.front().probability, end.evidence.answers.size());
        CHECK(own >= 0.999 * chances.front().probability);
    }
}

} // namespace

TEST_CASE("A fault made on the card is a candidate, shows the same lights, and is named", "[mend]") {
    SECTION("demo cards") {
        for (const char* name : {"window-candle", "harbour-lighthouse", "night-tram"}) {
            CAPTURE(name);
            const OpenCard open = demo(name);
            injected_is_a_candidate(open.card, open.parts);
        }
    }
    SECTION("random cards") {
        const Parts parts = make::test_parts();
        for (unsigned seed = 1; seed <= 6; ++seed) {
            std::mt19937 random(seed);
            const Card card = make::random_rows(3 + 3 * static_cast<int>(seed % 4), random);
            CAPTURE(seed);
            injected_is_a_candidate(card, parts);
        }
    }
}

TEST_CASE("Every candidate of a card is named when answered without a slip", "[mend]") {
    std::mt19937 random(11);
    const Card card = make::random_rows(6, random);
    const MendSession start = start_mend(card, make::test_parts());
    const MendModel& model = *start.model;
    int named = 0;
    int tried = 0;
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        const Fault& fault = model.faults[f];
        const bool shows = fault.edits.empty() || look_different(model.showings[f], model.as_built);
        if (fault.kind >= FaultKind::as_built || !shows) {
            continue; // nothing to name, or nothing to see
        }
        ++tried;
        const MendSession end = search(told_lights(start, model.showings[f]), static_cast<int>(f));
        const CauseChance first = cause_chances(end).front();
        INFO(name_of(fault.kind) << " " << model.places[static_cast<std::size_t>(fault.place)].name
                                 << " gave " << causes(end, 1).front().title << " " << first.probability);
        CHECK((first.a == fault.cause || first.probability < 0.6));
        named += first.a == fault.cause && first.b < 0 ? 1 : 0;
    }
    CAPTURE(named, tried);
    CHECK(tried > 60);
    CHECK(named >= tried * 95 / 100);
}

TEST_CASE("Priors add up to one, and every kind of trouble has a place", "[mend]") {
    std::mt19937 random(5);
    const Card card = make::random_rows(12, random);
    const MendSession start = start_mend(card, make::test_parts());
    double sum = 0.0;
    std::set<FaultKind> kinds;
    for (const Fault& fault : start.model->faults) {
        sum += fault.prior;
        kinds.insert(fault.kind);
        CHECK(fault.prior > 0.0);
        CHECK(fault.cause >= 0);
    }
    CHECK(sum == Approx(1.0));
    for (int k = 0; k < kFaultKinds; ++k) {
        const auto kind = static_cast<FaultKind>(k);
        CAPTURE(name_of(kind));
        const bool needs_resistor = kind == FaultKind::resistor_wrong;
        CHECK((kinds.count(kind) == 1 || needs_resistor));
    }
}

TEST_CASE("Proved steps and own records move the priors", "[mend]") {
    std::mt19937 random(5);
    const Card card = make::random_rows(12, random);
    const Parts parts = make::test_parts();
    const auto share = [&](const MendOptions& options, FaultKind kind) {
        double sum = 0.0;
        const MendSession session = start_mend(card, parts, options);
        for (const Fault& fault : session.model->faults) {
            sum += fault.kind == kind ? fault.prior : 0.0;
        }
        return sum;
    };
    const MendOptions usual;
    MendOptions proved;
    proved.proved = {StepId::mount_holder, StepId::mark_pads, StepId::lay_negative, StepId::lay_positive,
                     StepId::insulate};
    CHECK(share(proved, FaultKind::joint_loose) < 0.15 * share(usual, FaultKind::joint_loose));
    CHECK(share(proved, FaultKind::crossing_bare) < 0.15 * share(usual, FaultKind::crossing_bare));
    CHECK(share(proved, FaultKind::led_turned) > share(usual, FaultKind::led_turned));
    proved.proved.push_back(StepId::place_leds);
    CHECK(share(proved, FaultKind::led_turned) < 0.15 * share(usual, FaultKind::led_turned));
    CHECK(share(proved, FaultKind::cell_flat) > share(usual, FaultKind::cell_flat));
    MendOptions weighted;
    weighted.weights[static_cast<std::size_t>(FaultKind::led_turned)] = 5.0;
    CHECK(share(weighted, FaultKind::led_turned) > 2.0 * share(usual, FaultKind::led_turned));
}
