// Faults found by touch once the lights are in place: the lights of the faulty card (its own review, not what
// is being tested) are tapped, the answers are those of the fault, and Mend must name it, record its mending
// and lead back to the proof.
#include "mending_table.h"

using namespace lanternleaf;

namespace {

struct Torn {
    Change tear;
    Lighting lighting;
};

// The first tear that leaves some lights lit and at least two dark.
Torn some_tear(const OpenBuild& build) {
    for (const Laid& laid : build.record.as_built.laid) {
        const Strip* strip = std::get_if<Strip>(&laid);
        for (std::size_t i = 1; strip != nullptr && i < strip->path_mm.size(); ++i) {
            Change tear;
            tear.kind = ChangeKind::tear;
            tear.part = strip->id;
            tear.at_mm = (strip->path_mm[i - 1] + strip->path_mm[i]) * 0.5;
            tear.mm = 1.5;
            const Outcome<Card> card = apply_change(build.record.as_built, build.parts, tear);
            if (!card) {
                continue;
            }
            Torn torn{tear, review(card.value(), build.parts).lighting};
            const auto of = [&](LightState state) {
                return std::count_if(torn.lighting.lights.begin(), torn.lighting.lights.end(),
                                     [&](const Light& light) { return light.state == state; });
            };
            if (of(LightState::lit) >= 2 && of(LightState::dark) >= 2) {
                return torn;
            }
        }
    }
    FAIL("no tear of this card leaves some lights lit and some dark");
    return {};
}

Change change_of(ChangeKind kind, const std::string& part = {}) {
    Change change;
    change.kind = kind;
    change.part = part;
    return change;
}

const Patch& first_patch(const OpenBuild& build) {
    for (const Laid& laid : build.record.as_built.laid) {
        if (const Patch* patch = std::get_if<Patch>(&laid)) {
            return *patch;
        }
    }
    FAIL("the card has no patch");
    throw 0;
}

} // namespace

TEST_CASE("Mend asks for the cell first and records it as out", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        REQUIRE(table.build().record.cell_in);
        CHECK_FALSE(table.there("mend/cannot-tell"));
        table.reach("mend", "mend/cool");
        CHECK_FALSE(table.build().record.cell_in);
        CHECK(table.there("mend/rest/dark"));         // the lights come next
        CHECK_FALSE(table.there("mend/cannot-tell")); // and no test before them
        table.reach("mend", "mend/cell-in");
        CHECK(table.build().record.cell_in); // an adult had read the notice in this build
        CHECK_FALSE(table.there("mend/cell-in"));
        table.reach("mend", "mend/rest/dark");
        CHECK(table.there("mend/cannot-tell"));
    }
}

TEST_CASE("A torn strip is found from the lights and a few answers; the mending is recorded",
          "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/cool");
        const Torn torn = some_tear(table.build());
        tap_lights(table, torn.lighting.lights);
        const std::vector<Cause> all = causes(mend_of(table).session, 200);
        const auto there = std::find_if(all.begin(), all.end(), [&](const Cause& cause) {
            return cause.kind == FaultKind::strip_broken && cause.places[0].parts.front() == torn.tear.part;
        });
        REQUIRE(there != all.end());
        const int asked = answer_until_named(table, tear_near(table, torn.tear.part, torn.tear.at_mm));
        CHECK(names(table, FaultKind::strip_broken, torn.tear.part));
        CHECK(asked < 10); // the mark for a whole search

        const std::size_t changes = table.build().record.changes.size();
        mend_first(table);
        CHECK(table.app.state.place == Place::make);
        REQUIRE(table.build().record.changes.size() == changes + 2); // the tear as it was, and the bridge
        CHECK(table.build().record.changes[changes].change.kind == ChangeKind::tear);
        CHECK(table.build().record.changes[changes + 1].change.kind == ChangeKind::bridged);
        REQUIRE(table.build().record.mends.size() == 1);
        CHECK(table.build().record.mends[0].fault == "strip-broken");
        CHECK(table.build().record.step == 6);
        CHECK(table.build().face == MakeFace::proof);
        table.prove(); // the mended card lights as planned
        CHECK(table.build().record.step == 7);
    }
}

TEST_CASE("A turned light is named and turned back; the card is as planned", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/cool");
        const Card before = table.build().record.as_built;
        const std::string led = before.leds[2].id;
        tap_lights(table, lights_with(table.build(), change_of(ChangeKind::led_turned, led)).lights);
        const int asked = answer_until_named(table, fault_of(table, FaultKind::led_turned, led));
        CHECK(names(table, FaultKind::led_turned, led));
        CHECK(asked <= 4);
        mend_first(table);
        CHECK(table.build().record.as_built == before); // turned, and turned back
        CHECK(table.build().record.changes.size() == 2);
        CHECK(table.build().record.mends.back().fault == "led-turned");
        table.prove();
        CHECK(table.build().record.step == 7);
    }
}

