#include "frame/show_batch.h"

#include <algorithm>

namespace lanternleaf {

namespace {

void act(App& app, const BatchCommand& command) {
    update(app.state, app.around, command::Batch{command});
}

// What an eye answers where the engine expects it so.
void answer_by_eye(App& app) {
    std::vector<Check> checks;
    for (const NeededCheck& needed : needed_checks(*app.state.build)) {
        checks.push_back(*needed.check);
    }
    for (const Check& check : checks) {
        if (check.kind == CheckKind::lights) {
            app.state.seen = check.lights;
            update(app.state, app.around, command::SaveSeen{});
        } else {
            update(app.state, app.around, command::OpenNoMeter{check.id});
            update(app.state, app.around, command::LookedAt{true});
        }
    }
}

// On at the table until `step` is open; each move takes its seconds.
void work_to(App& app, int step, int seconds) {
    for (int guard = 0; guard < 1000 && app.state.build; ++guard) {
        const OpenBuild& build = *app.state.build;
        if (build.record.finished || build.record.step >= step) {
            return;
        }
        app.around.now_s += seconds;
        if (open_move(build) != nullptr) {
            update(app.state, app.around, command::MoveDone{});
            if (app.state.notice == Notice::asking) {
                update(app.state, app.around, command::AdultConfirms{});
            }
        } else {
            answer_by_eye(app);
            update(app.state, app.around, command::ProveStep{});
            if (app.state.build && app.state.build->face == MakeFace::verdict) {
                return;
            }
        }
    }
}

bool begin_several(App& app, const std::string& card_path, BatchFor purpose, int count) {
    act(app, batching::BeginSeveral{card_path});
    act(app, batching::SetPurpose{purpose});
    act(app, batching::SetCount{count});
    return app.state.new_batch.has_value();
}

bool answer_audience_for_it(App& app, Audience audience) {
    act(app, batching::AskAudience{});
    update(app.state, app.around, command::AnswerAudience{audience});
    if (!app.state.advice.choices.empty()) {
        update(app.state, app.around, command::ChooseWay{app.state.advice.choices.front().id});
    }
    return app.state.batch.has_value();
}

void count_cells(App& app, int out, int back) {
    act(app, batching::OpenCells{});
    act(app, batching::CountCells{out, back});
    act(app, batching::KeepCells{});
}

// A torn strip: the step is then stopped when it is proved.
void tear_a_strip(App& app) {
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
    update(app.state, app.around, command::SaveDifference{});
}

// A class some time into its lesson: one done, one stopped, some at work, one waiting.
void fill_board(App& app) {
    struct Builder {
        const char* name;
        int step;
        int seconds; ///< a move
        bool torn;
    };

    for (const Builder& builder :
         {Builder{"Ines", kStepCount + 1, 20, false}, Builder{"Otter", 3, 25, true},
          Builder{"Mika", 5, 22, false}, Builder{"Juno", 3, 60, false}, Builder{"Finn", 1, 30, false}}) {
        const std::int64_t begun = app.around.now_s;
        act(app, batching::TypeName{builder.name});
        act(app, batching::KeepName{builder.step > 1});
        if (builder.step > 1) {
            work_to(app, builder.step, builder.seconds);
            if (builder.torn) {
                tear_a_strip(app);
                work_to(app, builder.step + 1, builder.seconds);
            }
        }
        app.around.now_s = begun + 60;
        app.state.sheet = SheetKind::none;
        update(app.state, app.around, command::GoTo{Place::make});
        update(app.state, app.around, command::GoTo{Place::shelf});
    }
    app.around.now_s += 1500;
    act(app, batching::LookAgain{});
}

Outcome<Done> show_list(App& app, const std::string& card_path) {
    bool there =
        begin_several(app, card_path, BatchFor::repeater, 5) && answer_audience_for_it(app, Audience::adults);
    if (there) {
        act(app, batching::Begin{""});
        work_to(app, kStepCount + 1, 20);
        update(app.state, app.around, command::GoTo{Place::shelf});
        act(app, batching::Begin{""});
        for (int step = 1; step < 3 && app.state.build; ++step) {
            work_to(app, step + 1, 10);
        }
        act(app, batching::ConfirmLine{0});
        there = app.state.build && app.state.build->by_list;
    }
    return there ? Outcome<Done>(Done{})
                 : Outcome<Done>(Problem{card_path, "", "the batch stopped before its list"});
}

} // namespace

Outcome<Done> show_batch(App& app, const std::string& name, const std::string& card_path) {
    if (name.rfind("make/confirm", 0) == 0) {
        return show_list(app, card_path);
    }
    bool there = begin_several(app, card_path, BatchFor::group, 20);
    if (there && name != "batch/new") {
        there = answer_audience_for_it(app, Audience::school_class);
        if (there) {
            count_cells(app, 22, 0);
            fill_board(app);
            there = app.state.batch.has_value();
        }
    }
    if (there && name == "batch/cells") {
        act(app, batching::OpenCells{});
    } else if (there && name == "batch/close") {
        count_cells(app, 22, 19);
        act(app, batching::OpenClose{});
    } else if (there && name == "batch/name") {
        act(app, batching::OpenName{});
    } else if (there && name == "batch/builder") {
        const BuilderRow& row = app.state.batch->board.rows.front();
        act(app, batching::OpenBuilder{row.maker, row.build});
    } else if (there && name == "batch/take") {
        act(app, batching::OpenTake{});
    } else if (name != "batch" && name != "batch/new") {
        return Problem{"", "", "no screen is called \"" + name + "\"; see README for their names"};
    }
    return there ? Outcome<Done>(Done{})
                 : Outcome<Done>(
                       Problem{card_path, "", "the batch stopped before the screen \"" + name + "\""});
}

} // namespace lanternleaf
