// Drawing a card by touch, as a maker does it: from an empty sheet to a sound card with every tap counted,
// taken back to nothing and done again; by mouse and by keys.
#include "drawing.h"

using namespace lanternleaf;

namespace {

void look_for_traces(Drawing& d) {
    for (int guard = 0; d.draw().search.work != nullptr; ++guard) {
        REQUIRE(guard < 100);
        d.fingers.frame(1);
    }
    d.fingers.frame(2);
}

} // namespace

TEST_CASE("from an empty sheet to a sound card of seven lights by taps alone", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    std::string told;
    for (const Finding& finding : d.draw().review.findings) {
        told += finding.rule + ": " + finding.text + "\n";
    }
    INFO(told);
    CHECK(d.draw().card.leds.size() == 7);
    CHECK(d.problems() == 0);
    CHECK(d.cautions() == 0);
    for (const Light& light : d.draw().review.lighting.lights) {
        CHECK(light.state == LightState::lit);
    }
    // Three minutes are 180 s. A tap that must be aimed takes 1 to 2 s; 4 s for each leaves half to think.
    WARN("seven lights: " << d.taps << " taps");
    CHECK(d.taps <= 45);

    // It lies in the library as it is shown, and can be made at once.
    REQUIRE(cards_in(library.path()) == std::vector<std::string>{"new-card.card.json"});
    const Outcome<OpenCard> saved =
        open_card(library.path() + "/cards/new-card.card.json", d.app.around.shipped);
    REQUIRE(saved);
    CHECK(saved.value().card == d.draw().card);
    d.touch("draw/make");
    CHECK(d.app.state.sheet == SheetKind::audience);
    d.touch("audience/adults");
    d.touch("audience/way/go-on");
    REQUIRE(d.app.state.build.has_value());
    CHECK(d.app.state.place == Place::make);
}

TEST_CASE("every edit is taken back to the empty sheet and done again", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    const Card last = d.draw().card;
    const std::size_t edits = d.draw().history.size() - 1;
    CHECK(edits >= 15);
    for (std::size_t i = 0; i < edits; ++i) {
        d.touch("draw/undo");
    }
    CHECK_FALSE(d.draw().history.can_undo());
    CHECK(d.draw().card.leds.empty());
    CHECK(d.draw().card.laid.empty());
    const Card first = d.draw().card;
    const Outcome<OpenCard> saved =
        open_card(library.path() + "/cards/new-card.card.json", d.app.around.shipped);
    REQUIRE(saved);
    CHECK(saved.value().card == first); // what is on the disk goes back with it
    for (std::size_t i = 0; i < edits; ++i) {
        d.fingers.key(Key::Redo);
        d.fingers.frame(2);
    }
    CHECK(d.draw().card == last);
}

TEST_CASE("a light is dragged, nudged by keys, turned, copied and removed", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    d.touch("draw/tool/select");
    const Vec2 was = find_led(d.draw().card, "L1")->at_mm;
    d.drag(was, was + Vec2{6, 15});
    CHECK(distance(find_led(d.draw().card, "L1")->at_mm, was + Vec2{6, 15}) <= 1.0);
    CHECK(d.problems() > 0); // off its rails: the findings followed the finger
    d.fingers.key(Key::Undo);
    d.fingers.frame(2);
    CHECK(find_led(d.draw().card, "L1")->at_mm == was);
    CHECK(d.problems() == 0);

    d.paper(find_led(d.draw().card, "L2")->at_mm);
    REQUIRE(d.draw().selected == "L2");
    const Vec2 place = find_led(d.draw().card, "L2")->at_mm;
    d.fingers.key(Key::Right);
    d.fingers.frame(2);
    d.fingers.key(Key::Down);
    d.fingers.frame(2);
    CHECK(find_led(d.draw().card, "L2")->at_mm == place + Vec2{0.5, 0.5});
    d.touch("draw/do/turn");
    CHECK(find_led(d.draw().card, "L2")->turn_deg == Approx(180));
    d.touch("draw/do/copy");
    CHECK(d.draw().selected == "L8");
    d.fingers.key(Key::Delete);
    d.fingers.frame(2);
    CHECK(find_led(d.draw().card, "L8") == nullptr);
    CHECK(d.draw().selected.empty());
}