TEST_CASE("A weak joint is found with a meter, its figures typed", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/cool");
        const std::shared_ptr<const MendModel> model = mend_of(table).session.model;
        const int weak = fault_of(table, FaultKind::joint_loose, "");
        REQUIRE(weak >= 0);
        const Showing& shows = model->showings[static_cast<std::size_t>(weak)];
        for (std::size_t i = 0; i < shows.glows.size(); ++i) {
            const LightState state = likeliest(shows.glows[i]);
            const int taps = state == LightState::lit ? 1 : state == LightState::dim ? 2 : 3;
            for (int k = 0; k < taps; ++k) {
                table.tap("board/led/" + model->card.leds[i].id);
            }
        }
        table.reach("mend", "mend/have/meter");
        table.reach("mend", "mend/have/foil");
        table.reach("mend", "mend/have/light");
        table.reach("mend", "mend/have/cell");
        const int cause = model->faults[static_cast<std::size_t>(weak)].cause;
        std::vector<ChangedOhm> changed;
        for (const ElementEdit& edit : model->faults[static_cast<std::size_t>(weak)].edits) {
            changed.push_back({edit.index, edit.value});
        }
        int figures = 0;
        for (int asked = 0; asked < 20 && mend_of(table).test; ++asked) {
            const CauseChance& first = mend_of(table).chances.front();
            if (figures > 0 && first.a == cause && first.b < 0 && first.probability > 0.6) {
                break;
            }
            const MendTest test = *mend_of(table).test;
            if (!reads_ohms(test.kind) && !reads_volts(test.kind)) {
                const Prediction truth =
                    prediction_of(mend_of(table).session, static_cast<std::size_t>(weak),
                                  static_cast<int>(find_test(*model, test.id) - model->tests.data()));
                const int outcome = truth.sure_255 >= 128 ? truth.outcome : 0;
                table.reach("mend", "mend/answer/" + std::to_string(outcome));
                continue;
            }
            CHECK_FALSE(table.there("mend/answer/0")); // a figure, not a class
            table.reach("mend", "mend/meter");
            CHECK(table.app.state.sheet == SheetKind::mend_meter);
            const double figure =
                test.kind == TestKind::meter_cell ? 3.1
                : reads_volts(test.kind)
                    ? static_cast<double>(shows.node_V[static_cast<std::size_t>(test.from_node)] -
                                          shows.node_V[static_cast<std::size_t>(test.to_node)])
                    : model->ohms.between(test.from_node, test.to_node, changed);
            if (!(figure < kNoPath_ohm)) {
                table.tap("keypad/over");
            } else {
                char text[16];
                std::snprintf(text, sizeof text, "%.1f", figure);
                for (const char* c = text; *c != 0; ++c) {
                    table.tap(*c == '.' ? std::string("keypad/point") : std::string("keypad/") + *c);
                }
                table.tap("keypad/save");
            }
            CHECK(table.app.state.sheet == SheetKind::none);
            ++figures;
        }
        CHECK(figures >= 1);
        CHECK(names(table, FaultKind::joint_loose, ""));
        CHECK(mend_of(table).chances.front().a == cause);
        mend_first(table);
        CHECK(table.build().record.mends.back().fault == "joint-loose");
        CHECK(table.build().record.changes.back().change.kind == ChangeKind::bridged);
    }
}

TEST_CASE("A forgotten patch is found: all dark, warm, and the crossing", "[frame][mend]") {
    for (const Size size : kSizes) {
        const OwnFolder library;
        Table table(library.path(), size);
        open_mend_at_lights(table);
        table.reach("mend", "mend/warm");
        CHECK(mend_of(table).warm);
        const std::string patch = first_patch(table.build()).id;
        const Lighting bare = lights_with(table.build(), change_of(ChangeKind::patch_missing, patch));
        for (const Light& light : bare.lights) {
            CHECK(light.state == LightState::dark);
        }
        table.reach("mend", "mend/rest/dark");
        const int asked = answer_until_named(table, fault_of(table, FaultKind::crossing_bare, patch));
        CHECK(names(table, FaultKind::crossing_bare, patch));
        CHECK(asked <= 8);
        const std::size_t changes = table.build().record.changes.size();
        mend_first(table);
        REQUIRE(table.build().record.changes.size() == changes + 2);
        CHECK(table.build().record.changes[changes].change.kind == ChangeKind::patch_missing);
        CHECK(table.build().record.changes[changes + 1].change.kind == ChangeKind::patch_added);
        table.prove();
        CHECK(table.build().record.step == 7);
    }
}

TEST_CASE("A flat cell and one upside down are found; only what changed is recorded", "[frame][mend]") {
    for (const Size size : kSizes) {
        SECTION("upside down " + std::to_string(static_cast<int>(size.w))) {
            const OwnFolder library;
            Table table(library.path(), size);
            open_mend_at_lights(table);
            table.reach("mend", "mend/cool");
            const Card before = table.build().record.as_built;
            tap_lights(table, lights_with(table.build(), change_of(ChangeKind::cell_upside_down)).lights);
            CHECK(answer_until_named(table, fault_of(table, FaultKind::cell_upside_down, "")) <= 5);
            mend_first(table);
            CHECK(table.build().record.mends.back().fault == "cell-upside-down");
            CHECK(table.build().record.as_built == before);
        }
        SECTION("flat " + std::to_string(static_cast<int>(size.w))) {
            const OwnFolder library;
            Table table(library.path(), size);
            open_mend_at_lights(table);
            table.reach("mend", "mend/cool");
            const int flat = fault_of(table, FaultKind::cell_flat, "");
            REQUIRE(flat >= 0);
            const std::shared_ptr<const MendModel> model = mend_of(table).session.model;
            const Showing& shows = model->showings[static_cast<std::size_t>(flat)];
            for (std::size_t i = 0; i < shows.glows.size(); ++i) {
                const LightState state = likeliest(shows.glows[i]);
                const int taps = state == LightState::lit ? 1 : state == LightState::dim ? 2 : 3;
                for (int k = 0; k < taps; ++k) {
                    table.tap("board/led/" + model->card.leds[i].id);
                }
            }
            answer_until_named(table, flat);
            CHECK(names(table, FaultKind::cell_flat, ""));
            const std::size_t changes = table.build().record.changes.size();
            mend_first(table);
            CHECK(table.build().record.mends.back().fault == "cell-flat");
            CHECK(table.build().record.changes.size() == changes); // a fresh cell changes no card
            table.prove();
            CHECK(table.build().record.step == 7);
        }
    }
}
