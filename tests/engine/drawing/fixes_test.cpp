// Fixes: for every rule that has a cure, a card with that one fault is cured by what is offered, and the
// finding is gone. What is offered is checked by a review of the cured card, not by the fix's own words.
#include "drawing/fixes.h"

#include "support/make_card.h"
#include "support/words_of.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lanternleaf;

namespace {

struct Faulty {
    const char* rule;
    Card card;
};

Strip& strip_in(Card& card, const std::string& id) {
    for (Laid& laid : card.laid) {
        if (id_of(laid) == id) {
            return std::get<Strip>(laid);
        }
    }
    throw std::runtime_error("no strip " + id);
}

Card with(void (*fault)(Card&)) {
    Card card = make::sample_card();
    fault(card);
    return card;
}

std::vector<Faulty> faulty_cards() {
    return {
        {"crossing-bare", with([](Card& c) { c.laid.erase(c.laid.begin() + 1); })},
        {"short-circuit", with([](Card& c) { c.laid.erase(c.laid.begin() + 1); })},
        {"patch-small", with([](Card& c) {
             std::get<Patch>(c.laid[1]).size_mm = {7, 7};
         })},
        {"led-reversed", with([](Card& c) { c.leds[0].turn_deg = 90; })},
        {"led-on-fold", with([](Card& c) {
             strip_in(c, "S1").path_mm = {{54, 80}, {60, 80}, {60, 35}, {112, 35}, {112, 20}};
         })},
        {"led-on-joint", with([](Card& c) {
             c.laid.emplace_back(make::strip("S2", Side::positive, {{109, 35}, {140, 35}}));
             strip_in(c, "S1").path_mm.back() = {112, 35};
         })},
        {"joint-short", with([](Card& c) {
             strip_in(c, "S1").path_mm.back() = {90, 35};
             c.laid.emplace_back(make::strip("S2", Side::positive, {{88, 35}, {118, 35}}));
         })},
        {"joint-open", with([](Card& c) {
             strip_in(c, "S1").path_mm.back() = {90, 35};
             c.laid.emplace_back(make::strip("S2", Side::positive, {{85, 35}, {118, 35}}, "copper-5-plain"));
         })},
        {"clearance", with([](Card& c) {
             c.laid.emplace_back(make::strip("N2", Side::negative, {{118, 45}, {140, 45}, {140, 20}}));
             c.laid.emplace_back(make::strip("S2", Side::positive, {{118, 35}, {134, 35}, {134, 20}}));
         })},
        {"outside-holder", with([](Card& c) {
             strip_in(c, "S1").path_mm = {{70, 80}, {70, 35}, {118, 35}};
             std::get<Patch>(c.laid[1]).at_mm = {70, 45};
         })},
        {"led-not-reached", with([](Card& c) {
             strip_in(c, "S1").path_mm.back() = {100, 35};
         })},
        {"led-not-reached", with([](Card& c) {
             strip_in(c, "N1").path_mm.front() = {30, 62};
         })},
        {"led-not-reached", with([](Card& c) {
             c.leds[0].at_mm = {110, 32};
         })},
        {"off-sheet", with([](Card& c) {
             strip_in(c, "N1").path_mm.back() = {153, 45};
         })},
        {"off-sheet", with([](Card& c) {
             std::get<Patch>(c.laid[1]).at_mm = {3, 60};
         })},
        {"over-keepout", with([](Card& c) {
             c.sheet.keepouts.push_back({"hole", {{104, 38}, {108, 38}, {108, 42}, {104, 42}}, {}});
         })},
        {"crease", with([](Card& c) {
             c.sheet.folds.push_back({{112, 0}, {112, 105}, {}});
         })},
        {"foam-low", with([](Card& c) { c.foam->layers = 1; })},
        {"foam-high", with([](Card& c) { c.foam->layers = 9; })},
        {"cells-stacked", with([](Card& c) { c.cell.count = 2; })},
    };
}

int count_of(const Review& now, Level level) {
    return now.count(level);
}

} // namespace

TEST_CASE("each rule with a cure offers one, and every one offered removes its finding") {
    const Parts parts = make::test_parts();
    for (const Faulty& faulty : faulty_cards()) {
        const Review now = review(faulty.card, parts);
        int seen = 0;
        int cured = 0;
        for (const Finding& finding : now.findings) {
            const std::vector<Fix> fixes = fixes_for(faulty.card, parts, now, finding);
            CHECK(fixes.size() <= 2);
            if (finding.rule == faulty.rule) {
                ++seen;
                cured += fixes.empty() ? 0 : 1;
            }
            for (const Fix& fix : fixes) {
                INFO(faulty.rule << ": \"" << finding.text << "\" -> " << fix.label);
                CHECK(said_whole(fix.label));
                const Outcome<Card> made = apply_edit(faulty.card, parts, fix.edit);
                REQUIRE(made);
                const Review after = review(made.value(), parts);
                for (const Finding& left : after.findings) {
                    INFO("left: " << left.rule << ": " << left.text);
                    const bool same_words = left.rule == finding.rule && left.text == finding.text;
                    CHECK_FALSE(same_words);
                    CHECK_FALSE(same_finding(left, finding));
                }
                CHECK(count_of(after, Level::problem) <= count_of(now, Level::problem));
            }
        }
        INFO(faulty.rule);
        for (const Finding& finding : now.findings) {
            UNSCOPED_INFO(finding.rule << ": " << finding.text);
        }
        CHECK(seen > 0);
        CHECK(cured == seen);
    }
}

TEST_CASE("a sound card is offered nothing") {
    const Card card = make::sample_card();
    const Review now = review(card, make::test_parts());
    for (const Finding& finding : now.findings) {
        CHECK(fixes_for(card, make::test_parts(), now, finding).empty());
    }
}

TEST_CASE("a cure that would break something else is not offered") {
    // L1 sits on a crease, and on the only tape there is: moved off the crease it would lose it.
    Card card = make::sample_card();
    card.sheet.folds.push_back({{100, 40}, {120, 40}, {}});
    const Parts parts = make::test_parts();
    const Review now = review(card, parts);
    int met = 0;
    for (const Finding& finding : now.findings) {
        if (finding.rule != "crease" || finding.parts.front() != "L1") {
            continue;
        }
        ++met;
        for (const Fix& fix : fixes_for(card, parts, now, finding)) {
            INFO(fix.label);
            const Review after = review(apply_edit(card, parts, fix.edit).value(), parts);
            CHECK(after.count(Level::problem) <= now.count(Level::problem));
        }
    }
    CHECK(met == 1);
}