TEST_CASE("a strip's corner is dragged, its run moved, and the whole cut and joined", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    d.touch("draw/tool/select");
    d.paper({104, 35}); // between two lights, on the - strip
    REQUIRE(d.draw().selected == "N2");
    const Vec2 end = find_strip(d.draw().card, "N2")->path_mm.back();
    d.drag(end, end + Vec2{10, 0});
    CHECK(distance(find_strip(d.draw().card, "N2")->path_mm.back(), end + Vec2{10, 0}) <= 1.0);
    d.fingers.key(Key::Undo);
    d.fingers.frame(2);
    CHECK(find_strip(d.draw().card, "N2")->path_mm.back() == end);
    d.paper({104, 35});
    d.touch("draw/do/cut");
    CHECK(find_strip(d.draw().card, "N3") != nullptr);
    CHECK(d.problems() == 0);
    d.touch("draw/do/join");
    CHECK(find_strip(d.draw().card, "N3") == nullptr);
    CHECK(d.problems() == 0);
    d.paper({60, 45});
    d.paper({68, 45});
    REQUIRE(d.draw().selected == "S1");
    d.drag({68, 45}, {68, 54}); // the run under the lights, moved down, leaves them without their trace
    CHECK(find_strip(d.draw().card, "S1")->path_mm[2].y == Approx(54).margin(1.0));
    CHECK(d.problems() > 0);
}

TEST_CASE("a crossing is told at once and patched with one tap", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    d.touch("draw/tool/minus"); // on from the end of the - strip
    d.paper({126, 35});
    d.paper({141, 35});
    d.touch("draw/done");
    CHECK(d.problems() == 0);
    CHECK(d.draw().card.laid.size() == 3); // the strip grew: no new one, no fold
    CHECK(find_strip(d.draw().card, "N2")->path_mm.size() == 2);
    d.touch("draw/tool/plus"); // and up over it from the end of the + strip
    d.paper({126, 45});
    d.paper({135, 45});
    d.paper({135, 20});
    d.touch("draw/done");
    REQUIRE(d.problems() > 0);
    const std::size_t laid = d.draw().card.laid.size();
    d.reach("draw/findings", "draw/finding/1/fix/0");
    CHECK(d.draw().card.laid.size() == laid + 1);
    CHECK(d.problems() == 0);
}

TEST_CASE("suggested traces are looked at, taken as one edit, and taken back", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    d.touch("shelf/new");
    d.touch("draw-new/a6");
    for (const Vec2 at : {Vec2{50, 30}, Vec2{80, 30}, Vec2{110, 30}, Vec2{110, 70}, Vec2{75, 70}}) {
        d.paper(at);
    }
    d.reach("draw/findings", "draw/finding/3/fix/0"); // who it is for
    ++d.taps;
    d.touch("draw-audience/children");
    const Card bare = d.draw().card;
    const std::size_t states = d.draw().history.size();
    d.touch("draw/suggest");
    look_for_traces(d);
    REQUIRE(d.draw().suggested.has_value());
    CHECK(d.problems() == 0);
    CHECK(d.draw().history.size() == states); // only looked at
    if (d.draw().suggested->suggestions.size() > 1) {
        const Card first = d.draw().card;
        d.touch("draw/suggest/next");
        CHECK_FALSE(d.draw().card == first);
        d.touch("draw/suggest/back");
        CHECK(d.draw().card == first);
    }
    const Card wanted = d.draw().suggested->suggestions.front().card;
    d.touch("draw/suggest/use");
    CHECK(d.draw().card == wanted); // strips, and the lights it turned
    CHECK(d.problems() == 0);
    CHECK(d.draw().history.size() == states + 1);
    WARN("five lights with suggested traces: " << d.taps << " taps");
    d.touch("draw/undo");
    CHECK(d.draw().card == bare);
    d.touch("draw/suggest");
    look_for_traces(d);
    d.touch("draw/suggest/leave");
    CHECK(d.draw().card == bare);
}

TEST_CASE("a long search shows how far it is, is stopped by a tap, and dropped by a hand on the plan",
          "[frame]") {
    for (const Size size : {Size{1180, 820}, Size{820, 1180}, Size{390, 844}}) {
        const OwnFolder library;
        Drawing d(library.path(), size);
        // Forty lights: no machine looks through them within what nobody notices.
        update(d.app.state, d.app.around, command::Draw{draw::NewCard{297, 210}});
        for (int i = 0; i < 40; ++i) {
            update(d.app.state, d.app.around,
                   command::Draw{draw::Tap{{70.0 + 23.0 * (i % 8), 30.0 + 32.0 * (i / 8)}, 7.0}});
        }
        REQUIRE(d.draw().card.leds.size() == 40);
        const Card bare = d.draw().card;
        const auto begin = [&] {
            d.fingers.frame(2);
            CHECK(d.fingers.find("draw/suggest") != nullptr);
            update(d.app.state, d.app.around,
                   command::Draw{draw::Suggest{}}); // three pieces of work at least
            update(d.app.state, d.app.around, command::Draw{draw::SearchOn{}});
            d.app.state.draw->search.began_s -= 1.0; // as after a second
        };
        begin();
        d.fingers.frame(1);
        REQUIRE(d.draw().search.work != nullptr);
        CHECK(d.draw().search.work->progress().done > 0.0);
        CHECK(d.fingers.find("draw/suggest/stop") != nullptr);
        update(d.app.state, d.app.around, command::Draw{draw::StopSearch{}});
        CHECK(d.draw().search.work == nullptr);
        REQUIRE(d.draw().suggested.has_value()); // what was found until then can be looked at
        d.touch("draw/suggest/leave");
        CHECK(d.draw().card == bare);
        begin();
        update(d.app.state, d.app.around, command::Draw{draw::SelectPart{"L7"}});
        CHECK(d.draw().search.work == nullptr);
        CHECK_FALSE(d.draw().suggested.has_value());
        CHECK(d.draw().card == bare);
    }
}

