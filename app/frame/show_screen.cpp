// Puts the app at a named screen by doing what a person would do to get there, so that a picture never shows
// a state that cannot be reached.
#include "frame/frame.h"
#include "frame/show_batch.h"
#include "frame/show_draw.h"
#include "frame/show_learn.h"
#include "frame/show_mend.h"

#include <algorithm>
#include <cstdlib>

namespace lanternleaf {

namespace {

void act(App& app, const Command& command) {
    update(app.state, app.around, command);
}

// A build of the card at hand, started as an adults' card where the holder allows it.
Outcome<Done> start(App& app, const std::string& card_path) {
    act(app, command::StartCard{card_path});
    if (app.state.sheet != SheetKind::audience) {
        return Problem{card_path, "", app.state.said};
    }
    act(app, command::AnswerAudience{Audience::adults});
    act(app, command::ChooseWay{"go-on"});
    if (!app.state.build) {
        return Problem{card_path, "",
                       app.state.said.empty() ? "the build could not be started" : app.state.said};
    }
    return Done{};
}

// Answers every needed check of the open step as the engine expects it, by eye.
void answer_all(App& app) {
    // Copies: every saved reading derives the steps afresh.
    std::vector<Check> checks;
    for (const NeededCheck& needed : needed_checks(*app.state.build)) {
        checks.push_back(*needed.check);
    }
    for (const Check& check : checks) {
        if (check.kind == CheckKind::lights) {
            app.state.seen = check.lights;
            act(app, command::SaveSeen{});
        } else if (check.kind == CheckKind::resistance || check.kind == CheckKind::volts) {
            act(app, command::OpenKeypad{check.id});
            char text[32];
            std::snprintf(text, sizeof text, "%.1f", (check.low + check.high) / 2);
            act(app, command::TypeReading{text});
            act(app, command::SaveReading{});
        } else {
            act(app, command::OpenNoMeter{check.id});
            act(app, command::LookedAt{true});
        }
    }
}

// Forward to step `step` with `moves` of its moves done.
bool walk_to(App& app, int step, int moves) {
    for (int guard = 0; guard < 2000 && app.state.build; ++guard) {
        const OpenBuild& build = *app.state.build;
        if (build.record.finished || build.record.step > step) {
            return build.record.finished && step > kStepCount;
        }
        const Move* move = open_move(build);
        if (build.record.step == step && (build.move >= moves || move == nullptr)) {
            return true;
        }
        if (move != nullptr) {
            act(app, command::MoveDone{});
            if (app.state.notice == Notice::asking) {
                act(app, command::AdultConfirms{});
            }
        } else {
            answer_all(app);
            act(app, command::ProveStep{});
            if (app.state.build && app.state.build->face == MakeFace::verdict) {
                return false;
            }
        }
    }
    return false;
}

// The first move from here on that has a check to measure.
void go_to_check(App& app) {
    for (int guard = 0; guard < 200; ++guard) {
        const Move* move = open_move(*app.state.build);
        if (move == nullptr || (move->check && move->check->kind == CheckKind::resistance)) {
            return;
        }
        act(app, command::MoveDone{});
    }
}

} // namespace

Outcome<Done> show_screen(App& app, const std::string& full_name, const std::string& card_path) {
    std::string name = full_name;
    const std::string night = "-night";
    if (name.size() > night.size() && name.substr(name.size() - night.size()) == night) {
        name.resize(name.size() - night.size());
        app.state.settings.night = true;
    }
    const std::string kids = "-kids";
    if (name.ends_with(kids)) {
        name.resize(name.size() - kids.size());
        app.state.settings.kids = true;
    }
    if (name == "batch" || name.rfind("batch/", 0) == 0 || name.rfind("make/confirm", 0) == 0) {
        const Outcome<Done> shown = show_batch(app, name, card_path);
        app.state.said.clear();
        return shown;
    }
    const Problem unknown{"", "", "no screen is called \"" + full_name + "\"; see README for their names"};
    if (name == "draw" || name.rfind("draw/", 0) == 0) {
        const bool drawn = show_draw(app, name, card_path);
        app.state.said.clear();
        return drawn ? Outcome<Done>(Done{}) : Outcome<Done>(unknown);
    }
    if (name == "learn" || name.rfind("learn/", 0) == 0) {
        const bool shown = show_learn(app, name, card_path);
        app.state.said.clear();
        return shown ? Outcome<Done>(Done{}) : Outcome<Done>(unknown);
    }
    if (name == "shelf") {
        if (!card_path.empty()) {
            if (Outcome<Done> started = start(app, card_path); !started) {
                return started;
            }
            walk_to(app, 4, 0);
        }
        act(app, command::GoTo{Place::shelf});
        app.state.said.clear();
        return Done{};
    }
    if (name == "safety") {
        act(app, command::ReadNotice{});
        return Done{};
    }
    if (name == "audience") {
        act(app, command::StartCard{card_path});
        return Done{};
    }
    if (Outcome<Done> started = start(app, card_path); !started) {
        return started;
    }
    bool there = true;
    if (name == "make") {
        there = walk_to(app, 4, 2);
    } else if (name.rfind("make/", 0) == 0) {
        const std::size_t slash = name.find('/', 5);
        there = slash != std::string::npos && walk_to(app, std::atoi(name.c_str() + 5),
                                                      std::max(0, std::atoi(name.c_str() + slash + 1) - 1));
    } else if (name == "proof") {
        there = walk_to(app, 3, 1000);
    } else if (name == "lights") {
        there = walk_to(app, 6, 1000);
    } else if (name == "keypad") {
        there = walk_to(app, 3, 0);
        go_to_check(app);
        const Move* move = open_move(*app.state.build);
        if (move != nullptr && move->check) {
            act(app, command::OpenKeypad{move->check->id});
            act(app, command::TypeReading{"0.3"});
        }
    } else if (name == "no-meter") {
        there = walk_to(app, 3, 0);
        go_to_check(app);
        const Move* move = open_move(*app.state.build);
        if (move != nullptr && move->check) {
            act(app, command::OpenNoMeter{move->check->id});
        }
    } else if (name == "differs") {
        there = walk_to(app, 3, 2);
        act(app, command::OfferDifferences{});
    } else if (name == "wrong") {
        there = walk_to(app, 4, 1);
        act(app, command::OpenSheet{SheetKind::wrong});
    } else if (name == "settings") {
        act(app, command::OpenSheet{SheetKind::settings});
    } else if (name == "steps") {
        there = walk_to(app, 4, 1);
        act(app, command::OpenSheet{SheetKind::steps});
    } else if (name == "verdict") {
        there = walk_to(app, 3, 1000);
        Change tear;
        tear.kind = ChangeKind::tear;
        for (const Laid& laid : app.state.build->record.as_built.laid) {
            const Strip* strip = std::get_if<Strip>(&laid);
            if (strip != nullptr && strip->side == Side::negative) {
                tear.part = strip->id;
                tear.at_mm = (strip->path_mm[0] + strip->path_mm[1]) * 0.5;
            }
        }
        tear.mm = 1.5;
        app.state.differs.draft = tear;
        act(app, command::SaveDifference{});
        act(app, command::ProveStep{});
    } else if (name == "notice") {
        walk_to(app, 6, 0);
        for (int guard = 0;
             guard < 200 && app.state.notice == Notice::none && open_move(*app.state.build) != nullptr;
             ++guard) {
            act(app, command::MoveDone{});
        }
        there = app.state.notice == Notice::asking;
    } else if (name == "log") {
        there = walk_to(app, kStepCount + 1, 0);
        act(app, command::GoTo{Place::log});
    } else if (name == "light" || name == "light-tired" || name == "light-traces") {
        there = walk_to(app, 4, 2);
        act(app, command::OpenLight{});
        there = there && app.state.light.has_value();
        if (there && name == "light-tired") {
            act(app, command::SetLightHours{app.state.light->most_h * 0.75});
        } else if (there) {
            act(app, command::SetLightHours{6.0});
            act(app, command::ShowLightTraces{name == "light-traces"});
        }
    } else if (name == "mend" || name.rfind("mend/", 0) == 0) {
        there = walk_to(app, 6, 1000) && show_mend(app, name);
    } else {
        return unknown;
    }
    app.state.said.clear();
    return there ? Outcome<Done>(Done{})
                 : Outcome<Done>(
                       Problem{card_path, "", "the build stopped before the screen \"" + full_name + "\""});
}

} // namespace lanternleaf
