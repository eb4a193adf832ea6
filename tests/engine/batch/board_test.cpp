// The board of a batch: who stands first, what is counted, and the amounts to take along.
#include "batch/board.h"
#include "batch/confirm_list.h"
#include "batch/needs.h"
#include "desk/desk.h"
#include "guide/sequence.h"
#include "record/walk.h"
#include "support/make_batch.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lanternleaf;
using make::kMorning_s;

namespace {

BuildProgress at_step(const std::string& maker, int step, std::int64_t each_s, std::int64_t last_s) {
    BuildProgress build;
    build.id = "card-" + maker;
    build.maker = maker;
    build.started_s = kMorning_s;
    build.last_s = last_s;
    build.step = step;
    for (int i = 0; i < step - 1 && i < kStepCount; ++i) {
        build.steps[static_cast<std::size_t>(i)] = {true, true, false, each_s};
    }
    build.finished = step > kStepCount;
    return build;
}

std::vector<std::string> order_of(const BatchBoard& board) {
    std::vector<std::string> names;
    for (const BuilderRow& row : board.rows) {
        names.push_back(row.shown);
    }
    return names;
}

OpenCard demo(const std::string& name) {
    Outcome<Parts> parts = load_parts(std::string(LANTERNLEAF_SOURCE) + "/assets");
    REQUIRE(parts.ok());
    Outcome<OpenCard> card =
        open_card(std::string(LANTERNLEAF_SOURCE) + "/assets/cards/" + name + ".card.json", parts.value());
    REQUIRE(card.ok());
    return card.value();
}

} // namespace

TEST_CASE("Who needs help first stands first", "[batch]") {
    Batch batch;
    batch.count = 10;
    batch.makers = {"late", "fast"};
    batch.shown_as = {{"stuck", "Builder 2"}};
    const std::int64_t now = kMorning_s + 3600;
    BuildProgress stuck = at_step("stuck", 3, 100, now - 900);
    stuck.stopped_s = now - 900;
    BuildProgress stopped = at_step("stopped", 4, 100, now - 10);
    stopped.stopped_s = now - 60;
    BuildProgress away = at_step("away", 2, 100, now - 3000);
    BuildProgress gone = at_step("gone", 2, 100, now);
    gone.abandoned = true;
    const BatchBoard board = board_of(batch,
                                      {at_step("done", 8, 100, now - 5), at_step("fast", 4, 50, now), away,
                                       gone, stopped, at_step("slow", 4, 300, now), stuck},
                                      now);
    CHECK(order_of(board) ==
          std::vector<std::string>{"Builder 2", "stopped", "slow", "fast", "away", "late", "done"});
    CHECK(board.stopped == 2);
    CHECK(board.at_work == 2);
    CHECK(board.resting == 1);
    CHECK(board.done == 1);
    CHECK(board.not_begun == 4); // of ten cards six are begun
    // slow: three steps of 300 s where the others' median is 100 s.
    CHECK(board.rows[2].behind_s == 600);
    CHECK(board.rows[3].behind_s == -150);
    CHECK(board.first_pass == 1);
    CHECK(board.steps[0].closed == 6);
    CHECK(board.steps[0].median_s == 100);
    CHECK(board.median_build_s == 700);
}

TEST_CASE("A long time on the open step puts a builder behind, a short one not ahead", "[batch]") {
    Batch batch;
    const std::int64_t now = kMorning_s + 3600;
    const BatchBoard board = board_of(
        batch, {at_step("a", 3, 100, now), at_step("b", 2, 100, now - 400), at_step("c", 2, 100, now)}, now);
    CHECK(order_of(board) == std::vector<std::string>{"b", "a", "c"});
    CHECK(board.rows[0].behind_s == 300); // 400 s of silence where the one who closed step 2 took 100 s
    CHECK(board.rows[2].behind_s == 0);
}

