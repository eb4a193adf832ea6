// A strip tears once the lights are in place: the lights that the torn card shows are tapped, the answers are
// those of the torn card, and Mend must name the tear, record its mending and lead back to Make.
#include "table.h"

#include "findings/review.h"
#include "guide/change.h"

#include <algorithm>

using namespace lanternleaf;

namespace {

struct Torn {
    Change tear;
    Review review;
};

// The first tear that leaves some lights lit and at least two dark, worked out by the card's review and not
// by what is being tested.
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
            Torn torn{tear, review(card.value(), build.parts)};
            const std::vector<Light>& lights = torn.review.lighting.lights;
            const auto lit = std::count_if(lights.begin(), lights.end(),
                                           [](const Light& light) { return light.state == LightState::lit; });
            const auto dark = std::count_if(lights.begin(), lights.end(), [](const Light& light) {
                return light.state == LightState::dark;
            });
            if (lit >= 2 && dark >= 2) {
                return torn;
            }
        }
    }
    FAIL("no tear of this card leaves some lights lit and some dark");
    return {};
}

bool names_tear(const Cause& cause, const Change& tear) {
    return cause.kind == FaultKind::strip_broken && !cause.places.empty() &&
           cause.places[0].parts.front() == tear.part;
}

void open_mend_at_lights(Table& table) {
    table.start("harbour-lighthouse");
    table.tap("audience/way/go-on");
    table.build_to(6);
    while (table.build().face == MakeFace::move) {
        table.one_move();
    }
    table.tap("make/wrong");
    table.tap("wrong/mend");
    REQUIRE(table.app.state.place == Place::mend);
    REQUIRE(table.app.state.mend.has_value());
}

} // namespace

TEST_CASE("Mend asks for the cell first and records it as out", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_mend_at_lights(table);
    REQUIRE(table.build().record.cell_in);
    CHECK_FALSE(table.there("mend/cannot-tell"));
    table.tap("mend/cool");
    CHECK_FALSE(table.build().record.cell_in);
    CHECK(table.there("mend/cannot-tell"));
    CHECK(table.app.state.mend->session.model->tests.size() > 10);
}

TEST_CASE("A torn strip is found from the lights and a few answers; the mending is recorded", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_mend_at_lights(table);
    table.tap("mend/cool");
    const Torn torn = some_tear(table.build());
    for (const Light& light : torn.review.lighting.lights) {
        const int taps = light.state == LightState::lit ? 1 : light.state == LightState::dim ? 2 : 3;
        for (int i = 0; i < taps; ++i) {
            table.tap("board/led/" + light.led);
        }
    }
    // The tear must be among the causes that explain the lights before any test.
    const std::vector<Cause> all = causes(table.app.state.mend->session, 200);
    const auto there = std::find_if(all.begin(), all.end(),
                                    [&](const Cause& cause) { return names_tear(cause, torn.tear); });
    REQUIRE(there != all.end());
    const int tear_cause = there->ids.front();
    const MendModel& model = *table.app.state.mend->session.model;
    std::size_t tear_fault = 0;
    while (model.faults[tear_fault].cause != tear_cause) {
        ++tear_fault;
    }
    int asked = 0;
    while (table.app.state.mend->causes[0].ids.front() != tear_cause && table.app.state.mend->test &&
           asked < 12) {
        const MendSession& session = table.app.state.mend->session;
        const MendTest* test = find_test(*session.model, table.app.state.mend->test->id);
        REQUIRE(test != nullptr);
        const Prediction truth =
            prediction_of(session, tear_fault, static_cast<int>(test - session.model->tests.data()));
        table.reach("mend", "mend/answer/" + std::to_string(truth.outcome));
        ++asked;
    }
    CHECK(names_tear(table.app.state.mend->causes[0], torn.tear));
    CHECK(asked <= 8);

    table.reach("mend", "mend/cause/A");
    const std::size_t changes = table.build().record.changes.size();
    table.reach("mend", "mend/found");
    CHECK(table.app.state.place == Place::make);
    REQUIRE(table.build().record.changes.size() == changes + 2); // the tear as it was, and the bridge
    CHECK(table.build().record.changes[changes].change.kind == ChangeKind::tear);
    CHECK(table.build().record.changes[changes + 1].change.kind == ChangeKind::bridged);
    CHECK(table.build().record.step == 6);
    CHECK(table.build().face == MakeFace::proof);
    CHECK_FALSE(table.build().record.notes.empty());
    // The mended card lights as planned: the step can be proved.
    table.prove();
    CHECK(table.build().record.step == 7);
}

TEST_CASE("An answer can be taken back, lights cleared, a meter laid aside", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    open_mend_at_lights(table);
    table.tap("mend/cool");
    const std::string led = table.build().record.as_built.leds[0].id;
    table.tap("board/led/" + led);
    table.tap("board/led/" + led);
    CHECK(table.app.state.mend->session.evidence.looks[0] == Look::dim);
    table.reach("mend", "mend/undo");
    CHECK(table.app.state.mend->session.evidence.looks[0] == Look::lit);
    table.tap("mend/clear");
    CHECK(table.app.state.mend->session.evidence.looks[0] == Look::unseen);
    const bool had = table.app.state.mend->tools.meter;
    table.reach("mend", "mend/have/meter");
    CHECK(table.app.state.mend->tools.meter != had);
}

TEST_CASE("Without a build Mend gives first help", "[frame]") {
    const OwnFolder library;
    Table table(library.path());
    update(table.app.state, table.app.around, command::GoTo{Place::mend});
    table.fingers.frame(2);
    CHECK_FALSE(table.app.state.mend.has_value());
    CHECK(table.fingers.find("mend/answer/0") == nullptr);
}
