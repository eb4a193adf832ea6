// What the tests of Mend share: the demo cards, lights as a fault shows them, and a search by a maker who
// never slips.
#pragma once

#include "desk/desk.h"
#include "mend/session.h"

#include <catch2/catch.hpp>

namespace lanternleaf::mending {

inline OpenCard demo(const std::string& name) {
    const std::string assets = std::string(LANTERNLEAF_SOURCE) + "/assets";
    const Outcome<Parts> parts = load_parts(assets);
    REQUIRE(parts.ok());
    const Outcome<OpenCard> open = open_card(assets + "/cards/" + name + ".card.json", parts.value());
    REQUIRE(open.ok());
    return open.value();
}

inline Look look_of(const Glow& glow) {
    switch (likeliest(glow)) {
    case LightState::lit:
        return Look::lit;
    case LightState::dim:
        return Look::dim;
    case LightState::dark:
        break;
    }
    return Look::dark;
}

inline MendSession told(const MendSession& session, const Observation& observation) {
    const Outcome<MendSession> next = observe(session, observation);
    REQUIRE(next.ok());
    return next.value();
}

inline MendSession told_lights(MendSession session, const Showing& showing) {
    for (std::size_t i = 0; i < session.model->card.leds.size(); ++i) {
        session = told(session, SeenLight{session.model->card.leds[i].id, look_of(showing.glows[i])});
    }
    return session;
}

/// Index of the fault of this kind about this LED or place part; -1 when there is none.
inline int find_fault(const MendModel& model, FaultKind kind, const std::string& part, bool open = false) {
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        const Fault& fault = model.faults[f];
        if (fault.kind != kind || fault.open != open || fault.place < 0) {
            continue;
        }
        const FaultPlace& place = model.places[static_cast<std::size_t>(fault.place)];
        if (part.empty() || place.name == part ||
            std::find(place.parts.begin(), place.parts.end(), part) != place.parts.end()) {
            return static_cast<int>(f);
        }
    }
    return -1;
}

/// Answers what is offered as this fault would, until a cause has this chance or nothing is left to ask.
inline MendSession search(MendSession session, int fault, double sure = 0.95) {
    MendTools tools;
    tools.meter = true;
    for (int asked = 0; asked < 60 && cause_chances(session).front().probability < sure; ++asked) {
        const std::optional<MendTest> test = next_test(session, tools);
        if (!test) {
            break;
        }
        const int index = static_cast<int>(find_test(*session.model, test->id) - session.model->tests.data());
        const Prediction predicted = prediction_of(session, static_cast<std::size_t>(fault), index);
        const int outcome = predicted.sure_255 >= 128 ? predicted.outcome : 0;
        session = told(session, TestAnswer{test->id, outcome});
    }
    return session;
}

} // namespace lanternleaf::mending