TEST_CASE("Progress is read from a build's journal", "[batch]") {
    std::vector<Event> events = make::every_event();
    events[0].batch = "b";
    events[0].maker = "Ines";
    const Outcome<BuildProgress> build = progress_of(make::journal_text(events), "x.build.jsonl");
    REQUIRE(build.ok());
    CHECK(build.value().batch == "b");
    CHECK(build.value().maker == "Ines");
    CHECK(build.value().finished);
    CHECK_FALSE(build.value().cell_in); // it was taken out again
    CHECK(build.value().steps[2].first_pass);
    CHECK_FALSE(build.value().steps[5].first_pass); // stopped, then passed regardless
    CHECK(build.value().steps[5].regardless);
    CHECK_FALSE(passed_first_time(build.value()));
    const Parts parts = make::test_parts();
    const Outcome<Record> record = fold(events, parts);
    REQUIRE(record.ok());
    for (int i = 0; i < kStepCount; ++i) {
        CHECK(build.value().steps[static_cast<std::size_t>(i)].closed == record.value().steps[i].closed());
    }
    CHECK(build.value().step == record.value().step);
    CHECK_FALSE(progress_of("my diary\n", "x").ok());
    CHECK(progress_of("", "x").value().id.empty());
}

// Teachers' common practice for a class of twenty: 25 % more lights, 30 % more tape, 10 % more cells (a tray
// of 22: 20 + 2), 5 more holders, 3 whole kits, made up without cells.
TEST_CASE("A class of twenty takes along what teachers take along", "[batch]") {
    const OpenCard open = demo("harbour-lighthouse");
    Batch batch;
    batch.count = 20;
    batch.purpose = BatchFor::group;
    const std::vector<NeedLine> needs = needs_of(open.card, open.parts, batch);
    const auto line = [&needs](const std::string& thing) {
        const auto found = std::find_if(needs.begin(), needs.end(), [&](const NeedLine& need) {
            return need.thing.compare(0, thing.size(), thing) == 0;
        });
        REQUIRE(found != needs.end());
        return *found;
    };
    CHECK(line("coin cell").amount == "22");
    CHECK(line("coin cell").spare == "20 + 2");
    CHECK(line("holder").amount == "28"); // 20 + 3 in kits + 5 loose
    // Five warm-white lights a card: 20 x 5 + 3 x 5 in kits + 25 % of 100 loose.
    CHECK(line("warm-white light").amount == "140");
    CHECK(line("warm-white light").spare == "100 + 40");
    // The plan's strips, worked by hand from their lengths: 41.5 + 101.5 + 104 + 182 + 63 mm = 492 mm a card
    // before what is turned under; 23 cards and 30 % are 14.71 m.
    const Shopping list = shopping(open.card, open.parts, 20, spares_of(BatchFor::group));
    REQUIRE(list.tapes.size() == 1);
    CHECK(list.tapes[0].card_mm - list.tapes[0].turned_mm == Approx(492.0).margin(0.5));
    CHECK(list.tapes[0].buy_mm == Approx(list.tapes[0].card_mm * 23 * 1.3));
}

TEST_CASE("A step's confirm list stands for its moves and stops before the cell", "[batch]") {
    const OpenCard open = demo("harbour-lighthouse");
    const std::vector<Step> steps = make_steps(open.card, open.parts);
    for (const Step& step : steps) {
        std::vector<std::string> moves;
        for (const ConfirmLine& line : confirm_list(step)) {
            CHECK_FALSE(line.text.empty());
            CHECK_FALSE(line.moves.empty());
            moves.insert(moves.end(), line.moves.begin(), line.moves.end());
        }
        std::size_t at = 0;
        while (at < step.moves.size() && !step.moves[at].adult_only) {
            REQUIRE(at < moves.size());
            CHECK(moves[at] == step.moves[at].id);
            ++at;
        }
        CHECK(moves.size() == at);
    }
    CHECK(confirm_list(steps[0]).size() == 1);
    const std::vector<ConfirmLine> negative = confirm_list(steps[2]);
    REQUIRE(negative.size() == 3); // N1, N2, N3
    CHECK(negative[1].text == "N2 lies flat with 1 fold, and is cut");
    CHECK(negative[2].text == "N3 is lapped and rubbed, lies flat with 1 fold, and is cut");
    CHECK(confirm_list(steps[5]).size() == 8); // one resistor, seven lights
}
