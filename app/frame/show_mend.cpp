#include "frame/show_mend.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void act(App& app, const MendCommand& command) {
    update(app.state, app.around, command::Mend{command});
}

const MendState& mend_of(const App& app) {
    return *app.state.mend;
}

// A torn strip that leaves some lights lit and some dark; -1 when no strip of the card does.
int torn_strip(const MendModel& model) {
    for (std::size_t f = 0; f < model.faults.size(); ++f) {
        const Showing& showing = model.showings[f];
        const auto lit = std::count_if(showing.glows.begin(), showing.glows.end(),
                                       [](const Glow& glow) { return likeliest(glow) == LightState::lit; });
        if (model.faults[f].kind == FaultKind::strip_broken && lit >= 2 &&
            lit + 2 <= static_cast<std::ptrdiff_t>(showing.glows.size())) {
            return static_cast<int>(f);
        }
    }
    return -1;
}

void tap_lights(App& app, const Showing& showing) {
    const std::vector<Led> leds = mend_of(app).session.model->card.leds;
    for (std::size_t i = 0; i < showing.glows.size(); ++i) {
        const LightState state = likeliest(showing.glows[i]);
        const int taps = state == LightState::lit ? 1 : state == LightState::dim ? 2 : 3;
        for (int k = 0; k < taps; ++k) {
            act(app, mend::TapLight{leds[i].id});
        }
    }
}

// Answers the tests on offer as this fault would, until its cause stands first with this chance.
void answer_until(App& app, int fault, double sure) {
    const std::shared_ptr<const MendModel> model = mend_of(app).session.model;
    const int cause = model->faults[static_cast<std::size_t>(fault)].cause;
    for (int guard = 0; guard < 12 && mend_of(app).test; ++guard) {
        const CauseChance& first = mend_of(app).chances.front();
        if (first.a == cause && first.b < 0 && first.probability >= sure) {
            return;
        }
        const MendTest* test = find_test(*model, mend_of(app).test->id);
        const Prediction predicted = prediction_of(mend_of(app).session, static_cast<std::size_t>(fault),
                                                   static_cast<int>(test - model->tests.data()));
        act(app, mend::Answer{predicted.sure_255 >= 128 ? predicted.outcome : 0});
    }
}

void give_other_tools(App& app, bool meter) {
    const MendTools tools = mend_of(app).tools;
    if (tools.meter != meter) {
        act(app, mend::Have{mend::Tool::meter});
    }
    if (tools.known_cell == meter) {
        act(app, mend::Have{mend::Tool::known_cell});
    }
    if (tools.known_led == meter) {
        act(app, mend::Have{mend::Tool::known_led});
    }
}

} // namespace

bool show_mend(App& app, const std::string& name) {
    if (!app.state.build) {
        return false;
    }
    update(app.state, app.around, command::GoTo{Place::mend});
    if (name == "mend/start") {
        return true;
    }
    act(app, mend::WarmAnswer{false});
    if (name == "mend/lights") {
        return true;
    }
    if (name == "mend/dark") {
        act(app, mend::TapRest{Look::dark});
        return true;
    }
    const int torn = torn_strip(*mend_of(app).session.model);
    if (torn < 0) {
        return false;
    }
    tap_lights(app, mend_of(app).session.model->showings[static_cast<std::size_t>(torn)]);
    if (name == "mend/named") {
        answer_until(app, torn, 0.9);
        act(app, mend::LookAt{0});
    } else if (name == "mend/none") {
        act(app, mend::NoneFits{});
    } else if (name == "mend/meter") {
        give_other_tools(app, true);
        for (int guard = 0; guard < 40 && mend_of(app).test && mend_of(app).test->needs != TestNeeds::meter;
             ++guard) {
            act(app, mend::Answer{-1});
        }
        act(app, mend::OpenMeter{});
        act(app, mend::TypeFigure{"0.3"});
    } else if (name != "mend") {
        return false;
    }
    return true;
}

} // namespace lanternleaf
