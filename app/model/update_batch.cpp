#include "model/update_batch.h"

#include "base/overloaded.h"
#include "model/batches.h"
#include "model/update_parts.h"

#include <algorithm>

namespace lanternleaf {

namespace {

constexpr int kMostCells = 10 * kMostInBatch;

const ShelfCard* card_named(const AppState& state, const std::string& name) {
    const auto found = std::find_if(state.cards.begin(), state.cards.end(),
                                    [&name](const ShelfCard& card) { return card.name == name; });
    return found == state.cards.end() ? nullptr : &*found;
}

bool kept(AppState& state, const Surroundings& around, BatchEvent event) {
    const Outcome<Done> done = add_to_batch(around, state.batch->batch.id, std::move(event));
    if (!done) {
        say(state, around, done.problem().sentence());
        return false;
    }
    refresh_batch(state, around);
    return state.batch.has_value();
}

BatchEvent event_of(BatchEventKind kind, const std::string& text = {}) {
    BatchEvent event;
    event.kind = kind;
    event.text = text;
    return event;
}

void begin_several(AppState& state, const Surroundings& around, const std::string& path) {
    const Outcome<OpenCard> card = open_card(path, around.shipped);
    if (!card) {
        say(state, around, card.problem().sentence());
        return;
    }
    NewBatch fresh;
    fresh.card = path;
    fresh.title = card.value().card.title;
    fresh.cells_each = std::max(1, card.value().card.cell.count);
    state.new_batch = std::move(fresh);
    state.sheet = SheetKind::batch_new;
}

void open_batch(AppState& state, const Surroundings& around, const std::string& id) {
    BatchState fresh;
    fresh.batch.id = id;
    state.batch = std::move(fresh);
    state.sheet = SheetKind::none;
    refresh_batch(state, around);
    if (state.batch) {
        state.place = Place::shelf;
    }
}

// Both counts in one go; what did not change is not written.
void keep_cells(AppState& state, const Surroundings& around) {
    const int out = state.batch->count_out;
    const int back = state.batch->count_back;
    state.sheet = SheetKind::none;
    for (const BatchEventKind kind : {BatchEventKind::cells_out, BatchEventKind::cells_back}) {
        BatchEvent event = event_of(kind);
        event.count = kind == BatchEventKind::cells_out ? out - state.batch->batch.cells_out
                                                        : back - state.batch->batch.cells_back;
        if (event.count != 0 && !kept(state, around, event)) {
            return;
        }
    }
}

void begin_build(AppState& state, const Surroundings& around, const std::string& maker) {
    const Batch& batch = state.batch->batch;
    const ShelfCard* card = card_named(state, batch.card);
    if (card == nullptr) {
        say(state, around, around.words("batch.no_card"));
        return;
    }
    Audience audience = Audience::small_children;
    if (!audience_from(batch.audience, audience)) {
        audience = batch.purpose == BatchFor::group ? Audience::school_class : Audience::small_children;
    }
    AudienceChoice way;
    way.holder = batch.holder;
    way.gives_cell = batch.gives_cell;
    begin_for(state, around, card->path, audience, way, {batch.id, maker});
}

void keep_name(AppState& state, const Surroundings& around, bool begin) {
    const std::string name = tidy_nickname(state.batch->name);
    if (name.empty()) {
        say(state, around, around.words("batch.name_again"));
        return;
    }
    const std::vector<std::string>& makers = state.batch->batch.makers;
    if (std::find(makers.begin(), makers.end(), name) != makers.end()) {
        say(state, around, around.words("batch.name_taken"));
        return;
    }
    if (!kept(state, around, event_of(BatchEventKind::joined, name))) {
        return;
    }
    state.batch->name.clear();
    if (begin) {
        state.sheet = SheetKind::none;
        begin_build(state, around, name);
    }
}

// "Builder 3": the first number that nobody is shown as.
std::string free_number(const Batch& batch, const Words& words) {
    for (int number = 1;; ++number) {
        std::string name = tidy_nickname(words("batch.builder", {{"number", std::to_string(number)}}));
        const auto same = [&name](const auto& shown) { return shown.second == name; };
        if (std::none_of(batch.shown_as.begin(), batch.shown_as.end(), same) &&
            std::find(batch.makers.begin(), batch.makers.end(), name) == batch.makers.end()) {
            return name;
        }
    }
}

void hide_name(AppState& state, const Surroundings& around) {
    BatchEvent event = event_of(BatchEventKind::shown_as, state.batch->builder);
    event.as = free_number(state.batch->batch, around.words);
    state.sheet = SheetKind::none;
    if (!event.text.empty() && kept(state, around, event)) {
        state.batches = list_batches(around, state.builds);
    }
}

void close_batch(AppState& state, const Surroundings& around) {
    refresh_batch(state, around); // what other tablets counted belongs to it
    if (!state.batch) {
        return;
    }
    const CellBalance& cells = state.batch->board.cells;
    BatchEvent event = event_of(BatchEventKind::closed);
    event.out = std::max(0, cells.out);
    event.back = std::max(0, cells.back);
    event.in_cards = cells.in_finished;
    event.missing = cells.missing;
    state.sheet = SheetKind::none;
    if (kept(state, around, event)) {
        say(state, around,
            event.missing > 0 ? around.words("batch.closed_missing", {{"n", event.missing}})
                              : around.words("batch.closed_well"));
    }
}

void count_cells(BatchState& page, const batching::CountCells& c) {
    page.count_out = std::clamp(c.out, 0, kMostCells);
    page.count_back = std::clamp(c.back, 0, kMostCells);
}

} // namespace

void refresh_batch(AppState& state, const Surroundings& around) {
    if (!state.batch) {
        return;
    }
    const std::string id = state.batch->batch.id;
    Outcome<Batch> batch = read_batch(around, id);
    if (!batch) {
        say(state, around, batch.problem().sentence());
        state.batch.reset();
        return;
    }
    BatchState& page = *state.batch;
    state.builds = list_builds(around);
    page.batch = std::move(batch).value();
    page.board = board_of(page.batch, read_progress(state.builds, id, page.unreadable), around.now_s);
    page.words = around.words;
    page.seen_s = around.now_s;
    page.needs.clear();
    if (const ShelfCard* card = card_named(state, page.batch.card)) {
        const Outcome<OpenCard> open = open_card(card->path, around.shipped);
        if (open) {
            page.needs = needs_of(open.value().card, open.value().parts, page.batch, around.words);
        }
    }
}

void begin_batch(AppState& state, const Surroundings& around, const AudienceChoice& way) {
    BatchEvent event;
    event.card = card_name(state.new_batch->card);
    event.title = state.new_batch->title;
    event.count = state.new_batch->count;
    event.purpose = state.new_batch->purpose;
    event.cells_each = state.new_batch->cells_each;
    event.audience = name_of(state.asked);
    event.holder = way.holder;
    event.gives_cell = way.gives_cell;
    const Outcome<std::string> id = start_batch(around, std::move(event));
    if (!id) {
        say(state, around, id.problem().sentence());
        return;
    }
    state.new_batch.reset();
    state.starting.clear();
    refresh_shelf(state, around);
    open_batch(state, around, id.value());
}

bool made_one_before(const AppState& state, const ShelfBuild& build) {
    return !build.batch.empty() &&
           std::any_of(state.builds.begin(), state.builds.end(), [&build](const ShelfBuild& other) {
               return other.batch == build.batch && other.maker == build.maker && other.id != build.id &&
                      other.finished;
           });
}

std::string maker_shown(const AppState& state, const ShelfBuild& build) {
    for (const ShelfBatch& batch : state.batches) {
        if (batch.id == build.batch) {
            const auto hidden = batch.shown_as.find(build.maker);
            return hidden == batch.shown_as.end() ? build.maker : hidden->second;
        }
    }
    return build.maker;
}

void update_batch(AppState& state, const Surroundings& around, const BatchCommand& command) {
    const auto open = [&](auto&& act) {
        if (state.batch) {
            act(*state.batch);
        }
    };
    const auto thought_of = [&](auto&& act) {
        if (state.new_batch) {
            act(*state.new_batch);
        }
    };
    const auto sheet = [&](SheetKind kind) { open([&](BatchState&) { state.sheet = kind; }); };
    std::visit(
        Overloaded{
            [&](const batching::BeginSeveral& c) {
                if (c.card.empty()) {
                    state.sheet = SheetKind::batch_card;
                } else {
                    begin_several(state, around, c.card);
                }
            },
            [&](const batching::SetCount& c) {
                thought_of([&](NewBatch& fresh) { fresh.count = std::clamp(c.count, 1, kMostInBatch); });
            },
            [&](const batching::SetPurpose& c) {
                thought_of([&](NewBatch& fresh) { fresh.purpose = c.purpose; });
            },
            [&](const batching::AskAudience&) {
                thought_of([&](NewBatch& fresh) { start_card(state, around, fresh.card); });
            },
            [&](const batching::Open& c) { open_batch(state, around, c.id); },
            [&](const batching::Leave&) {
                state.batch.reset();
                go_to(state, around, Place::shelf);
            },
            [&](const batching::LookAgain&) { refresh_batch(state, around); },
            [&](const batching::OpenCells&) {
                open([&](BatchState& page) {
                    page.count_out = page.batch.cells_out;
                    page.count_back = page.batch.cells_back;
                    state.sheet = SheetKind::batch_cells;
                });
            },
            [&](const batching::CountCells& c) { open([&](BatchState& page) { count_cells(page, c); }); },
            [&](const batching::KeepCells&) { open([&](BatchState&) { keep_cells(state, around); }); },
            [&](const batching::OpenName&) { sheet(SheetKind::batch_name); },
            [&](const batching::TypeName& c) { open([&](BatchState& page) { page.name = c.text; }); },
            [&](const batching::KeepName& c) {
                open([&](BatchState&) { keep_name(state, around, c.begin); });
            },
            [&](const batching::Begin& c) {
                open([&](BatchState&) {
                    state.sheet = SheetKind::none;
                    begin_build(state, around, c.maker);
                });
            },
            [&](const batching::OpenBuilder& c) {
                open([&](BatchState& page) {
                    page.builder = c.maker;
                    page.build = c.build;
                    state.sheet = SheetKind::batch_builder;
                });
            },
            [&](const batching::HideName&) { open([&](BatchState&) { hide_name(state, around); }); },
            [&](const batching::OpenTake&) { sheet(SheetKind::batch_take); },
            [&](const batching::OpenClose&) {
                refresh_batch(state, around);
                sheet(SheetKind::batch_close);
            },
            [&](const batching::Close&) { open([&](BatchState&) { close_batch(state, around); }); },
            [&](const batching::Reopen&) {
                open([&](BatchState&) {
                    static_cast<void>(kept(state, around, event_of(BatchEventKind::reopened)));
                });
            },
            [&](const batching::UseList& c) {
                if (state.build) {
                    state.build->by_list = c.list;
                }
            },
            [&](const batching::ConfirmLine& c) { confirm_line(state, around, c.line); },
        },
        command);
}

} // namespace lanternleaf
