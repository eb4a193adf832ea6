#include "model/update_mend.h"

#include "base/overloaded.h"
#include "mend/told.h"
#include "model/update_parts.h"

#include <algorithm>
#include <cstdlib>

namespace lanternleaf {

namespace {

constexpr std::size_t kCausesShown = 4;

bool write(AppState& state, const Surroundings& around, EventKind kind, const std::string& text) {
    Event event;
    event.kind = kind;
    event.step = std::min(state.build->record.step, kStepCount);
    event.text = text;
    const Outcome<Done> done = confirm(around, *state.build, event);
    if (!done) {
        say(state, around, done.problem().sentence());
    }
    return done.ok();
}

void tell(AppState& state, const Surroundings& around, const Observation& observation) {
    static_cast<void>(tell_mend(state, around, write_told(observation)));
}

Look after(Look look) {
    switch (look) {
    case Look::unseen:
    case Look::flickers:
        return Look::lit;
    case Look::lit:
        return Look::dim;
    case Look::dim:
        return Look::dark;
    case Look::dark:
        return Look::flickers;
    }
    return Look::lit;
}

bool lights_there(AppState& state, const Surroundings& around) {
    if (!state.mend->lights_there) {
        say(state, around, around.words("model.lights_later"));
    }
    return state.mend->lights_there;
}

void tap(AppState& state, const Surroundings& around, const std::string& led) {
    if (!lights_there(state, around)) {
        return;
    }
    const MendSession& session = state.mend->session;
    const std::vector<Led>& leds = session.model->card.leds;
    for (std::size_t i = 0; i < leds.size(); ++i) {
        if (leds[i].id == led) {
            tell(state, around, SeenLight{led, after(session.evidence.looks[i])});
            return;
        }
    }
}

void tap_rest(AppState& state, const Surroundings& around, Look look) {
    if (!lights_there(state, around)) {
        return;
    }
    const std::vector<Led> leds = state.mend->session.model->card.leds;
    for (std::size_t i = 0; i < leds.size(); ++i) {
        if (state.mend->session.evidence.looks[i] == Look::unseen &&
            !tell_mend(state, around, write_told(SeenLight{leds[i].id, look}))) {
            return;
        }
    }
}

void pressing(AppState& state, const Surroundings& around, bool changes) {
    const bool same = state.mend->session.evidence.pressing_changes == changes;
    tell(state, around, same ? PressingChanges{} : PressingChanges{changes});
}

void warm_answer(AppState& state, const Surroundings& around, bool warm) {
    if (state.build->record.cell_in) {
        cell_out(state, around);
        if (state.build->record.cell_in) {
            return; // the disk refused; it has been said
        }
        state.said.clear();
    }
    if (tell_mend(state, around, write_told(TestAnswer{"warm", warm ? 1 : 0}))) {
        state.mend->warm_asked = true;
        state.mend->warm = warm;
    }
}

void cell_in(AppState& state, const Surroundings& around) {
    if (!state.build->record.adult_confirmed) {
        state.notice = Notice::asking; // read first; then the button is there again
    } else if (!state.build->record.cell_in) {
        static_cast<void>(write(state, around, EventKind::cell_in, ""));
    }
}

void answer(AppState& state, const Surroundings& around, int outcome) {
    if (state.mend->test) {
        tell(state, around, TestAnswer{std::string(state.mend->test->id), outcome});
    }
}

void save_figure(AppState& state, const Surroundings& around, bool open, bool minus) {
    const std::optional<MendTest>& test = state.mend->test;
    if (!test || (!open && state.mend->figure.empty())) {
        return;
    }
    const double value = open ? 0.0 : std::atof(state.mend->figure.c_str());
    if (tell_mend(state, around, write_told(TestReading{test->id, minus ? -value : value, open}))) {
        state.sheet = SheetKind::none;
    }
}

void take_back(AppState& state, const Surroundings& around) {
    MendState& mend = *state.mend;
    if (mend.before.empty() || !write(state, around, EventKind::mend_told, kTakenBack)) {
        return;
    }
    mend.session = std::move(mend.before.back());
    mend.before.pop_back();
    const auto& answers = mend.session.evidence.answers;
    const MendTest* warm = find_test(*mend.session.model, "warm");
    const auto felt = std::find_if(answers.begin(), answers.end(), [&](const Evidence::Answer& one) {
        return warm == &mend.session.model->tests[static_cast<std::size_t>(one.test)];
    });
    mend.warm_asked = felt != answers.end();
    mend.warm = mend.warm_asked && felt->outcome == 1;
    settle_mend(mend);
}

void have(MendState& mend, mend::Tool tool) {
    bool& has = tool == mend::Tool::foil         ? mend.tools.foil
                : tool == mend::Tool::known_cell ? mend.tools.known_cell
                : tool == mend::Tool::known_led  ? mend.tools.known_led
                                                 : mend.tools.meter;
    has = !has;
    mend.test = next_test(mend.session, mend.tools);
}

void start_again(AppState& state, const Surroundings& around) {
    if (write(state, around, EventKind::mend_told, kToldAgain)) {
        state.seen.clear();
        start_mend_search(state, around);
    }
}

void note_none_fits(AppState& state, const Surroundings& around) {
    if (write(state, around, EventKind::note, english()("model.none_fits"))) {
        say(state, around, around.words("model.in_record"));
    }
}

} // namespace

void settle_mend(MendState& mend) {
    mend.causes = causes(mend.session, kCausesShown);
    mend.chances = cause_chances(mend.session);
    mend.chances.resize(std::min(mend.chances.size(), mend.causes.size()));
    mend.test = next_test(mend.session, mend.tools);
    mend.chosen = MendState::kNoCause;
    mend.figure.clear();
}

bool tell_mend(AppState& state, const Surroundings& around, const std::string& line) {
    MendState& mend = *state.mend;
    Outcome<MendSession> next = observe_told(mend.session, line);
    if (!next) {
        say(state, around, next.problem().sentence());
        return false;
    }
    if (!write(state, around, EventKind::mend_told, line)) {
        return false;
    }
    mend.before.push_back(std::move(mend.session));
    mend.session = std::move(next).value();
    settle_mend(mend);
    return true;
}

void update_mend(AppState& state, const Surroundings& around, const MendCommand& command) {
    if (!state.build || !state.mend) {
        return;
    }
    std::visit(
        Overloaded{
            [&](const mend::WarmAnswer& c) { warm_answer(state, around, c.warm); },
            [&](const mend::CellIn&) { cell_in(state, around); },
            [&](const mend::TapLight& c) { tap(state, around, c.led); },
            [&](const mend::TapRest& c) { tap_rest(state, around, c.look); },
            [&](const mend::ClearLights&) { static_cast<void>(tell_mend(state, around, kLightsAgain)); },
            [&](const mend::Pressing& c) { pressing(state, around, c.changes); },
            [&](const mend::Answer& c) { answer(state, around, c.outcome); },
            [&](const mend::OpenMeter&) {
                state.mend->figure.clear();
                state.sheet = SheetKind::mend_meter;
            },
            [&](const mend::TypeFigure& c) { state.mend->figure = c.text; },
            [&](const mend::SaveFigure& c) { save_figure(state, around, false, c.minus); },
            [&](const mend::MeterShowsOpen&) { save_figure(state, around, true, false); },
            [&](const mend::TakeBack&) { take_back(state, around); },
            [&](const mend::Have& c) { have(*state.mend, c.tool); },
            [&](const mend::LookAt& c) { state.mend->chosen = c.cause; },
            [&](const mend::NoneFits&) { state.mend->chosen = MendState::kNoneFits; },
            [&](const mend::NoteNoneFits&) { note_none_fits(state, around); },
            [&](const mend::Found& c) { mend_found(state, around, c.cause); },
            [&](const mend::StartAgain&) { start_again(state, around); },
        },
        command);
}

} // namespace lanternleaf
