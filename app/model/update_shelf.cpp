#include "model/batches.h"
#include "model/update_batch.h"
#include "model/update_draw.h"
#include "model/update_log.h"
#include "model/update_mend.h"
#include "model/update_parts.h"

#include "routing/other_holder.h"

#include <algorithm>

namespace lanternleaf {

namespace {

const ShelfBuild* find_build(const AppState& state, const std::string& journal) {
    for (const ShelfBuild& build : state.builds) {
        if (build.path == journal) {
            return &build;
        }
    }
    return nullptr;
}

/// The card at hand with another holder: `plan` when its traces had to be laid anew. False: no way was found,
/// and Draw is open with the holder swapped.
bool plan_for_holder(AppState& state, const Surroundings& around, const std::string& holder,
                     std::optional<Card>& plan) {
    const Outcome<OpenCard> card = open_card(state.starting, known_parts(around));
    if (!card || card.value().card.holder.type == holder) {
        return true; // what is wrong with the file is told when the build is started
    }
    Rehoused made = with_other_holder(card.value().card, card.value().parts, holder);
    if (made.sound) {
        plan = std::move(made.card);
        return true;
    }
    open_plan(state, around, state.starting);
    if (state.draw) {
        commit_edit(state, around, {edit::SetHolder{holder}});
        commit_edit(state, around, {edit::SetAudience{state.asked}});
        state.starting.clear();
        say(state, around, around.words("model.no_way_to_screw_holder"));
    }
    return false;
}

} // namespace

void refresh_shelf(AppState& state, const Surroundings& around) {
    state.builds = list_builds(around);
    state.cards = list_cards(around, state.builds);
    state.batches = list_batches(around, state.builds);
}

void go_to(AppState& state, const Surroundings& around, Place place) {
    state.sheet = SheetKind::none;
    state.scroll = 0.0;
    if (place == Place::shelf) {
        if (state.place == Place::shelf) {
            state.batch.reset(); // from the board to the shelf; from elsewhere back to the board
        }
        refresh_shelf(state, around);
        refresh_batch(state, around);
    }
    if (place == Place::log && state.log) {
        open_log(state, around, state.log_shelf.path); // it may have gone on since
    } else if (place == Place::log) {
        // Log opens on the build at hand, else on the newest one.
        const auto newest = std::find_if(state.builds.begin(), state.builds.end(),
                                         [](const ShelfBuild& build) { return build.trouble.empty(); });
        if (state.build) {
            open_log(state, around, state.build->shelf.path);
        } else if (newest != state.builds.end()) {
            open_log(state, around, newest->path);
        }
    }
    state.place = place;
    if (place == Place::draw) {
        enter_draw(state, around);
    }
    if (place == Place::mend) {
        enter_mend(state, around);
    }
}

void start_card(AppState& state, const Surroundings& around, const std::string& path) {
    const Outcome<OpenCard> card = open_card(path, known_parts(around));
    if (!card) {
        say(state, around, card.problem().sentence());
        return;
    }
    state.starting = path;
    state.audience_answered = false;
    state.sheet = SheetKind::audience;
}

void answer_audience(AppState& state, Audience audience, const Surroundings& around) {
    const Outcome<OpenCard> card = open_card(state.starting, known_parts(around));
    if (!card) {
        say(state, around, card.problem().sentence());
        state.sheet = SheetKind::none;
        return;
    }
    const auto holder = card.value().parts.holders.find(card.value().card.holder.type);
    const Closure closure =
        holder == card.value().parts.holders.end() ? Closure::finger : holder->second.closure;
    state.asked = audience;
    state.advice = advice_for(audience, closure, around.words);
    state.audience_answered = true;
}

void choose_way(AppState& state, const Surroundings& around, const std::string& choice) {
    if (choice == "not-now") {
        state.sheet = SheetKind::none;
        state.new_batch.reset();
        state.starting.clear();
        return;
    }
    for (const AudienceChoice& way : state.advice.choices) {
        if (way.id == choice) {
            if (state.new_batch) {
                begin_batch(state, around, way);
            } else {
                begin_for(state, around, state.starting, state.asked, way, {});
            }
            return;
        }
    }
}

namespace {

/// The plan that earlier builds of a batch were laid for: its cards are alike, and a search can take seconds.
std::optional<Card> plan_of_batch(const AppState& state, const Surroundings& around,
                                  const std::string& batch) {
    for (const ShelfBuild& shelf : state.builds) {
        if (!batch.empty() && shelf.batch == batch && shelf.trouble.empty()) {
            if (const Outcome<OpenBuild> build = open_build(around, shelf)) {
                return build.value().record.card;
            }
        }
    }
    return std::nullopt;
}

} // namespace

void begin_for(AppState& state, const Surroundings& around, const std::string& card_path, Audience audience,
               const AudienceChoice& way, const Membership& of) {
    state.starting = card_path;
    state.asked = audience;
    std::optional<Card> plan = way.holder.empty() ? std::nullopt : plan_of_batch(state, around, of.batch);
    const bool laid_anew = !way.holder.empty() && !plan;
    if (laid_anew && !plan_for_holder(state, around, way.holder, plan)) {
        return;
    }
    const Outcome<std::string> journal =
        start_build(around, state.starting, state.asked, way, of, plan ? &*plan : nullptr);
    if (!journal) {
        say(state, around, journal.problem().sentence());
        return;
    }
    if (laid_anew) {
        say(state, around, around.words("model.laid_for_screw_holder"));
    }
    state.starting.clear();
    refresh_shelf(state, around);
    resume(state, around, journal.value());
}

void resume(AppState& state, const Surroundings& around, const std::string& journal) {
    const ShelfBuild* shelf = find_build(state, journal);
    if (shelf == nullptr) {
        say(state, around, around.words("model.build_gone"));
        return;
    }
    const ShelfBuild wanted = *shelf;
    if (state.build && state.build->shelf.path == journal) {
        state.build.reset(); // it is read again, so let go of it first
    }
    Outcome<OpenBuild> build = take_up_build(around, wanted);
    if (!build) {
        say(state, around, build.problem().sentence());
        return;
    }
    state.build = std::move(build).value();
    if (!state.build->looking_only.empty()) {
        say(state, around, state.build->looking_only);
    }
    state.build->lessons = learn_from_library(state, around, *state.build);
    state.build->by_list = made_one_before(state, wanted);
    state.log.reset(); // Log is about the build at hand from now on
    state.build->face = open_move(*state.build) == nullptr && !state.build->record.finished ? MakeFace::proof
                                                                                            : MakeFace::move;
    state.sheet = SheetKind::none;
    state.notice = Notice::none;
    state.seen.clear();
    state.camera = {};
    state.place = state.build->record.finished ? Place::log : Place::make;
    if (state.build->record.finished) {
        open_log(state, around, journal);
    }
}

void put_away(AppState& state, const Surroundings& around, const std::string& journal) {
    state.sheet = SheetKind::none;
    const ShelfBuild* shelf = find_build(state, journal);
    if (shelf == nullptr) {
        return;
    }
    const bool on_table = state.build && state.build->shelf.path == journal;
    Outcome<OpenBuild> build = on_table ? Outcome<OpenBuild>(*state.build) : open_build(around, *shelf);
    if (!build) {
        say(state, around, build.problem().sentence());
        return;
    }
    Event event;
    event.kind = EventKind::abandoned;
    if (const Outcome<Done> done = confirm(around, build.value(), event); !done) {
        say(state, around, done.problem().sentence());
        return;
    }
    if (state.build && state.build->shelf.path == journal) {
        state.build.reset();
    }
    refresh_shelf(state, around);
    say(state, around, around.words("model.put_away"));
}

void open_log(AppState& state, const Surroundings& around, const std::string& journal) {
    const ShelfBuild* shelf = find_build(state, journal);
    if (shelf == nullptr) {
        return;
    }
    if (show_log(state, around, *shelf)) {
        state.place = Place::log;
    }
}

} // namespace lanternleaf
