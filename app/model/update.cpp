#include "model/update.h"

#include "base/overloaded.h"
#include "model/update_batch.h"
#include "model/update_draw.h"
#include "model/update_learn.h"
#include "model/update_log.h"
#include "model/update_mend.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void open_sheet(AppState& state, SheetKind sheet) {
    state.sheet = sheet;
}

void offer_differences(AppState& state) {
    if (!state.build) {
        return;
    }
    state.differs = {};
    state.differs.offers = offers_for(state.build->record.as_built, state.build->parts,
                                      open_step(*state.build), state.build->move, state.build->words);
    state.sheet = SheetKind::differs;
}

void choose_difference(AppState& state, int index) {
    if (index >= 0 && index < static_cast<int>(state.differs.offers.size())) {
        state.differs.chosen = index;
        state.differs.draft = state.differs.offers[static_cast<std::size_t>(index)].change;
    } else {
        state.differs.chosen = -1;
    }
}

void change_settings(AppState& state, const Surroundings& around, Settings settings) {
    settings.text_scale = std::clamp(settings.text_scale, 0.85, 2.0);
    state.settings = settings;
    write_settings(around, settings);
}

} // namespace

void read_regions(AppState& state, const Surroundings& around) {
    Outcome<RegionTable> regions = load_regions(around);
    if (regions) {
        state.regions = std::move(regions).value();
    } else {
        // The emergency words must be there even when the table is not.
        state.regions.checked_how = regions.problem().sentence();
        state.regions.regions = {built_in_region(around.words)};
    }
}

AppState open_app(const Surroundings& around) {
    AppState state;
    state.settings = read_settings(around);
    read_regions(state, around);
    refresh_shelf(state, around);
    return state;
}

void say(AppState& state, const Surroundings& around, const std::string& text) {
    static_cast<void>(around);
    state.said = text;
}

const Step& open_step(const OpenBuild& build) {
    return build.steps[static_cast<std::size_t>(std::min(build.record.step, kStepCount) - 1)];
}

const Move* open_move(const OpenBuild& build) {
    const std::vector<Move>& moves = open_step(build).moves;
    return build.move < static_cast<int>(moves.size()) ? &moves[static_cast<std::size_t>(build.move)]
                                                       : nullptr;
}

void update(AppState& state, const Surroundings& around, const Command& command) {
    std::visit(Overloaded{
                   [&](const command::GoTo& c) {
                       state.light.reset();
                       go_to(state, around, c.place);
                   },
                   [&](const command::OpenSheet& c) { open_sheet(state, c.sheet); },
                   [&](const command::CloseSheet&) {
                       state.new_batch.reset();
                       open_sheet(state, SheetKind::none);
                   },
                   [&](const command::ReadNotice&) { state.notice = Notice::reading; },
                   [&](const command::CloseNotice&) {
                       state.notice = Notice::none;
                       stop_waiting(state);
                   },
                   [&](const command::AdultConfirms&) {
                       if (!adult_confirms_test(state)) {
                           adult_confirms(state, around);
                       }
                   },
                   [&](const command::StartCard& c) {
                       state.new_batch.reset();
                       start_card(state, around, c.path);
                   },
                   [&](const command::AnswerAudience& c) { answer_audience(state, c.audience, around); },
                   [&](const command::ChooseWay& c) { choose_way(state, around, c.choice); },
                   [&](const command::Resume& c) { resume(state, around, c.journal); },
                   [&](const command::PutAway& c) { put_away(state, around, c.journal); },
                   [&](const command::OpenMenu& c) {
                       state.menu_build = c.journal;
                       open_sheet(state, SheetKind::build_menu);
                   },
                   [&](const command::OpenLog& c) { open_log(state, around, c.journal); },
                   [&](const command::MoveDone&) { move_done(state, around); },
                   [&](const command::MoveBack&) { move_back(state, around); },
                   [&](const command::LookAtStep&) { open_sheet(state, SheetKind::steps); },
                   [&](const command::OpenKeypad& c) { open_keypad(state, c.check); },
                   [&](const command::TypeReading& c) { state.entry.text = c.text; },
                   [&](const command::SaveReading&) { save_reading(state, around); },
                   [&](const command::MeterShowsOpen&) { meter_shows_open(state, around); },
                   [&](const command::OpenNoMeter& c) {
                       state.entry = {c.check, ""};
                       open_sheet(state, SheetKind::no_meter);
                   },
                   [&](const command::LookedAt& c) { looked_at(state, around, c.as_expected); },
                   [&](const command::LookedAtAll&) { looked_at_all(state, around); },
                   [&](const command::TapLight& c) { tap_light(state, c.led); },
                   [&](const command::SaveSeen&) { save_seen(state, around); },
                   [&](const command::OfferDifferences&) { offer_differences(state); },
                   [&](const command::ChooseDifference& c) { choose_difference(state, c.index); },
                   [&](const command::AdjustDifference& c) { state.differs.draft = c.draft; },
                   [&](const command::SaveDifference&) { record_change(state, around, state.differs.draft); },
                   [&](const command::ProveStep&) { prove_step(state, around); },
                   [&](const command::MendWith& c) { record_change(state, around, c.change); },
                   [&](const command::GoOnRegardless& c) { go_on_regardless(state, around, c.why); },
                   [&](const command::CellOut&) { cell_out(state, around); },
                   [&](const command::ToggleNight&) {
                       Settings settings = state.settings;
                       settings.night = !settings.night;
                       change_settings(state, around, settings);
                   },
                   [&](const command::ChangeSettings& c) { change_settings(state, around, c.settings); },
                   [&](const command::MoveCamera& c) { state.camera = c.camera; },
                   [&](const command::OpenLight&) { open_light(state, around); },
                   [&](const command::CloseLight&) { state.light.reset(); },
                   [&](const command::SetLightHours& c) { set_light_hours(state, c.hours); },
                   [&](const command::ShowLightTraces& c) {
                       if (state.light) {
                           state.light->traces = c.traces;
                       }
                   },
                   [&](const command::Draw& c) { update_draw(state, around, c.act); },
                   [&](const command::Mend& c) { update_mend(state, around, c.act); },
                   [&](const command::Log& c) { update_log(state, around, c.act); },
                   [&](const command::Batch& c) { update_batch(state, around, c.act); },
                   [&](const command::Learn& c) { update_learn(state, around, c.act); },
                   [&](const command::BuildAgain&) {
                       state.new_batch.reset();
                       for (const ShelfCard& card : state.cards) {
                           if (card.name == state.log_shelf.card_name) {
                               start_card(state, around, card.path);
                               return;
                           }
                       }
                       say(state, around, around.words("model.card_gone"));
                   },
               },
               command);
}

} // namespace lanternleaf