TEST_CASE("findings follow the finger while it drags, and nothing is kept when it is let go where it began",
          "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    d.touch("draw/tool/select");
    const std::size_t states = d.draw().history.size();
    const Point from = d.at({50, 40});
    const Point away = d.at({50, 70});
    d.fingers.pointer(PointerSample::Phase::Down, from);
    d.fingers.frame(2);
    d.fingers.pointer(PointerSample::Phase::Move, away);
    d.fingers.frame(2);
    CHECK(d.problems() > 0);
    CHECK(d.draw().history.size() == states);
    d.fingers.pointer(PointerSample::Phase::Move, from);
    d.fingers.frame(40);
    d.fingers.pointer(PointerSample::Phase::Up, from);
    d.fingers.frame(3);
    CHECK(d.problems() == 0);
    CHECK(d.draw().history.size() == states);
}

TEST_CASE("everything that can be tapped while drawing is large enough, at every tablet size", "[frame]") {
    for (const Size size : {Size{1180, 820}, Size{820, 1180}, Size{1024, 700}}) {
        const OwnFolder library;
        Drawing d(library.path(), size);
        update(d.app.state, d.app.around,
               command::Draw{draw::Open{d.app.around.assets + "/cards/harbour-lighthouse.card.json"}});
        for (const char* selected : {"", "L1", "N1", "holder", "foam", "R1", "P1"}) {
            update(d.app.state, d.app.around, command::Draw{draw::SelectPart{selected}});
            d.fingers.frame(2);
            for (const Target& target : d.fingers.targets().all()) {
                if (target.role == Role::Spot || target.role == Role::Note || is_container(target.role) ||
                    target.visible.empty()) {
                    continue;
                }
                INFO(size.w << "x" << size.h << " " << selected << " " << target.name);
                CHECK(target.rect.w >= 55.9f);
                CHECK(target.rect.h >= 55.9f);
                CHECK(target.rect.x >= 0);
                CHECK(target.rect.right() <= size.w + 0.1f);
            }
        }
    }
}

TEST_CASE("the title is typed, kept as one edit, and an empty one is refused", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    d.touch("shelf/new");
    d.touch("draw-new/a6");
    d.touch("draw/card");
    d.touch("draw-card/title");
    d.fingers.type(" by night");
    d.fingers.frame(2);
    d.fingers.key(Key::Enter);
    d.fingers.frame(3);
    CHECK(d.draw().card.title == "New card by night");
    CHECK(d.draw().history.size() == 2);
    update(d.app.state, d.app.around, command::Draw{draw::TypeTitle{"  ", true}});
    CHECK(d.draw().card.title == "New card by night");
}

TEST_CASE("a crease and a place to keep clear are added, dragged, sized and taken away by touch", "[frame]") {
    const OwnFolder library;
    Drawing d(library.path());
    draw_seven(d);
    const auto sheet = [&]() -> const Sheet& { return d.draw().card.sheet; };
    d.touch("draw/card");
    d.reach("draw-card/rows", "draw-card/keepout");
    REQUIRE(sheet().keepouts.size() == 1);
    CHECK(d.draw().selected == "clear-1"); // ready to be dragged to where it belongs
    const std::vector<Vec2> was = sheet().keepouts[0].outline_mm;
    d.drag((was[0] + was[2]) * 0.5, (was[0] + was[2]) * 0.5 + Vec2{-30, 50});
    CHECK(distance(sheet().keepouts[0].outline_mm[0], was[0] + Vec2{-30, 50}) < 1.1);
    const Vec2 corner = sheet().keepouts[0].outline_mm[2];
    d.drag(corner, corner + Vec2{8, -5});
    CHECK(distance(sheet().keepouts[0].outline_mm[2], corner + Vec2{8, -5}) < 1.1);
    d.touch("draw/do/remove");
    CHECK(sheet().keepouts.empty());
    d.touch("draw/card");
    d.reach("draw-card/rows", "draw-card/crease");
    REQUIRE(sheet().folds.size() == 1);
    d.touch("draw/do/turn");
    CHECK(sheet().folds[0].from_mm.x == 0.0);
    d.touch("draw/undo");
    d.touch("draw/undo");
    CHECK(sheet().folds.empty());
}
