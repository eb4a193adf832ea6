#include "demo_board.h"

#include "view/mend_view.h"

#include "findings/review.h"
#include "guide/change.h"

#include <catch2/catch.hpp>

#include <set>

using namespace lanternleaf;

namespace {

MendState started(const std::string& card) {
    const test::DemoBoard board = test::demo_board(card);
    MendState mend;
    mend.session = start_mend(board.card, board.parts);
    mend.causes = causes(mend.session, 4);
    mend.chances = cause_chances(mend.session);
    mend.chances.resize(mend.causes.size());
    mend.test = next_test(mend.session);
    return mend;
}

void see(MendState& mend, const std::string& led, Look look) {
    Outcome<MendSession> next = observe(mend.session, SeenLight{led, look});
    REQUIRE(next.ok());
    mend.session = std::move(next).value();
}

} // namespace

TEST_CASE("No cause is said to be certain or impossible", "[view]") {
    CHECK(percent_text(0.0) == "<1%");
    CHECK(percent_text(0.004) == "<1%");
    CHECK(percent_text(0.714) == "71%");
    CHECK(percent_text(0.9999) == ">99%");
}

TEST_CASE("Before anything is tapped the words say how to tap", "[view]") {
    const MendView view = make_mend_view(started("harbour-lighthouse"));
    CHECK(view.lit == "0 lights");
    CHECK_FALSE(view.any_light);
    CHECK(view.after == "nothing seen yet");
    CHECK(view.explanation.find("Tap a light") != std::string::npos);
    REQUIRE(view.causes.size() == 4);
    CHECK(view.causes[0].letter == "A");
    CHECK(view.causes[3].letter == "D");
}

TEST_CASE("Lights are counted by how they look", "[view]") {
    MendState mend = started("harbour-lighthouse");
    const std::vector<Led>& leds = mend.session.model->card.leds;
    REQUIRE(leds.size() >= 4);
    see(mend, leds[0].id, Look::lit);
    see(mend, leds[1].id, Look::dim);
    see(mend, leds[2].id, Look::dark);
    see(mend, leds[3].id, Look::flickers);
    const MendView view = make_mend_view(mend);
    CHECK(view.lit == "1 light");
    CHECK(view.dim == "1 light, 1 flickers");
    CHECK(view.dark == "1 light");
    CHECK(view.after == "after 4 answers");
    CHECK(view.explanation.find(leds[0].id + " is lit") != std::string::npos);
    see(mend, leds[0].id, Look::unseen);
    CHECK(make_mend_view(mend).lit == "0 lights");
}

TEST_CASE("Every test that can come next has answers, a time and whole sentences", "[view]") {
    for (const std::string& name : test::demo_names()) {
        MendState mend = started(name);
        std::set<std::string> seen;
        for (int asked = 0; mend.test && asked < 12; ++asked) {
            const MendView view = make_mend_view(mend);
            REQUIRE(view.test.has_value());
            INFO(name << " " << mend.test->id);
            seen.insert(mend.test->id);
            CHECK(view.test->answers.size() >= 2);
            CHECK(view.test->answers.back().outcome == 0); // "no change" stands last
            CHECK(view.test->seconds.rfind("about ", 0) == 0);
            CHECK(view.test->sentence.back() == '.');
            Outcome<MendSession> next = observe(mend.session, TestAnswer{mend.test->id, -1});
            REQUIRE(next.ok());
            mend.session = std::move(next).value();
            mend.test = next_test(mend.session);
        }
        CHECK(seen.size() >= 3);
    }
}

TEST_CASE("A suspect stands on the card once, however many causes share its place", "[view]") {
    MendState mend = started("harbour-lighthouse");
    see(mend, mend.session.model->card.leds[0].id, Look::dark);
    mend.causes = causes(mend.session, 4);
    mend.chances = cause_chances(mend.session);
    mend.chances.resize(mend.causes.size());
    const MendView view = make_mend_view(mend);
    REQUIRE_FALSE(view.suspects.empty());
    for (std::size_t i = 0; i < view.suspects.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            CHECK(distance(view.suspects[i].at_mm, view.suspects[k].at_mm) >= 4.0);
        }
    }
}
